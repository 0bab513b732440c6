package sealspan.stats.degradation;

/**
 * The true level on a day to come: normal.
 *
 * @param mean its mean
 * @param variance its variance, at least 0
 */
public record LevelForecast(double mean, double variance) {

  /** Probability that the true level is below a limit: "is below the limit". */
  public double probabilityBelow(double limit) {
    return below(limit, variance);
  }

  /**
   * Probability that a reading is below a limit: "fails the test". A reading that is rounded to
   * steps fails where it rounds to less than the least step that passes. The gauge is taken to be
   * calibrated in between, so nothing is known of its bias.
   *
   * @param step the reading is rounded to multiples of it; 0 for none
   */
  public double probabilityReadingBelow(double limit, GaugeError error, double step) {
    double edge = step > 0 ? step * (Math.ceil(limit / step - 1e-6) - 0.5) : limit;
    return below(edge, variance + error.variance());
  }

  private double below(double limit, double total) {
    if (total == 0) {
      return mean < limit ? 1 : 0;
    }
    return Bell.below((limit - mean) / Math.sqrt(total));
  }
}
