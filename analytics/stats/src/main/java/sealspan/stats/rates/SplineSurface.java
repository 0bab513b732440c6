package sealspan.stats.rates;

import sealspan.stats.PositiveSystem;

/**
 * The penalised marginal log-likelihood of a spline prior at some coefficients, with gradient and
 * curvature. With m the prior means of the basis columns and s_i their posterior means given unit
 * i, the gradient is the sum of s_i - m; the curvature is the prior covariance times the number of
 * units less the sum of the posterior covariances.
 */
final class SplineSurface {
  private final GroupRows rows;
  private final double[][] basis;
  private final double[] coefficients;
  private final double ridge;
  private final double[] masses;
  private final double[] gradient;
  private final double[][] curvature;
  private final double[][] spread;
  private final double logLikelihood;
  private final double height;

  SplineSurface(GroupRows rows, double[][] basis, double[] coefficients, double ridge) {
    this.rows = rows;
    this.basis = basis;
    this.coefficients = coefficients;
    this.ridge = ridge;
    masses = masses(basis, coefficients);
    int p = basis.length;
    int nodes = masses.length;
    double[][] weighted = new double[p][nodes];
    double[] mean = new double[p];
    for (int j = 0; j < p; j++) {
      for (int g = 0; g < nodes; g++) {
        weighted[j][g] = masses[g] * basis[j][g];
        mean[j] += weighted[j][g];
      }
    }
    gradient = new double[p];
    curvature = new double[p][p];
    spread = new double[p][p];
    double[] posterior = new double[nodes];
    double[] moment = new double[p];
    double sum = rows.offset();
    for (int i = 0; i < rows.size(); i++) {
      double marginal = moments(rows.row(i), weighted, moment);
      long count = rows.count(i);
      sum += count * StrictMath.log(marginal);
      double weight = count / marginal;
      float[] row = rows.row(i);
      for (int g = 0; g < nodes; g++) {
        posterior[g] += weight * row[g];
      }
      for (int j = 0; j < p; j++) {
        moment[j] /= marginal;
        gradient[j] += count * (moment[j] - mean[j]);
        for (int k = 0; k <= j; k++) {
          curvature[j][k] += count * moment[j] * moment[k];
          spread[j][k] += count * (moment[j] - mean[j]) * (moment[k] - mean[k]);
        }
      }
    }
    double pull = 0;
    for (int j = 0; j < p; j++) {
      for (int k = 0; k <= j; k++) {
        double gap = -rows.units() * mean[j] * mean[k];
        for (int g = 0; g < nodes; g++) {
          gap += (rows.units() - posterior[g]) * weighted[j][g] * basis[k][g];
        }
        curvature[j][k] += gap;
      }
      curvature[j][j] += ridge;
      spread[j][j] += ridge;
      gradient[j] -= ridge * coefficients[j];
      pull += ridge * coefficients[j] * coefficients[j] / 2;
    }
    logLikelihood = sum;
    height = sum - pull;
  }

  /** Marginal likelihood of a row; fills the sums over the weighted columns. */
  private double moments(float[] row, double[][] weighted, double[] moment) {
    double marginal = 0;
    double m0 = 0;
    double m1 = 0;
    double m2 = 0;
    double m3 = 0;
    double m4 = 0;
    double[] w0 = weighted[0];
    double[] w1 = weighted[1];
    double[] w2 = weighted[2];
    double[] w3 = weighted[3];
    double[] w4 = weighted[4];
    for (int g = 0; g < row.length; g++) {
      double likelihood = row[g];
      marginal += likelihood * masses[g];
      m0 += likelihood * w0[g];
      m1 += likelihood * w1[g];
      m2 += likelihood * w2[g];
      m3 += likelihood * w3[g];
      m4 += likelihood * w4[g];
    }
    moment[0] = m0;
    moment[1] = m1;
    moment[2] = m2;
    moment[3] = m3;
    moment[4] = m4;
    return marginal;
  }

  static double[] masses(double[][] basis, double[] coefficients) {
    double[] masses = new double[basis[0].length];
    double most = Double.NEGATIVE_INFINITY;
    for (int g = 0; g < masses.length; g++) {
      for (int j = 0; j < coefficients.length; j++) {
        masses[g] += coefficients[j] * basis[j][g];
      }
      most = Math.max(most, masses[g]);
    }
    double total = 0;
    for (int g = 0; g < masses.length; g++) {
      masses[g] = StrictMath.exp(masses[g] - most);
      total += masses[g];
    }
    for (int g = 0; g < masses.length; g++) {
      masses[g] /= total;
    }
    return masses;
  }

  SplineSurface moved(double[] step, double fraction) {
    double[] moved = coefficients.clone();
    for (int j = 0; j < moved.length; j++) {
      moved[j] += fraction * step[j];
    }
    return new SplineSurface(rows, basis, moved, ridge);
  }

  double[] coefficients() {
    return coefficients;
  }

  double[] masses() {
    return masses;
  }

  double[] gradient() {
    return gradient;
  }

  /**
   * Minus the second derivatives, lower half; far from the top, where the surface need not be
   * concave, the sum over units of squared slopes, which comes to the same at the top.
   */
  double[][] curvature() {
    return PositiveSystem.isPositive(curvature) ? curvature : spread;
  }

  double logLikelihood() {
    return logLikelihood;
  }

  /** The log-likelihood less the penalty. */
  double height() {
    return height;
  }
}
