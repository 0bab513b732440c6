package sealspan.stats.rates;

/**
 * How rates differ between units: a gamma distribution, read as "shape failures in exposureDays of
 * earlier experience".
 *
 * @param shape above 0; small means that units differ widely
 * @param exposureDays above 0; the rate parameter, in days
 */
public record GammaPrior(double shape, double exposureDays) {
  public GammaPrior {
    if (!(shape > 0 && exposureDays > 0)
        || Double.isInfinite(shape)
        || Double.isInfinite(exposureDays)) {
      throw new IllegalArgumentException(
          "a gamma prior needs shape and exposure above 0, but got "
              + shape
              + " and "
              + exposureDays);
    }
  }

  /** Mean rate per day. */
  public double meanPerDay() {
    return shape / exposureDays;
  }

  /** Standard deviation of the rates divided by their mean. */
  public double coefficientOfVariation() {
    return 1 / Math.sqrt(shape);
  }
}
