package sealspan.stats.exposure;

import java.util.TreeMap;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * Exact limits of the ratio of one window. Given the totals of the units, the outcomes in the
 * window are a sum of binomial numbers whose shares grow with the ratio; each limit is the ratio at
 * which a tail of that sum has half of the error (Clopper and Pearson 1934, Biometrika 26, where
 * all units have the same share of days in the window).
 */
final class ExactWindow {
  private ExactWindow() {}

  static Interval limits(SeriesCells cells, double level) {
    TreeMap<Integer, long[]> units = new TreeMap<>();
    for (SeriesCells.Cell cell : cells.list()) {
      long[] own = units.computeIfAbsent(cell.unit(), u -> new long[3]);
      own[cell.window()] += cell.days();
      own[2] += cell.outcomes();
    }
    long[][] all = units.values().toArray(long[][]::new);
    int inside = cells.outcomesIn(1);
    int outcomes = cells.outcomes();
    double tail = Confidence.tail(level);
    double lower =
        inside == 0
            ? 0
            : StrictMath.exp(RootSearch.around(u -> above(all, inside, outcomes, u) - tail, 0, 1));
    double upper =
        inside == outcomes
            ? Double.POSITIVE_INFINITY
            : StrictMath.exp(
                RootSearch.around(u -> 1 - above(all, inside + 1, outcomes, u) - tail, 0, 1));
    return new Interval(lower, upper, level);
  }

  /** Probability of at least so many outcomes in the window, at a logarithm of the ratio. */
  private static double above(long[][] units, int least, int outcomes, double logRatio) {
    double[] probability = new double[outcomes + 1];
    probability[0] = 1;
    int drawn = 0;
    for (long[] unit : units) {
      double odds = StrictMath.exp(logRatio) * unit[1] / unit[0];
      double share = Double.isInfinite(odds) ? 1 : odds / (1 + odds);
      for (int n = 0; n < unit[2]; n++) {
        drawn++;
        for (int k = drawn; k > 0; k--) {
          probability[k] = (1 - share) * probability[k] + share * probability[k - 1];
        }
        probability[0] *= 1 - share;
      }
    }
    double sum = 0;
    for (int k = outcomes; k >= least; k--) {
      sum += probability[k];
    }
    return Math.min(1, sum);
  }
}
