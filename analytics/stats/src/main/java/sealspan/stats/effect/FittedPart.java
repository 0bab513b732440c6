package sealspan.stats.effect;

import sealspan.stats.regression.RegressionFit;

/**
 * A fitted regression as a part of a larger estimate: how each case moves its coefficients.
 *
 * @param fit the fit, of the constant and all scaled covariates
 * @param scores derivative of each case's log likelihood by its linear predictor; 0 for a case that
 *     was not used
 */
record FittedPart(RegressionFit fit, double[] scores) {
  private static final double MOST_LEVERAGE = 0.9;

  /**
   * What each residual is to be multiplied with, {@code 1 / sqrt(1 - leverage)}: the square of a
   * residual is too small by the share of its own fit that the case decides, and with it the
   * variance from few cases (HC2 of MacKinnon and White 1985, Journal of Econometrics 29:305).
   *
   * @param information what each case tells of its linear predictor; 0 for a case not used
   */
  double[] widening(ComparedCases cases, double[] information) {
    double[][] inverse = fit.modelCovariance();
    int width = inverse.length;
    double[] widening = new double[information.length];
    double[] row = new double[width];
    row[0] = 1;
    for (int i = 0; i < widening.length; i++) {
      if (information[i] > 0) {
        for (int j = 1; j < width; j++) {
          row[j] = cases.scaled()[j - 1][i];
        }
        double quadratic = 0;
        for (int j = 0; j < width; j++) {
          double product = 0;
          for (int k = 0; k < width; k++) {
            product += inverse[j][k] * row[k];
          }
          quadratic += row[j] * product;
        }
        double leverage = Math.min(MOST_LEVERAGE, information[i] * quadratic);
        widening[i] = 1 / Math.sqrt(1 - leverage);
      }
    }
    return widening;
  }

  /** The linear predictor of each case, without an offset. */
  double[] predictor(ComparedCases cases) {
    double[] coefficients = fit.coefficients();
    double[] predictor = new double[cases.size()];
    java.util.Arrays.fill(predictor, coefficients[0]);
    for (int j = 1; j < coefficients.length; j++) {
      double[] column = cases.scaled()[j - 1];
      for (int i = 0; i < predictor.length; i++) {
        predictor[i] += coefficients[j] * column[i];
      }
    }
    return predictor;
  }

  /** Derivative of a sum over cases by the coefficients, from its derivatives by predictors. */
  static double[] gradient(ComparedCases cases, double[] byPredictor) {
    double[] gradient = new double[cases.scaled().length + 1];
    gradient[0] = java.util.Arrays.stream(byPredictor).sum();
    for (int j = 1; j < gradient.length; j++) {
      double[] column = cases.scaled()[j - 1];
      for (int i = 0; i < byPredictor.length; i++) {
        gradient[j] += byPredictor[i] * column[i];
      }
    }
    return gradient;
  }

  /** Adds to the influences what the cases do through the coefficients. */
  void pass(ComparedCases cases, double[] gradient, double times, double[] influence) {
    double[][] inverse = fit.modelCovariance();
    double[] along = new double[gradient.length];
    for (int j = 0; j < along.length; j++) {
      for (int k = 0; k < along.length; k++) {
        along[j] += inverse[j][k] * gradient[k];
      }
    }
    double[] moved = new double[influence.length];
    java.util.Arrays.fill(moved, along[0]);
    for (int j = 1; j < along.length; j++) {
      double[] column = cases.scaled()[j - 1];
      for (int i = 0; i < moved.length; i++) {
        moved[i] += along[j] * column[i];
      }
    }
    for (int i = 0; i < influence.length; i++) {
      influence[i] += times * scores[i] * moved[i];
    }
  }
}
