package sealspan.stats.effect;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * By how much each case moves an estimate, from which follows a variance that takes the unit, not
 * the case, as what was sampled.
 */
final class Influence {
  private Influence() {}

  /** Variance of an estimate whose influences sum to zero, with the factor units / (units - 1). */
  static double variance(double[] influence, int[] unit) {
    double[] sums = new double[influence.length];
    boolean[] seen = new boolean[influence.length];
    for (int i = 0; i < influence.length; i++) {
      sums[unit[i]] += influence[i];
      seen[unit[i]] = true;
    }
    double squares = 0;
    int units = 0;
    for (int u = 0; u < sums.length; u++) {
      squares += sums[u] * sums[u];
      units += seen[u] ? 1 : 0;
    }
    return units < 2 ? Double.POSITIVE_INFINITY : squares * units / (units - 1.0);
  }

  /** The two-sided quantile of Student's t for what weighted cases are worth. */
  static double quantile(double worth, double level) {
    double tail = Confidence.tail(level);
    return worth > 10_000
        ? -new NormalDistribution().inverseCumulativeProbability(tail)
        : -new TDistribution(Math.max(1, worth - 1)).inverseCumulativeProbability(tail);
  }

  /** A risk, with limits on the logit scale, so that they stay between 0 and 1. */
  static PointEstimate risk(double risk, double variance, double quantile, double level) {
    double se = Math.sqrt(variance);
    double logit = StrictMath.log(risk) - StrictMath.log1p(-risk);
    double half = quantile * se / (risk * (1 - risk));
    return new PointEstimate(
        risk, se, new Interval(inverse(logit - half), inverse(logit + half), level));
  }

  private static double inverse(double logit) {
    return 1 / (1 + StrictMath.exp(-logit));
  }

  /** A difference of two risks. */
  static PointEstimate difference(
      double difference, double variance, double quantile, double level) {
    double se = Math.sqrt(variance);
    return new PointEstimate(
        difference,
        se,
        new Interval(
            Math.max(-1, difference - quantile * se),
            Math.min(1, difference + quantile * se),
            level));
  }

  /** A ratio, with limits on the log scale; the variance is that of the log. */
  static PointEstimate ratio(double ratio, double logVariance, double quantile, double level) {
    double logSe = Math.sqrt(logVariance);
    return new PointEstimate(
        ratio,
        ratio * logSe,
        new Interval(
            ratio * StrictMath.exp(-quantile * logSe),
            ratio * StrictMath.exp(quantile * logSe),
            level));
  }

  /** Takes the mean off, which a ridge leaves. */
  static void centre(double[] influence) {
    double mean = Arrays.stream(influence).sum() / influence.length;
    for (int i = 0; i < influence.length; i++) {
      influence[i] -= mean;
    }
  }
}
