package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import sealspan.stats.Estimate;
import sealspan.stats.exposure.DistributedLag;
import sealspan.stats.exposure.LagBasis;

/**
 * Dated outcomes by week and zone against events so many weeks earlier, as one smooth curve over
 * the weeks; each quarter of a year of a zone is compared with itself. Whatever else brings
 * outcomes for weeks on end is allowed for: weeks of a zone may be alike up to the last lag. The
 * first weeks of the record, before which events are not known, are left out.
 */
final class OutcomeWeeks {
  /** The last lag, weeks. */
  static final int WEEKS = 12;

  private static final int KNOTS = 4;
  private static final double LEVEL = .95;

  private OutcomeWeeks() {}

  /**
   * Fits.
   *
   * @param water the record
   * @param event the events
   * @param outcomes days of outcomes by zone
   */
  static Estimate<DistributedLag> fit(
      WaterRecord water, EventExposure event, Map<String, List<Integer>> outcomes) {
    int weeks = (water.lastDay() + 1 - water.firstDay()) / 7;
    int usable = Math.max(0, weeks - WEEKS);
    int n = usable * outcomes.size();
    double[] counts = new double[n];
    double[][] exposure = new double[WEEKS + 1][n];
    int[] stratum = new int[n];
    int[] zoneOf = new int[n];
    int[] weekOf = new int[n];
    int zoneNumber = 0;
    for (Map.Entry<String, List<Integer>> zone : outcomes.entrySet()) {
      double[] began = new double[weeks];
      for (int day : event.firstDays(zone.getKey())) {
        int week = (day - water.firstDay()) / 7;
        if (week < weeks) {
          began[week] = 1;
        }
      }
      int first = zoneNumber * usable;
      for (int w = 0; w < usable; w++) {
        LocalDate day = LocalDate.ofEpochDay(water.firstDay() + 7L * (w + WEEKS));
        stratum[first + w] =
            (zoneNumber * 4000 + day.getYear() % 1000 * 4) + (day.getMonthValue() - 1) / 3;
        zoneOf[first + w] = zoneNumber;
        weekOf[first + w] = w;
        for (int lag = 0; lag <= WEEKS; lag++) {
          exposure[lag][first + w] = began[w + WEEKS - lag];
        }
      }
      for (int day : zone.getValue()) {
        int week = (day - water.firstDay()) / 7 - WEEKS;
        if (week >= 0 && week < usable) {
          counts[first + week]++;
        }
      }
      zoneNumber++;
    }
    return DistributedLag.fit(
        counts,
        new double[n],
        exposure,
        LagBasis.naturalSpline(WEEKS, KNOTS),
        stratum,
        new DistributedLag.Series(zoneOf, weekOf, WEEKS),
        LEVEL);
  }
}
