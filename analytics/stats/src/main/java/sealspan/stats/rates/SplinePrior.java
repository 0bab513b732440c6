package sealspan.stats.rates;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import sealspan.stats.Estimate;
import sealspan.stats.PositiveSystem;

/**
 * Fits how rates differ between units as a smooth curve: the logarithm of the prior masses is a
 * natural spline of the logarithm of the rate (the g-modelling of Efron 2016, Biometrika 103:1),
 * with a ridge that pulls towards equal masses. Whether units differ at all has to be asked before,
 * of {@link RateShrinkage}: this fit always answers with some spread.
 *
 * <p>The order of units is of no account: equal units are merged and the rest summed in sorted
 * order.
 */
public final class SplinePrior {
  /** Degrees of freedom of the spline. */
  public static final int DEGREES_OF_FREEDOM = 5;

  /** Half of this times the squared coefficients is taken from the log-likelihood. */
  public static final double RIDGE = 1;

  /** With fewer units the prior is not taken as known: posteriors average over alternatives. */
  public static final int UNITS_TO_TAKE_AS_KNOWN = 200;

  private static final int STEPS = 100;
  private static final double DONE = 1e-10;

  private SplinePrior() {}

  /** Fits the prior; not identified without a test. Units without a test are left out. */
  public static Estimate<GridPriorFit> fit(RateLattice lattice, Collection<HiddenFailures> units) {
    List<HiddenFailures> tested = units.stream().filter(unit -> unit.tests() > 0).toList();
    return tested.isEmpty()
        ? Estimate.notIdentified("there is no test with exposure")
        : Estimate.of(fit(new GroupRows(lattice, tested)));
  }

  static GridPriorFit fit(GroupRows rows) {
    double[][] basis = SplineBasis.columns(rows.lattice().nodes(), DEGREES_OF_FREEDOM);
    SplineSurface top = climb(rows, basis);
    List<double[]> alternatives = new ArrayList<>();
    if (rows.units() >= UNITS_TO_TAKE_AS_KNOWN) {
      alternatives.add(top.masses());
    } else {
      around(top).forEach(at -> alternatives.add(SplineSurface.masses(basis, at)));
    }
    return new GridPriorFit(
        new GridPrior(rows.lattice(), alternatives), top.logLikelihood(), 0, rows.units());
  }

  private static SplineSurface climb(GroupRows rows, double[][] basis) {
    SplineSurface here = new SplineSurface(rows, basis, new double[DEGREES_OF_FREEDOM], RIDGE);
    for (int i = 0; i < STEPS; i++) {
      double[] step = PositiveSystem.of(here.curvature()).solve(here.gradient());
      double gain = 0;
      double length = 0;
      for (int j = 0; j < step.length; j++) {
        gain += here.gradient()[j] * step[j];
        length += step[j] * step[j];
      }
      if (!(gain > DONE)) {
        return here;
      }
      double fraction = Math.min(1, 4 / Math.sqrt(length));
      SplineSurface next = here.moved(step, fraction);
      while (!(next.height() > here.height()) && fraction > 1e-9) {
        fraction /= 4;
        next = here.moved(step, fraction);
      }
      if (!(next.height() > here.height())) {
        return here;
      }
      here = next;
    }
    return here;
  }

  /**
   * Ten points that have the mean and the covariance of the normal approximation to what the units
   * say of the coefficients (a spherical-radial rule of degree three).
   */
  private static List<double[]> around(SplineSurface top) {
    int p = DEGREES_OF_FREEDOM;
    double[][] covariance = PositiveSystem.of(top.curvature()).inverse();
    for (int j = 0; j < p; j++) {
      for (int k = 0; k < j; k++) {
        covariance[j][k] = covariance[k][j];
      }
    }
    RealMatrix root =
        new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false), 1e-6, 1e-16).getL();
    List<double[]> points = new ArrayList<>();
    for (int j = 0; j < p; j++) {
      for (int sign = -1; sign <= 1; sign += 2) {
        double[] point = top.coefficients().clone();
        for (int k = 0; k < p; k++) {
          point[k] += sign * Math.sqrt(p) * root.getEntry(k, j);
        }
        points.add(point);
      }
    }
    return points;
  }
}
