package sealspan.stats.degradation;

/**
 * How far a reading lies from the true level.
 *
 * @param ownVariance variance of the error of the single reading, at least 0
 * @param biasVariance variance of the error that all readings of one gauge share between two
 *     calibrations, at least 0
 */
public record GaugeError(double ownVariance, double biasVariance) {
  public GaugeError {
    if (!(ownVariance >= 0 && biasVariance >= 0) || Double.isInfinite(ownVariance + biasVariance)) {
      throw new IllegalArgumentException(
          "variances are finite and at least 0, but got " + ownVariance + " and " + biasVariance);
    }
  }

  /**
   * The error of a gauge whose readings lie within a limit of the truth, all errors within it
   * equally likely: variance limit squared / 3 (JCGM 100:2008, 4.3.7). Half of it is taken to be
   * the gauge's own between calibrations, half that of the single reading.
   */
  public static GaugeError within(double limit) {
    return new GaugeError(limit * limit / 6, limit * limit / 6);
  }

  /** The error of gauges that are better than they must be: a share of each variance. */
  public GaugeError times(double ownShare, double biasShare) {
    return new GaugeError(ownShare * ownVariance, biasShare * biasVariance);
  }

  /** Variance of one reading about the true level. */
  public double variance() {
    return ownVariance + biasVariance;
  }
}
