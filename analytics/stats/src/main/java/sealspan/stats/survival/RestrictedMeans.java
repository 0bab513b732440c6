package sealspan.stats.survival;

import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/** The interval of a restricted mean life. */
final class RestrictedMeans {
  private RestrictedMeans() {}

  /** Value +- z se, kept between 0 and the longest life that the restriction allows. */
  static PointEstimate estimate(double value, double variance, double longest, double level) {
    double error = Math.sqrt(variance);
    double width = Confidence.z(level) * error;
    return new PointEstimate(
        value,
        error,
        new Interval(Math.max(0, value - width), Math.min(longest, value + width), level));
  }
}
