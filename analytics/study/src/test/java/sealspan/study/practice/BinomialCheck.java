package sealspan.study.practice;

import static org.junit.jupiter.api.Assertions.assertTrue;

/** Exact two-sided binomial tests, by adding the probabilities of the smaller tail twice. */
final class BinomialCheck {
  private static final double LEVEL = 0.001;

  private BinomialCheck() {}

  /** Fails where a share can be told from the count at p below .001. */
  static void share(String what, double share, long hits, long trials) {
    double p = pValue(share, hits, trials);
    assertTrue(
        p >= LEVEL,
        () -> what + ": " + hits + " of " + trials + " is no share of " + share + ", p = " + p);
  }

  static double pValue(double share, long hits, long trials) {
    return Math.min(
        1, 2 * Math.min(tail(share, hits, trials), tail(1 - share, trials - hits, trials)));
  }

  /** P(X at most hits), the probability of each count following from the one before. */
  private static double tail(double share, long hits, long trials) {
    double log = trials * Math.log1p(-share);
    double sum = Math.exp(log);
    for (long k = 1; k <= hits; k++) {
      log += Math.log((trials - k + 1.0) / k) + Math.log(share) - Math.log1p(-share);
      sum += Math.exp(log);
    }
    return sum;
  }
}
