package sealspan.stats.regression;

import java.util.List;
import sealspan.stats.PositiveSystem;

/** The penalised log-likelihood at some coefficients, with gradient and curvature. */
final class Slope {
  private final Family family;
  private final Observations data;
  private final double[] penalties;
  private final double[] coefficients;
  private final double logLikelihood;
  private final double penalised;
  private final double[] gradient;
  private final double[][] curvature;

  Slope(Family family, Observations data, double[] penalties, double[] coefficients) {
    this.family = family;
    this.data = data;
    this.penalties = penalties;
    this.coefficients = coefficients;
    double sum = 0;
    double[] predictor = predictor();
    Family.Terms terms = new Family.Terms();
    int p = coefficients.length;
    gradient = new double[p];
    curvature = new double[p][p];
    double[] row = new double[p];
    double[][] columns = data.design().columns();
    for (int i = 0; i < predictor.length; i++) {
      double weight = data.weight()[i];
      if (weight > 0) {
        family.at(data.response()[i], predictor[i], terms);
        sum += weight * terms.logLikelihood;
        accumulate(columns, i, row, weight * terms.score, weight * terms.curvature);
      }
    }
    double pull = 0;
    for (int j = 0; j < p; j++) {
      pull += penalties[j] * coefficients[j] * coefficients[j] / 2;
      gradient[j] -= penalties[j] * coefficients[j];
      curvature[j][j] += penalties[j];
    }
    logLikelihood = sum;
    penalised = sum - pull;
  }

  private void accumulate(double[][] columns, int i, double[] row, double score, double bend) {
    for (int j = 0; j < row.length; j++) {
      double value = columns[j][i];
      row[j] = value;
      gradient[j] += score * value;
      double scaled = bend * value;
      double[] line = curvature[j];
      for (int k = 0; k <= j; k++) {
        line[k] += scaled * row[k];
      }
    }
  }

  double penalised() {
    return penalised;
  }

  double[] newtonStep() {
    return PositiveSystem.of(curvature).solve(gradient);
  }

  double gain(double[] step) {
    double gain = 0;
    for (int j = 0; j < step.length; j++) {
      gain += gradient[j] * step[j];
    }
    return gain;
  }

  /** The largest move of a linear predictor. */
  double widest(double[] step) {
    double widest = 0;
    double[][] columns = data.design().columns();
    for (int i = 0; i < data.response().length; i++) {
      double move = 0;
      for (int j = 0; j < step.length; j++) {
        move += columns[j][i] * step[j];
      }
      widest = Math.max(widest, data.weight()[i] > 0 ? Math.abs(move) : 0);
    }
    return widest;
  }

  Slope moved(double[] step, double fraction) {
    double[] moved = new double[step.length];
    for (int j = 0; j < step.length; j++) {
      moved[j] = coefficients[j] + fraction * step[j];
    }
    return new Slope(family, data, penalties, moved);
  }

  LogLikelihoodAscent.Top top(boolean converged, List<String> separated) {
    return new LogLikelihoodAscent.Top(coefficients, logLikelihood, converged, separated);
  }

  private double[] predictor() {
    return Predictors.of(data, coefficients);
  }
}
