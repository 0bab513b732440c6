package sealspan.stats.regression;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.distribution.continuous.TDistribution;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.PositiveSystem;

/**
 * A fitted regression whose strata have constants of their own. Arrays are not to be changed.
 *
 * @param names columns
 * @param coefficients in order of the columns
 * @param covariance inverse of the expected information when the constants are not known
 * @param rows the rows that tell something: those of strata with an event beside other rows
 * @param scores for each of these rows its score less what the constant of its stratum takes up
 * @param strata strata that tell something
 * @param pearson weighted sum of squared Pearson residuals
 */
public record StratifiedFit(
    List<String> names,
    double[] coefficients,
    double[][] covariance,
    int[] rows,
    double[][] scores,
    int strata,
    double pearson) {

  static StratifiedFit of(
      Family family, Observations data, Strata strata, StratifiedSlope expected) {
    int p = expected.coefficients().length;
    double[][] scores = new double[strata.rows().length][p];
    Family.Terms terms = new Family.Terms();
    double pearson = 0;
    for (int s = 0; s < strata.count(); s++) {
      for (int i = strata.from(s); i < strata.until(s); i++) {
        int row = strata.rows()[i];
        double predictor = expected.predictor(s, row);
        double weight = data.weight()[row];
        family.at(data.response()[row], predictor, terms);
        double residual = data.response()[row] - family.mean(predictor);
        double variance = family.variance(predictor);
        pearson += variance > 0 ? weight * residual * residual / variance : 0;
        for (int j = 0; j < p; j++) {
          scores[i][j] =
              weight * terms.score * (data.design().values(j)[row] - expected.mean(s, j));
        }
      }
    }
    return new StratifiedFit(
        data.design().names(),
        expected.coefficients(),
        PositiveSystem.of(expected.information()).inverse(),
        strata.rows(),
        scores,
        strata.count(),
        pearson);
  }

  /** Rows less strata and coefficients. */
  public int degreesOfFreedom() {
    return rows.length - strata - coefficients.length;
  }

  /** Pearson residuals squared per degree of freedom; 1 where there is no such degree. */
  public double dispersion() {
    return degreesOfFreedom() > 0 ? pearson / degreesOfFreedom() : 1;
  }

  /** The coefficient of a column. */
  public double coefficient(String name) {
    return coefficients[index(name)];
  }

  /** Covariance times the dispersion, which for counts may be above or below 1. */
  public double[][] dispersedCovariance() {
    double[][] scaled = new double[covariance.length][];
    for (int j = 0; j < scaled.length; j++) {
      scaled[j] = Arrays.stream(covariance[j]).map(v -> v * dispersion()).toArray();
    }
    return scaled;
  }

  /**
   * Covariance that allows for rows of one series being alike when they are a few steps apart, the
   * less the farther (Newey and West 1987, Econometrica 55:703), times rows over degrees of
   * freedom.
   *
   * @param series the series of every row that was given to the fit
   * @param step the place of each of these rows in its series, one row to a place
   * @param farthest rows farther apart than this are taken as independent
   */
  public double[][] serialCovariance(int[] series, int[] step, int farthest) {
    Map<Long, double[]> scoreAt = new HashMap<>();
    for (int i = 0; i < rows.length; i++) {
      scoreAt.put(place(series[rows[i]], step[rows[i]]), scores[i]);
    }
    int p = coefficients.length;
    double[][] middle = new double[p][p];
    for (int i = 0; i < rows.length; i++) {
      for (int apart = 0; apart <= farthest; apart++) {
        double[] other = scoreAt.get(place(series[rows[i]], step[rows[i]] + apart));
        if (other != null) {
          addProducts(middle, scores[i], other, 1 - apart / (farthest + 1.0), apart > 0);
        }
      }
    }
    double factor = degreesOfFreedom() > 0 ? rows.length / (double) degreesOfFreedom() : 1;
    double[][] half = product(covariance, middle);
    double[][] serial = product(half, covariance);
    for (double[] line : serial) {
      for (int k = 0; k < p; k++) {
        line[k] *= factor;
      }
    }
    return serial;
  }

  private static long place(int series, int step) {
    return ((long) series << 32) + step;
  }

  private static void addProducts(
      double[][] sums, double[] a, double[] b, double weight, boolean bothWays) {
    for (int j = 0; j < a.length; j++) {
      for (int k = 0; k < a.length; k++) {
        sums[j][k] += weight * (a[j] * b[k] + (bothWays ? b[j] * a[k] : 0));
      }
    }
  }

  private static double[][] product(double[][] a, double[][] b) {
    double[][] product = new double[a.length][a.length];
    for (int j = 0; j < a.length; j++) {
      for (int k = 0; k < a.length; k++) {
        for (int m = 0; m < a.length; m++) {
          product[j][k] += a[j][m] * b[m][k];
        }
      }
    }
    return product;
  }

  /** The coefficient with its model-based normal interval; no dispersion. */
  public PointEstimate modelBased(String name, double level) {
    return normal(name, Math.sqrt(covariance[index(name)][index(name)]), level);
  }

  /** The coefficient with a normal interval widened (or narrowed) by the dispersion. */
  public PointEstimate dispersed(String name, double level) {
    return normal(name, Math.sqrt(covariance[index(name)][index(name)] * dispersion()), level);
  }

  /**
   * The coefficient with the standard error that allows for dependence within clusters (Liang and
   * Zeger 1986), times clusters / (clusters - 1), and the t interval with clusters - 1 degrees of
   * freedom; not identified with one cluster, or where the clusters' scores leave no variance.
   *
   * @param cluster the cluster of every row that was given to the fit, not only of those that tell
   */
  public Estimate<PointEstimate> clustered(String name, int[] cluster, double level) {
    int at = index(name);
    Map<Integer, double[]> sums = new HashMap<>();
    for (int i = 0; i < rows.length; i++) {
      double[] sum = sums.computeIfAbsent(cluster[rows[i]], c -> new double[coefficients.length]);
      for (int j = 0; j < sum.length; j++) {
        sum[j] += scores[i][j];
      }
    }
    int clusters = sums.size();
    double variance = 0;
    for (int key : sums.keySet().stream().sorted().toList()) {
      double moved = 0;
      for (int j = 0; j < coefficients.length; j++) {
        moved += covariance[at][j] * sums.get(key)[j];
      }
      variance += moved * moved;
    }
    if (clusters < 2 || !(variance > 1e-18 * covariance[at][at])) {
      return Estimate.notIdentified(
          "there are too few clusters for a standard error that allows for dependence: "
              + clusters);
    }
    double se = Math.sqrt(variance * clusters / (clusters - 1.0));
    double t =
        -new TDistribution(clusters - 1.0).inverseCumulativeProbability(Confidence.tail(level));
    double value = coefficients[at];
    return Estimate.of(
        new PointEstimate(value, se, new Interval(value - t * se, value + t * se, level)));
  }

  /** Number of clusters among the rows that tell something. */
  public int clusters(int[] cluster) {
    return (int) Arrays.stream(rows).map(row -> cluster[row]).distinct().count();
  }

  private PointEstimate normal(String name, double se, double level) {
    double half = Confidence.z(level) * se;
    double value = coefficient(name);
    return new PointEstimate(value, se, new Interval(value - half, value + half, level));
  }

  private int index(String name) {
    int at = names.indexOf(name);
    if (at < 0) {
      throw new IllegalArgumentException("there is no column " + name + "; columns: " + names);
    }
    return at;
  }
}
