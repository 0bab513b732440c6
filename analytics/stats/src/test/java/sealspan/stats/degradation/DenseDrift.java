package sealspan.stats.degradation;

import java.util.List;

/**
 * The slow way: the readings of a run as one normal vector with a full covariance matrix. The level
 * before the first reading has a very wide prior.
 */
final class DenseDrift {
  /** Variance of the level before anything was read. */
  private static final double WIDE = 1e6;

  private final List<GaugedReading> readings;
  private final DriftModel model;

  DenseDrift(List<GaugedReading> readings, DriftModel model) {
    this.readings = readings;
    this.model = model;
  }

  private double days(int i) {
    return readings.get(i).day() - readings.get(0).day();
  }

  private double levels(double a, double b) {
    double drift = model.driftSdPerDay() * model.driftSdPerDay();
    double wander = model.volatilityPerRootDay() * model.volatilityPerRootDay();
    return drift * a * b + wander * Math.min(a, b);
  }

  private double errors(int i, int j) {
    boolean sameGauge = readings.get(i).gaugePeriod().equals(readings.get(j).gaugePeriod());
    GaugedReading r = readings.get(i);
    double shared = sameGauge ? model.biasShare() * r.error().biasVariance() : 0;
    double own = model.errorShare() * r.error().ownVariance() + r.step() * r.step() / 12;
    return shared + (i == j ? own : 0);
  }

  /** Log density of the readings after the first, given the first. */
  double logLikelihood() {
    int n = readings.size() - 1;
    double[][] covariance = new double[n][n];
    double[] residual = new double[n];
    for (int i = 0; i < n; i++) {
      residual[i] =
          readings.get(i + 1).value() - readings.get(0).value() - model.driftPerDay() * days(i + 1);
      for (int j = 0; j < n; j++) {
        covariance[i][j] =
            levels(days(i + 1), days(j + 1))
                + errors(i + 1, j + 1)
                - errors(i + 1, 0)
                - errors(0, j + 1)
                + errors(0, 0);
      }
    }
    double[] solved = residual.clone();
    double logDeterminant = solve(covariance, solved);
    double square = 0;
    for (int i = 0; i < n; i++) {
      square += residual[i] * solved[i];
    }
    return -0.5 * (n * Math.log(2 * Math.PI) + logDeterminant + square);
  }

  /** Mean and variance of the level some days after the first reading, given all readings. */
  double[] levelOn(double day) {
    int n = readings.size();
    double[][] covariance = new double[n][n];
    double[] residual = new double[n];
    double[] with = new double[n];
    double start = readings.get(0).value();
    for (int i = 0; i < n; i++) {
      residual[i] = readings.get(i).value() - start - model.driftPerDay() * days(i);
      with[i] = WIDE + levels(day, days(i));
      for (int j = 0; j < n; j++) {
        covariance[i][j] = WIDE + levels(days(i), days(j)) + errors(i, j);
      }
    }
    double[] weights = with.clone();
    solve(covariance, weights);
    double mean = start + model.driftPerDay() * day;
    double variance = WIDE + levels(day, day);
    for (int i = 0; i < n; i++) {
      mean += weights[i] * residual[i];
      variance -= weights[i] * with[i];
    }
    return new double[] {mean, variance};
  }

  /** Solves in place by Gauss with pivots; gives the log of the determinant. */
  private static double solve(double[][] given, double[] right) {
    int n = right.length;
    double[][] a = new double[n][];
    for (int i = 0; i < n; i++) {
      a[i] = given[i].clone();
    }
    double logDeterminant = 0;
    for (int k = 0; k < n; k++) {
      logDeterminant += Math.log(a[k][k]);
      for (int i = k + 1; i < n; i++) {
        double factor = a[i][k] / a[k][k];
        for (int j = k; j < n; j++) {
          a[i][j] -= factor * a[k][j];
        }
        right[i] -= factor * right[k];
      }
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int j = i + 1; j < n; j++) {
        right[i] -= a[i][j] * right[j];
      }
      right[i] /= a[i][i];
    }
    return logDeterminant;
  }
}
