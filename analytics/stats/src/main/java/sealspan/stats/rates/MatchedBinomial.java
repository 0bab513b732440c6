package sealspan.stats.rates;

import org.hipparchus.special.Beta;
import org.hipparchus.special.Erf;

/**
 * The number of successes among independent events of unequal probability, by the binomial with the
 * same mean and variance; the number of its trials need not be whole.
 */
final class MatchedBinomial {
  private static final double NORMAL_FROM_VARIANCE = 400;

  private MatchedBinomial() {}

  /**
   * P(number &le; most).
   *
   * @param mean sum of the probabilities
   * @param squares sum of their squares
   * @param events number of events, at least the mean
   */
  static double atMost(long most, double mean, double squares, long events) {
    if (most < 0) {
      return 0;
    }
    if (most >= events || mean <= 0) {
      return 1;
    }
    double share = Math.min(1 - 1e-12, Math.max(mean / events, squares / mean));
    double trials = mean / share;
    if (most >= trials) {
      return 1;
    }
    double variance = mean * (1 - share);
    if (variance > NORMAL_FROM_VARIANCE) {
      double sigma = Math.sqrt(variance);
      double z = (most + .5 - mean) / sigma;
      double skew = (1 - 2 * share) / sigma;
      double density = StrictMath.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
      double value = Erf.erfc(-z / Math.sqrt(2)) / 2 - density * skew / 6 * (z * z - 1);
      return Math.max(0, Math.min(1, value));
    }
    return Beta.regularizedBeta(1 - share, trials - most, most + 1.0);
  }
}
