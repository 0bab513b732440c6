package sealspan.stats.regression;

import java.util.HashMap;
import java.util.Map;
import sealspan.stats.PositiveSystem;

/** Completes a fit with its covariances and measures of fit. */
final class Covariances {
  private Covariances() {}

  static RegressionFit complete(
      Family family, Observations data, double[] penalties, LogLikelihoodAscent.Top top) {
    int p = penalties.length;
    double[] predictor = Predictors.of(data, top.coefficients());
    double[][] information = new double[p][p];
    Map<Integer, double[]> scores = new HashMap<>();
    Family.Terms terms = new Family.Terms();
    double constants = 0;
    double saturated = 0;
    double pearson = 0;
    int rows = 0;
    double[][] columns = data.design().columns();
    for (int i = 0; i < predictor.length; i++) {
      double weight = data.weight()[i];
      if (weight == 0) {
        continue;
      }
      rows++;
      double response = data.response()[i];
      family.at(response, predictor[i], terms);
      constants += weight * family.constant(response);
      saturated += weight * family.saturated(response);
      double residual = response - family.mean(predictor[i]);
      double variance = family.variance(predictor[i]);
      pearson += variance > 0 ? weight * residual * residual / variance : 0;
      double[] score = scores.computeIfAbsent(data.cluster()[i], c -> new double[p]);
      for (int j = 0; j < p; j++) {
        double value = columns[j][i];
        score[j] += weight * terms.score * value;
        for (int k = 0; k <= j; k++) {
          information[j][k] += weight * terms.information * value * columns[k][i];
        }
      }
    }
    for (int j = 0; j < p; j++) {
      information[j][j] += penalties[j];
    }
    double[][] bread = PositiveSystem.of(information).inverse();
    return new RegressionFit(
        family,
        data.design().names(),
        top.coefficients(),
        bread,
        sandwich(bread, scores),
        top.logLikelihood() + constants,
        2 * (saturated - top.logLikelihood()),
        pearson,
        rows,
        scores.size());
  }

  private static double[][] sandwich(double[][] bread, Map<Integer, double[]> scores) {
    int p = bread.length;
    double[][] meat = new double[p][p];
    scores.keySet().stream()
        .sorted()
        .map(scores::get)
        .forEach(
            score -> {
              for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                  meat[j][k] += score[j] * score[k];
                }
              }
            });
    return product(product(bread, meat), bread);
  }

  private static double[][] product(double[][] a, double[][] b) {
    int p = a.length;
    double[][] c = new double[p][p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j < p; j++) {
        for (int k = 0; k < p; k++) {
          c[i][j] += a[i][k] * b[k][j];
        }
      }
    }
    return c;
  }
}
