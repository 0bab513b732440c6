package sealspan.study.watch;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * One run written anew, the slow way: one model whose probabilities and zones are given, all sums
 * of all zones brought up to date at every test, always from the beginning.
 */
final class PlainRun {
  private static final double[] RHO = {1.5, 2.5, 4};

  private PlainRun() {}

  /** Event ids of the tests that raise an alarm. */
  static List<String> alarms(
      List<WatchedTest> ordered, WatchZones zones, double p, double threshold) {
    double[][] sum = new double[zones.size()][RHO.length];
    Set<String> fouled = new HashSet<>();
    List<String> alarms = new ArrayList<>();
    for (WatchedTest test : ordered) {
      WatchedOutcome seen = test.asKnown();
      if (fouled.contains(seen.day() + "/" + seen.place())) {
        continue;
      }
      if (seen.fouled()) {
        fouled.add(seen.day() + "/" + seen.place());
      }
      double evidence = 0;
      for (int z = 0; z < zones.size(); z++) {
        WatchZone zone = zones.zone(z);
        boolean in =
            zone.isCircle()
                ? zone.members().contains(seen.place())
                : zone.zoneId().equals(seen.zoneId());
        for (int k = 0; k < RHO.length; k++) {
          double q = Math.min(RHO[k] * p, .9);
          double ratio = !in ? 1 : seen.fouled() ? q / p : (1 - q) / (1 - p);
          sum[z][k] = (1 + sum[z][k]) * ratio;
          evidence += zones.weights()[z] / RHO.length * sum[z][k];
        }
      }
      if (evidence >= threshold) {
        alarms.add(test.eventId());
        sum = new double[zones.size()][RHO.length];
      }
    }
    return alarms;
  }
}
