package sealspan.stats.exposure;

/**
 * Curves over lags from which the effect of an exposure so many steps earlier is put together.
 *
 * @param columns one array for each curve, with a value for each lag from 0 on; not to be changed
 */
public record LagBasis(double[][] columns) {

  /** One coefficient for each lag, 0 to the last. */
  public static LagBasis free(int lastLag) {
    double[][] columns = new double[lastLag + 1][lastLag + 1];
    for (int lag = 0; lag <= lastLag; lag++) {
      columns[lag][lag] = 1;
    }
    return new LagBasis(columns);
  }

  /** A polynomial in the lag (Almon 1965, Econometrica 33:178), scaled to lags from 0 to 1. */
  public static LagBasis polynomial(int lastLag, int degree) {
    require(lastLag, degree + 1);
    double[][] columns = new double[degree + 1][lastLag + 1];
    for (int lag = 0; lag <= lastLag; lag++) {
      double power = 1;
      for (int k = 0; k <= degree; k++) {
        columns[k][lag] = power;
        power *= (double) lag / lastLag;
      }
    }
    return new LagBasis(columns);
  }

  /**
   * A natural cubic spline in the lag with evenly spaced knots, the first at lag 0 and the last at
   * the last lag (Hastie, Tibshirani and Friedman, The Elements of Statistical Learning, 5.2.1).
   *
   * @param knots number of knots and of curves, at least 2
   */
  public static LagBasis naturalSpline(int lastLag, int knots) {
    require(lastLag, knots);
    double[][] columns = new double[knots][lastLag + 1];
    for (int lag = 0; lag <= lastLag; lag++) {
      double x = (double) lag / lastLag;
      columns[0][lag] = 1;
      columns[1][lag] = x;
      for (int k = 2; k < knots; k++) {
        columns[k][lag] = bend(x, k - 2, knots - 1) - bend(x, knots - 2, knots - 1);
      }
    }
    return new LagBasis(columns);
  }

  /** Last lag. */
  public int lastLag() {
    return columns[0].length - 1;
  }

  private static double bend(double x, int knot, int intervals) {
    double at = (double) knot / intervals;
    double above = Math.max(0, x - at);
    return above * above * above / (1 - at);
  }

  private static void require(int lastLag, int columns) {
    if (lastLag < 1 || columns < 2 || columns > lastLag + 1) {
      throw new IllegalArgumentException(
          "lags 0 to " + lastLag + " carry 2 to " + (lastLag + 1) + " curves, not " + columns);
    }
  }
}
