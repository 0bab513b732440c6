package sealspan.stats.rates;

/**
 * Columns of a natural cubic spline on the nodes of a lattice (Hastie, Tibshirani and Friedman, The
 * Elements of Statistical Learning, 5.2.1), knots evenly spaced, without a constant. Columns are
 * uncorrelated over the nodes, with mean 0 and variance 1, so that a ridge does not depend on how
 * the spline is written.
 */
final class SplineBasis {
  private SplineBasis() {}

  /** One array per column, of as many values as there are nodes. */
  static double[][] columns(int nodes, int degreesOfFreedom) {
    double[][] columns = new double[degreesOfFreedom][nodes];
    double last = nodes - 1.0;
    for (int g = 0; g < nodes; g++) {
      double x = g / last;
      columns[0][g] = x;
      for (int k = 1; k < degreesOfFreedom; k++) {
        columns[k][g] =
            cubic(x, k - 1, degreesOfFreedom) - cubic(x, degreesOfFreedom - 1, degreesOfFreedom);
      }
    }
    for (int k = 0; k < degreesOfFreedom; k++) {
      centre(columns[k]);
      // Twice, because one pass leaves rounding behind.
      for (int pass = 0; pass < 2; pass++) {
        for (int j = 0; j < k; j++) {
          double share = product(columns[k], columns[j]) / nodes;
          for (int g = 0; g < nodes; g++) {
            columns[k][g] -= share * columns[j][g];
          }
        }
      }
      double scale = Math.sqrt(nodes / product(columns[k], columns[k]));
      for (int g = 0; g < nodes; g++) {
        columns[k][g] *= scale;
      }
    }
    return columns;
  }

  private static double cubic(double x, int knot, int intervals) {
    double at = (double) knot / intervals;
    double above = Math.max(0, x - at);
    double beyond = Math.max(0, x - 1);
    return (above * above * above - beyond * beyond * beyond) / (1 - at);
  }

  private static void centre(double[] column) {
    double sum = 0;
    for (double each : column) {
      sum += each;
    }
    for (int g = 0; g < column.length; g++) {
      column[g] -= sum / column.length;
    }
  }

  private static double product(double[] a, double[] b) {
    double sum = 0;
    for (int g = 0; g < a.length; g++) {
      sum += a[g] * b[g];
    }
    return sum;
  }
}
