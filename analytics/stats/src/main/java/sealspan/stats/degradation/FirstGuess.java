package sealspan.stats.degradation;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the search begins and in what units: medians of the steps of passing readings, which few
 * shocks do not move.
 *
 * @param driftPerDay drift, a day
 * @param spreadPerDay spread of the drift, a day, above 0
 * @param wanderPerRootDay standard deviation of a step after a day, above 0
 * @param shocksPerDay failures a day, above 0 where there are any
 * @param failures runs that ended with a failure
 */
record FirstGuess(
    double driftPerDay,
    double spreadPerDay,
    double wanderPerRootDay,
    double shocksPerDay,
    int failures) {

  static FirstGuess of(List<ReadingRun> runs) {
    List<Double> drifts = new ArrayList<>();
    List<Double> squares = new ArrayList<>();
    List<Double> days = new ArrayList<>();
    double errors = 0;
    long watched = 0;
    int failures = 0;
    for (ReadingRun run : runs) {
      failures += run.failed() ? 1 : 0;
      List<GaugedReading> readings = run.readings();
      for (int i = 1; i < readings.size(); i++) {
        GaugedReading reading = readings.get(i);
        double gap = reading.day() - readings.get(i - 1).day();
        watched += (long) gap;
        if (gap > 0) {
          days.add(gap);
          errors += reading.ownVariance(1) + reading.error().biasVariance();
        }
        if (gap > 0 && !reading.fails()) {
          double moved = reading.value() - readings.get(i - 1).value();
          drifts.add(moved / gap);
          squares.add(moved * moved / gap);
        }
      }
    }
    double usualGap = median(days);
    double noise = 2 * errors / days.size() / usualGap;
    double variance = Math.max(squares.isEmpty() ? 0 : median(squares), noise / 100);
    double wander = Math.sqrt(Math.max(variance, 1e-12));
    return new FirstGuess(
        drifts.isEmpty() ? 0 : median(drifts),
        wander / Math.sqrt(usualGap),
        wander,
        (double) failures / watched,
        failures);
  }

  private static double median(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    sorted.sort(null);
    return sorted.get(sorted.size() / 2);
  }
}
