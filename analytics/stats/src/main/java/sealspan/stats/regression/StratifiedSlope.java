package sealspan.stats.regression;

import sealspan.stats.PositiveSystem;

/**
 * The log-likelihood at some coefficients and constants of the strata. The constants are eliminated
 * stratum by stratum, so that the work grows with the rows and not with the square of the strata.
 */
final class StratifiedSlope {
  private final Family family;
  private final Observations data;
  private final Strata strata;
  private final double[] constants;
  private final double[] coefficients;
  private double logLikelihood;
  private final double[] gradient;
  private final double[][] curvature;
  private final double[] constantGradient;
  private final double[] constantCurvature;
  private final double[][] cross;

  StratifiedSlope(
      Family family,
      Observations data,
      Strata strata,
      double[] constants,
      double[] coefficients,
      boolean expected) {
    this.family = family;
    this.data = data;
    this.strata = strata;
    this.constants = constants;
    this.coefficients = coefficients;
    int p = coefficients.length;
    gradient = new double[p];
    curvature = new double[p][p];
    constantGradient = new double[strata.count()];
    constantCurvature = new double[strata.count()];
    cross = new double[strata.count()][p];
    Family.Terms terms = new Family.Terms();
    for (int s = 0; s < strata.count(); s++) {
      for (int i = strata.from(s); i < strata.until(s); i++) {
        add(s, strata.rows()[i], terms, expected);
      }
    }
  }

  private void add(int s, int row, Family.Terms terms, boolean expected) {
    double weight = data.weight()[row];
    family.at(data.response()[row], predictor(s, row), terms);
    double score = weight * terms.score;
    double bend = weight * (expected ? terms.information : terms.curvature);
    logLikelihood += weight * terms.logLikelihood;
    constantGradient[s] += score;
    constantCurvature[s] += bend;
    for (int j = 0; j < coefficients.length; j++) {
      double value = data.design().values(j)[row];
      gradient[j] += score * value;
      cross[s][j] += bend * value;
      for (int k = 0; k <= j; k++) {
        curvature[j][k] += bend * value * data.design().values(k)[row];
      }
    }
  }

  double predictor(int stratum, int row) {
    double predictor = data.offset()[row] + constants[stratum];
    for (int j = 0; j < coefficients.length; j++) {
      predictor += coefficients[j] * data.design().values(j)[row];
    }
    return predictor;
  }

  double logLikelihood() {
    return logLikelihood;
  }

  double[] coefficients() {
    return coefficients;
  }

  /** The information about the coefficients when the constants are not known; lower half. */
  double[][] information() {
    int p = coefficients.length;
    double[][] left = new double[p][p];
    for (int j = 0; j < p; j++) {
      for (int k = 0; k <= j; k++) {
        double lost = 0;
        for (int s = 0; s < cross.length; s++) {
          lost += cross[s][j] * cross[s][k] / held(s);
        }
        left[j][k] = curvature[j][k] - lost;
      }
    }
    return left;
  }

  /** Mean of a column in a stratum, weighted by information. */
  double mean(int stratum, int column) {
    return cross[stratum][column] / held(stratum);
  }

  private double held(int stratum) {
    return Math.max(constantCurvature[stratum], 1e-300);
  }

  /** A Newton step: first the coefficients, then the constants. */
  double[] newtonStep() {
    int p = coefficients.length;
    double[] right = gradient.clone();
    for (int j = 0; j < p; j++) {
      for (int s = 0; s < cross.length; s++) {
        right[j] -= mean(s, j) * constantGradient[s];
      }
    }
    double[] move = PositiveSystem.of(information()).solve(right);
    double[] step = new double[p + cross.length];
    System.arraycopy(move, 0, step, 0, p);
    for (int s = 0; s < cross.length; s++) {
      double rest = constantGradient[s];
      for (int j = 0; j < p; j++) {
        rest -= cross[s][j] * move[j];
      }
      step[p + s] = rest / held(s);
    }
    return step;
  }

  double gain(double[] step) {
    int p = coefficients.length;
    double gain = 0;
    for (int j = 0; j < step.length; j++) {
      gain += step[j] * (j < p ? gradient[j] : constantGradient[j - p]);
    }
    return gain;
  }

  StratifiedSlope moved(double[] step, double fraction) {
    int p = coefficients.length;
    double[] next = coefficients.clone();
    double[] levels = constants.clone();
    for (int j = 0; j < step.length; j++) {
      if (j < p) {
        next[j] += fraction * step[j];
      } else {
        levels[j - p] += fraction * step[j];
      }
    }
    return new StratifiedSlope(family, data, strata, levels, next, false);
  }

  /** The same place with expected instead of observed curvature. */
  StratifiedSlope expected() {
    return new StratifiedSlope(family, data, strata, constants, coefficients, true);
  }
}
