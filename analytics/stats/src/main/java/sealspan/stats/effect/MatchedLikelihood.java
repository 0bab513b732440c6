package sealspan.stats.effect;

import java.util.List;

/**
 * The conditional log likelihood with its derivatives. The sum over all ways in which as many cases
 * of a stratum could have failed is built case by case: with one more case, k failures come from k
 * without it or from k - 1 with it. Sums are kept in proportion to their largest.
 *
 * @param logLikelihood without the ridge
 * @param penalised with it
 * @param gradient of the penalised
 * @param information negative second derivatives of the penalised
 */
record MatchedLikelihood(
    double logLikelihood, double penalised, double[] gradient, double[][] information) {

  static MatchedLikelihood of(List<MatchedChoice.Stratum> strata, double[] at, double[] ridges) {
    int p = at.length;
    double[] gradient = new double[p];
    double[][] information = new double[p][p];
    double sum = 0;
    for (MatchedChoice.Stratum stratum : strata) {
      sum += new Ways(stratum, at).addTo(gradient, information);
    }
    double penalised = sum;
    for (int j = 0; j < p; j++) {
      penalised -= ridges[j] * at[j] * at[j] / 2;
      gradient[j] -= ridges[j] * at[j];
      information[j][j] += ridges[j];
    }
    return new MatchedLikelihood(sum, penalised, gradient, information);
  }

  /** The sum over all ways, by number of failures, with its derivatives. */
  private static final class Ways {
    private final MatchedChoice.Stratum stratum;
    private final double[] at;
    private final int failures;
    private final double[] value;
    private final double[][] slope;
    private final double[][][] bend;
    private double logScale;

    Ways(MatchedChoice.Stratum stratum, double[] at) {
      int p = at.length;
      this.stratum = stratum;
      this.at = at;
      this.failures = stratum.failures();
      this.value = new double[failures + 1];
      this.slope = new double[failures + 1][p];
      this.bend = new double[failures + 1][p][p];
      value[0] = 1;
      double highest = Double.NEGATIVE_INFINITY;
      for (double[] row : stratum.covariates()) {
        highest = Math.max(highest, dot(row));
      }
      int seen = 0;
      for (double[] row : stratum.covariates()) {
        seen++;
        add(row, StrictMath.exp(dot(row) - highest), Math.min(seen, failures));
      }
      logScale += failures * highest;
    }

    private double dot(double[] row) {
      double sum = 0;
      for (int j = 0; j < at.length; j++) {
        sum += row[j] * at[j];
      }
      return sum;
    }

    private void add(double[] x, double odds, int most) {
      int p = at.length;
      for (int k = most; k >= 1; k--) {
        for (int j = 0; j < p; j++) {
          for (int l = 0; l < p; l++) {
            bend[k][j][l] +=
                odds
                    * (bend[k - 1][j][l]
                        + x[j] * slope[k - 1][l]
                        + x[l] * slope[k - 1][j]
                        + x[j] * x[l] * value[k - 1]);
          }
        }
        for (int j = 0; j < p; j++) {
          slope[k][j] += odds * (slope[k - 1][j] + x[j] * value[k - 1]);
        }
        value[k] += odds * value[k - 1];
      }
      double largest = 0;
      for (double one : value) {
        largest = Math.max(largest, one);
      }
      if (largest > 1e100) {
        shrink(1 / largest);
        logScale += StrictMath.log(largest);
      }
    }

    private void shrink(double by) {
      for (int k = 0; k <= failures; k++) {
        value[k] *= by;
        for (int j = 0; j < at.length; j++) {
          slope[k][j] *= by;
          for (int l = 0; l < at.length; l++) {
            bend[k][j][l] *= by;
          }
        }
      }
    }

    /** Adds the derivatives and gives the log likelihood. */
    double addTo(double[] gradient, double[][] information) {
      int p = at.length;
      double logLikelihood = -logScale - StrictMath.log(value[failures]);
      for (int i = 0; i < stratum.failed().length; i++) {
        if (stratum.failed()[i]) {
          double[] row = stratum.covariates()[i];
          logLikelihood += dot(row);
          for (int j = 0; j < p; j++) {
            gradient[j] += row[j];
          }
        }
      }
      for (int j = 0; j < p; j++) {
        double mean = slope[failures][j] / value[failures];
        gradient[j] -= mean;
        for (int l = 0; l < p; l++) {
          information[j][l] +=
              bend[failures][j][l] / value[failures] - mean * slope[failures][l] / value[failures];
        }
      }
      return logLikelihood;
    }
  }
}
