package sealspan.stats.regression;

import java.util.Arrays;

/**
 * A pull of coefficients towards 0: the log-likelihood loses half of the strength times the square
 * of each coefficient, which is a normal prior with variance 1 / strength. The constant is never
 * pulled. It depends on the units of a column.
 *
 * @param strength at least 0; 0 is no ridge
 */
public record Ridge(double strength) {
  /** No pull. */
  public static final Ridge NONE = new Ridge(0);

  public Ridge {
    if (!(strength >= 0 && strength < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("a ridge is at least 0, but got " + strength);
    }
  }

  double[] penalties(Design design) {
    double[] penalties = new double[design.names().size()];
    Arrays.fill(penalties, strength);
    int constant = design.names().indexOf(Design.CONSTANT);
    if (constant >= 0) {
      penalties[constant] = 0;
    }
    return penalties;
  }
}
