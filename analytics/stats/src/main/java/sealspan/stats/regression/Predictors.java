package sealspan.stats.regression;

/** Linear predictors. */
final class Predictors {
  private Predictors() {}

  /** Offset plus columns times coefficients, for each row. */
  static double[] of(Observations data, double[] coefficients) {
    double[] predictor = data.offset().clone();
    for (int j = 0; j < coefficients.length; j++) {
      double[] values = data.design().values(j);
      double coefficient = coefficients[j];
      for (int i = 0; i < predictor.length; i++) {
        predictor[i] += coefficient * values[i];
      }
    }
    return predictor;
  }
}
