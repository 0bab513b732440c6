package sealspan.stats.degradation;

import org.hipparchus.special.Erf;

/** The standard normal distribution, far tails included. */
final class Bell {
  private static final double ROOT_2 = Math.sqrt(2);
  private static final double LOG_ROOT_2_PI = 0.5 * StrictMath.log(2 * Math.PI);

  /** Below this the asymptotic series is exact to all digits, and erfc nears underflow. */
  private static final double FAR = -30;

  private Bell() {}

  /** P(Z at most z). */
  static double below(double z) {
    return Erf.erfc(-z / ROOT_2) / 2;
  }

  /** Log of the density. */
  static double logDensity(double z) {
    return -z * z / 2 - LOG_ROOT_2_PI;
  }

  /** Log of P(Z at most z). */
  static double logBelow(double z) {
    return z < FAR ? logDensity(z) - StrictMath.log(inverseMills(z)) : StrictMath.log(below(z));
  }

  /** Density over P(Z at most z): minus the mean of Z, given that it is at most z. */
  static double inverseMills(double z) {
    if (z < FAR) {
      double s = 1 / (z * z);
      return -z / (1 - s * (1 - 3 * s * (1 - 5 * s)));
    }
    return StrictMath.exp(logDensity(z)) / below(z);
  }
}
