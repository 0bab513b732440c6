package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The scan of visits a second time, as slowly as the definition reads. */
final class SlowScan {
  private SlowScan() {}

  /** The largest log likelihood ratio of a circle and a time, with at least one case expected. */
  static double best(List<FoulingVisit> visits, FoulingModel model) {
    double[] expected = expected(visits, model);
    double total = visits.stream().filter(FoulingVisit::fouled).count();
    List<LocalDate[]> windows = windows(visits);
    double best = 0;
    for (FoulingVisit centre : visits) {
      for (FoulingVisit edge : visits) {
        double radius = km(centre, edge) * (1 + 1e-9);
        double all = 0;
        for (int i = 0; i < expected.length; i++) {
          all += km(centre, visits.get(i)) <= radius ? expected[i] : 0;
        }
        if (all > total / 4) {
          continue;
        }
        for (LocalDate[] window : windows) {
          double c = 0;
          double m = 0;
          for (int i = 0; i < expected.length; i++) {
            FoulingVisit v = visits.get(i);
            if (km(centre, v) <= radius
                && !v.day().isBefore(window[0])
                && v.day().isBefore(window[1])) {
              c += v.fouled() ? 1 : 0;
              m += expected[i];
            }
          }
          if (c > m && m >= 1) {
            double outside = c == total ? 0 : (total - c) * Math.log((total - c) / (total - m));
            best = Math.max(best, c * Math.log(c / m) + outside);
          }
        }
      }
    }
    return best;
  }

  /** In each quarter of the year and type, probabilities made to sum to what was found. */
  private static double[] expected(List<FoulingVisit> visits, FoulingModel model) {
    Map<String, double[]> sums = new HashMap<>();
    for (FoulingVisit v : visits) {
      double[] sum = sums.computeIfAbsent(stratum(v), s -> new double[2]);
      sum[0] += v.fouled() ? 1 : 0;
      sum[1] += model.probability(v);
    }
    return visits.stream()
        .mapToDouble(v -> model.probability(v) * sums.get(stratum(v))[0] / sums.get(stratum(v))[1])
        .toArray();
  }

  private static String stratum(FoulingVisit v) {
    return v.type() + v.day().query(java.time.temporal.IsoFields.QUARTER_OF_YEAR::getFrom);
  }

  /** All runs of one to four quarters from 2015 to 2017, and all of it. */
  private static List<LocalDate[]> windows(List<FoulingVisit> visits) {
    List<LocalDate[]> windows = new ArrayList<>();
    LocalDate begin = LocalDate.of(2015, 1, 1);
    for (int quarter = 0; quarter < 12; quarter++) {
      for (int length = 1; length <= 4 && quarter + length <= 12; length++) {
        windows.add(
            new LocalDate[] {
              begin.plusMonths(3L * quarter), begin.plusMonths(3L * (quarter + length))
            });
      }
    }
    windows.add(new LocalDate[] {begin, begin.plusYears(3)});
    return windows;
  }

  /** Haversine. */
  private static double km(FoulingVisit a, FoulingVisit b) {
    double north = Math.toRadians(b.latitude() - a.latitude()) / 2;
    double east = Math.toRadians(b.longitude() - a.longitude()) / 2;
    double h =
        Math.pow(Math.sin(north), 2)
            + Math.cos(Math.toRadians(a.latitude()))
                * Math.cos(Math.toRadians(b.latitude()))
                * Math.pow(Math.sin(east), 2);
    return 2 * 6371.0088 * Math.asin(Math.sqrt(h));
  }
}
