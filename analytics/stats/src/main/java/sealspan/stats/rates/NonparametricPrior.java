package sealspan.stats.rates;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import sealspan.stats.Estimate;

/**
 * The prior of greatest likelihood among all priors on a lattice (Kiefer and Wolfowitz 1956), by
 * EM. It puts its mass on few rates and serves as a check of smoother ones, not to score units.
 */
public final class NonparametricPrior {
  private static final int STEPS = 200;

  private NonparametricPrior() {}

  /**
   * Climbs until no prior can be better by more than the tolerance, or for 200 steps.
   *
   * @param units units with hidden failures; those without a test are left out
   * @param tolerance of the log-likelihood, above 0
   */
  public static Estimate<GridPriorFit> fit(
      RateLattice lattice, Collection<HiddenFailures> units, double tolerance) {
    List<HiddenFailures> tested = units.stream().filter(unit -> unit.tests() > 0).toList();
    return tested.isEmpty()
        ? Estimate.notIdentified("there is no test with exposure")
        : Estimate.of(fit(new GroupRows(lattice, tested), tolerance));
  }

  static GridPriorFit fit(GroupRows rows, double tolerance) {
    int nodes = rows.lattice().nodes();
    double[] masses = new double[nodes];
    Arrays.fill(masses, 1.0 / nodes);
    double value = 0;
    double gap = Double.POSITIVE_INFINITY;
    for (int step = 1; step <= STEPS && gap > tolerance; step++) {
      double[] pull = new double[nodes];
      value = rows.offset();
      for (int i = 0; i < rows.size(); i++) {
        float[] row = rows.row(i);
        double marginal = 0;
        for (int g = 0; g < nodes; g++) {
          marginal += row[g] * masses[g];
        }
        value += rows.count(i) * StrictMath.log(marginal);
        double weight = rows.count(i) / marginal;
        for (int g = 0; g < nodes; g++) {
          pull[g] += weight * row[g];
        }
      }
      // The directional derivative towards a node is its pull less the number of units, and the
      // log-likelihood is concave: so no prior is better by more than the greatest of them.
      gap = Arrays.stream(pull).max().orElse(0) - rows.units();
      for (int g = 0; g < nodes && gap > tolerance && step < STEPS; g++) {
        masses[g] *= pull[g] / rows.units();
      }
    }
    GridPrior prior = new GridPrior(rows.lattice(), List.of(masses));
    return new GridPriorFit(prior, value, Math.max(0, gap), rows.units());
  }
}
