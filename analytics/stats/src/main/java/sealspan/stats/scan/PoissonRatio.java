package sealspan.stats.scan;

/**
 * The logarithm of the likelihood ratio of the Poisson scan for high counts, given the total
 * (Kulldorff 1997, Communications in Statistics 26:1481): c log(c/m) + (C-c) log((C-c)/(C-m)) where
 * c exceeds m, else 0; with 0 log 0 = 0.
 */
public final class PoissonRatio {
  /** Far more than {@link #roughly} is off. */
  static final double ROUGHNESS = 1e-6;

  private final int total;

  /** x log x of whole numbers; the same for every zone, so that equal zones give equal bits. */
  private final double[] xLogX;

  /** For a total number of cases, not negative. */
  public PoissonRatio(int total) {
    this.total = total;
    this.xLogX = new double[total + 1];
    for (int x = 1; x <= total; x++) {
      xLogX[x] = x * StrictMath.log(x);
    }
  }

  /** Total number of cases. */
  public int total() {
    return total;
  }

  /**
   * The ratio of a zone, not negative.
   *
   * @param cases cases in the zone, from 0 to the total
   * @param expected cases expected there, more than 0; all expected ones sum to the total
   */
  public double at(int cases, double expected) {
    if (!(cases > expected)) {
      return 0;
    }
    int outside = total - cases;
    double inner = xLogX[cases] - cases * StrictMath.log(expected);
    double outer = outside == 0 ? 0 : xLogX[outside] - outside * StrictMath.log(total - expected);
    return Math.max(0, inner + outer);
  }

  /**
   * The ratio by logarithms that are at hand, but for rounding; of a zone with more cases than
   * expected.
   *
   * @param cases cases in the zone, from 1 to the total
   * @param logExpected logarithm of the cases expected there
   * @param logOutside logarithm of those expected elsewhere
   */
  double roughly(int cases, double logExpected, double logOutside) {
    int outside = total - cases;
    double inner = xLogX[cases] - cases * logExpected;
    return outside == 0 ? inner : inner + xLogX[outside] - outside * logOutside;
  }

  /**
   * For each number of cases, the largest expected number at which the ratio still reaches a
   * threshold: it grows with the cases, so the fewest cases that reach the threshold at some
   * expected number are found by walking up. A hair is added, so that rounding never leaves out a
   * zone that reaches it.
   *
   * @param threshold the threshold; one that is hardly above 0 means any zone with more cases than
   *     expected
   */
  double[] largestExpected(double threshold) {
    double[] largest = new double[total + 1];
    double root = 0;
    for (int cases = 1; cases <= total; cases++) {
      root = threshold < 0.01 ? cases : largestExpected(cases, threshold, root);
      largest[cases] = root * (1 + 1e-9);
    }
    return largest;
  }

  /**
   * By Newton's steps. The ratio is convex and falls with what is expected, so from the left they
   * come to the root without passing it.
   */
  private double largestExpected(int cases, double threshold, double below) {
    double expected = Math.max(below, cases * Math.exp(-(threshold + cases) / cases));
    for (int i = 0; i < 100; i++) {
      double left = roughly(cases, Math.log(expected), Math.log(total - expected)) - threshold;
      double slope = total * (cases - expected) / (expected * (total - expected));
      double step = left / slope;
      if (!(step > 1e-13 * expected)) {
        break;
      }
      expected += step;
    }
    return expected;
  }
}
