package sealspan.stats;

import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;

/**
 * A symmetric positive definite system, given by its lower half. It is scaled to a unit diagonal
 * first; where rounding or separation has left it singular, the diagonal is raised a little.
 */
public final class PositiveSystem {
  private static final double LEAST_LIFT = 1e-14;

  private final double[] scale;
  private final DecompositionSolver solver;

  private PositiveSystem(double[] scale, DecompositionSolver solver) {
    this.scale = scale;
    this.solver = solver;
  }

  /** Prepares the system; entries above the diagonal are not read. */
  public static PositiveSystem of(double[][] lowerHalf) {
    int p = lowerHalf.length;
    double[] scale = new double[p];
    for (int j = 0; j < p; j++) {
      double diagonal = lowerHalf[j][j];
      scale[j] =
          diagonal > 0 && Double.isFinite(diagonal) ? 1 / Math.sqrt(diagonal) : Double.MIN_NORMAL;
    }
    if (p == 0) {
      return new PositiveSystem(scale, null);
    }
    for (double lift = 0; ; lift = lift == 0 ? LEAST_LIFT : 10 * lift) {
      CholeskyDecomposition root = root(lowerHalf, scale, lift);
      if (root != null) {
        return new PositiveSystem(scale, root.getSolver());
      }
    }
  }

  /** Whether the system is positive definite as it stands. */
  public static boolean isPositive(double[][] lowerHalf) {
    double[] scale = new double[lowerHalf.length];
    for (int j = 0; j < scale.length; j++) {
      if (!(lowerHalf[j][j] > 0)) {
        return false;
      }
      scale[j] = 1 / Math.sqrt(lowerHalf[j][j]);
    }
    return root(lowerHalf, scale, 0) != null;
  }

  /** The root of the scaled matrix with a raised diagonal; null where it is not positive. */
  private static CholeskyDecomposition root(double[][] lowerHalf, double[] scale, double lift) {
    int p = scale.length;
    double[][] scaled = new double[p][p];
    for (int j = 0; j < p; j++) {
      for (int k = 0; k < j; k++) {
        scaled[j][k] = lowerHalf[j][k] * scale[j] * scale[k];
        scaled[k][j] = scaled[j][k];
      }
      scaled[j][j] = 1 + lift;
    }
    try {
      return new CholeskyDecomposition(new Array2DRowRealMatrix(scaled, false), 1e-8, 1e-14);
    } catch (MathIllegalArgumentException notPositive) {
      return null;
    }
  }

  /** The solution for a right-hand side. */
  public double[] solve(double[] right) {
    int p = scale.length;
    double[] scaled = new double[p];
    for (int j = 0; j < p; j++) {
      scaled[j] = right[j] * scale[j];
    }
    if (p == 0) {
      return scaled;
    }
    double[] solved = solver.solve(new ArrayRealVector(scaled, false)).toArray();
    for (int j = 0; j < p; j++) {
      solved[j] *= scale[j];
    }
    return solved;
  }

  /** The inverse matrix. */
  public double[][] inverse() {
    int p = scale.length;
    double[][] inverse = new double[p][];
    for (int j = 0; j < p; j++) {
      double[] unit = new double[p];
      unit[j] = 1;
      inverse[j] = solve(unit);
    }
    return inverse;
  }
}
