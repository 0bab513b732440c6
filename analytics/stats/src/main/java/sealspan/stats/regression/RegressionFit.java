package sealspan.stats.regression;

import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/**
 * A fitted regression. Arrays are not to be changed.
 *
 * @param family family
 * @param names columns
 * @param coefficients in order of the columns
 * @param modelCovariance inverse of the expected information, ridge included
 * @param sandwich covariance from the clusters' scores, without a correction for few clusters
 * @param logLikelihood without the penalty
 * @param deviance twice the distance to the saturated log-likelihood
 * @param pearson weighted sum of squared Pearson residuals
 * @param observations rows with a weight above 0
 * @param clusters clusters among them
 */
public record RegressionFit(
    Family family,
    List<String> names,
    double[] coefficients,
    double[][] modelCovariance,
    double[][] sandwich,
    double logLikelihood,
    double deviance,
    double pearson,
    int observations,
    int clusters) {

  /** Observations less coefficients. */
  public int degreesOfFreedom() {
    return observations - coefficients.length;
  }

  /** The coefficient of a column. */
  public double coefficient(String name) {
    return coefficients[index(name)];
  }

  /** Standard error if the model were right and rows independent. */
  public double modelStandardError(String name) {
    int j = index(name);
    return Math.sqrt(modelCovariance[j][j]);
  }

  /** The coefficient with its model-based normal interval. */
  public PointEstimate modelBased(String name, double level) {
    double z = Confidence.z(level);
    return estimate(coefficient(name), modelStandardError(name), z, level);
  }

  /**
   * The coefficient with the standard error that allows for dependence within clusters, and the t
   * interval with clusters - 1 degrees of freedom; not identified with fewer clusters than
   * coefficients + 1.
   */
  public Estimate<PointEstimate> clustered(String name, double level) {
    double[] pick = new double[coefficients.length];
    pick[index(name)] = 1;
    return clustered(pick, level);
  }

  /** The same for the sum of coefficients times factors, for example a linear predictor. */
  public Estimate<PointEstimate> clustered(double[] factors, double level) {
    if (clusters <= coefficients.length) {
      return Estimate.notIdentified(
          "there are only "
              + clusters
              + " clusters for "
              + coefficients.length
              + " coefficients, too few for a standard error that allows for dependence");
    }
    double value = 0;
    for (int j = 0; j < factors.length; j++) {
      value += factors[j] * coefficients[j];
    }
    double se = Math.sqrt(quadratic(clusteredCovariance(), factors));
    double t = -new TDistribution(clusters - 1.0).inverseCumulativeProbability(tail(level));
    return Estimate.of(estimate(value, se, t, level));
  }

  /** The sandwich times clusters / (clusters - 1); needs at least two clusters. */
  public double[][] clusteredCovariance() {
    double factor = clusters / (clusters - 1.0);
    double[][] corrected = new double[sandwich.length][sandwich.length];
    for (int j = 0; j < corrected.length; j++) {
      for (int k = 0; k < corrected.length; k++) {
        corrected[j][k] = factor * sandwich[j][k];
      }
    }
    return corrected;
  }

  /** The mean response at column values in order of the columns, and an offset. */
  public double mean(double[] values, double offset) {
    double predictor = offset;
    for (int j = 0; j < values.length; j++) {
      predictor += values[j] * coefficients[j];
    }
    return family.mean(predictor);
  }

  private static double tail(double level) {
    return Confidence.tail(level);
  }

  private static PointEstimate estimate(double value, double se, double quantile, double level) {
    return new PointEstimate(
        value, se, new Interval(value - quantile * se, value + quantile * se, level));
  }

  private static double quadratic(double[][] matrix, double[] factors) {
    double sum = 0;
    for (int j = 0; j < factors.length; j++) {
      for (int k = 0; k < factors.length; k++) {
        sum += factors[j] * factors[k] * matrix[j][k];
      }
    }
    return Math.max(0, sum);
  }

  private int index(String name) {
    int at = names.indexOf(name);
    if (at < 0) {
      throw new IllegalArgumentException("there is no column " + name + "; columns: " + names);
    }
    return at;
  }
}
