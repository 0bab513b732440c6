package sealspan.stats.survival;

/**
 * The Newton step of the cumulative hazard at the ends of open cells. The negative Hessian is that
 * of springs between the two ends of each kind of life, tied to the fixed start.
 */
final class TurnbullNewton {
  /** Beyond this many unknowns the matrix costs more than it gains. */
  static final int MOST_BLOCKS = 1_200;

  private TurnbullNewton() {}

  /**
   * The step by block; null where the matrix is not positive definite.
   *
   * @param block block of each cell end; block 0 is fixed
   * @param blocks blocks beside block 0
   */
  static double[] step(
      TurnbullLikelihood likelihood, double[] share, double[] gradient, int[] block, int blocks) {
    double[][] matrix = new double[blocks + 1][blocks + 1];
    double[] right = new double[blocks + 1];
    likelihood.eachEnclosed(
        share,
        (before, last, stiffness) -> {
          int a = block[before];
          int b = block[last];
          matrix[a][a] += stiffness;
          matrix[b][b] += stiffness;
          matrix[b][a] -= stiffness;
        });
    for (int k = 1; k < block.length; k++) {
      right[block[k]] += gradient[k];
    }
    for (int b = 1; b <= blocks; b++) {
      // Ends that no life ties to the start have no curvature; a soft spring keeps their step
      // finite.
      matrix[b][b] += 1e-3 * Math.abs(right[b]) + 1e-9;
    }
    return factorise(matrix, blocks) ? solve(matrix, right, blocks) : null;
  }

  /** Cholesky factor in place, rows and columns from 1. */
  private static boolean factorise(double[][] m, int n) {
    for (int i = 1; i <= n; i++) {
      double[] row = m[i];
      double whole = row[i];
      for (int j = 1; j <= i; j++) {
        double sum = row[j];
        double[] other = m[j];
        for (int k = 1; k < j; k++) {
          sum -= row[k] * other[k];
        }
        if (j < i) {
          row[j] = sum / other[j];
        } else if (sum > 1e-12 * whole) {
          row[i] = Math.sqrt(sum);
        } else {
          return false;
        }
      }
    }
    return true;
  }

  private static double[] solve(double[][] m, double[] right, int n) {
    double[] x = right.clone();
    for (int i = 1; i <= n; i++) {
      for (int k = 1; k < i; k++) {
        x[i] -= m[i][k] * x[k];
      }
      x[i] /= m[i][i];
    }
    for (int i = n; i >= 1; i--) {
      for (int k = i + 1; k <= n; k++) {
        x[i] -= m[k][i] * x[k];
      }
      x[i] /= m[i][i];
    }
    x[0] = 0;
    return x;
  }
}
