package sealspan.stats.effect;

/** Derivatives of the complementary log-log model by the log of hazard times exposure. */
final class Hazard {
  /** Above this a hazard times exposure leaves no chance of passing. */
  private static final double CERTAIN = 700;

  private Hazard() {}

  /** Derivative of the probability 1 - exp(-exp(x)). */
  static double slope(double x) {
    double cumulative = StrictMath.exp(x);
    return cumulative > CERTAIN ? 0 : cumulative * StrictMath.exp(-cumulative);
  }

  /** Expected negative second derivative of the log likelihood of one case. */
  static double information(double x) {
    double cumulative = StrictMath.exp(x);
    return cumulative > CERTAIN || cumulative == 0
        ? 0
        : cumulative * cumulative / StrictMath.expm1(cumulative);
  }

  /** Derivative of the log likelihood of one case. */
  static double score(boolean failed, double x) {
    double cumulative = StrictMath.exp(x);
    if (!failed) {
      return -cumulative;
    }
    return cumulative > CERTAIN
        ? 0
        : cumulative == 0 ? 1 : cumulative / StrictMath.expm1(cumulative);
  }
}
