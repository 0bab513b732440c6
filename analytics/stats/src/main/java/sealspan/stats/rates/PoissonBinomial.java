package sealspan.stats.rates;

/**
 * The number of failed tests when tests have unequal exposure: a sum of independent outcomes that
 * fail with probability 1 - exp(-rate x days).
 */
final class PoissonBinomial {
  private PoissonBinomial() {}

  /** P(number of failures &le; most); work of order tests x min(most, tests - most). */
  static double atMost(int[] days, double perDay, int most) {
    int tests = days.length;
    if (most < 0) {
      return 0;
    }
    if (most >= tests) {
      return 1;
    }
    if (2 * most <= tests) {
      return atMostOf(days, perDay, most, 1);
    }
    return 1 - atMostOf(days, perDay, tests - most - 1, -1);
  }

  /** Counts failures (sign 1) or passes (sign -1), one test at a time. */
  private static double atMostOf(int[] days, double perDay, int most, int sign) {
    double[] probability = new double[most + 1];
    probability[0] = 1;
    for (int day : days) {
      double fail = -StrictMath.expm1(-perDay * day);
      double pass = StrictMath.exp(-perDay * day);
      double counted = sign > 0 ? fail : pass;
      double other = sign > 0 ? pass : fail;
      for (int k = most; k > 0; k--) {
        probability[k] = probability[k] * other + probability[k - 1] * counted;
      }
      probability[0] *= other;
    }
    double sum = 0;
    for (double each : probability) {
      sum += each;
    }
    return Math.min(1, sum);
  }
}
