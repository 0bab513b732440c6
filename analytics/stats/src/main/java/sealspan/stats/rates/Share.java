package sealspan.stats.rates;

import org.hipparchus.special.Beta;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/** A share of cases, such as the share of as-found tests that passed. */
public final class Share {
  private Share() {}

  /**
   * Exact interval for a share (Clopper and Pearson 1934, Biometrika 26). With no cases the
   * interval is from 0 to 1. It takes cases as independent; repeated tests of one assembly are not.
   *
   * @param hits cases counted, from 0 to cases
   * @param cases all cases
   * @param level two-sided level
   */
  public static Interval clopperPearson(long hits, long cases, double level) {
    if (hits < 0 || hits > cases) {
      throw new IllegalArgumentException(
          "a share needs 0 <= hits <= cases, but got " + hits + " of " + cases);
    }
    double tail = Confidence.tail(level);
    double lower = hits == 0 ? 0 : quantile(hits, cases - hits + 1.0, tail);
    double upper = hits == cases ? 1 : 1 - quantile(cases - hits, hits + 1.0, tail);
    return new Interval(lower, upper, level);
  }

  /** Quantile of a beta distribution, found on the log-odds scale. */
  private static double quantile(double a, double b, double probability) {
    double root =
        RootSearch.around(
            u -> Beta.regularizedBeta(logistic(u), a, b) - probability, StrictMath.log(a / b), 1);
    return logistic(root);
  }

  private static double logistic(double u) {
    return 1 / (1 + StrictMath.exp(-u));
  }
}
