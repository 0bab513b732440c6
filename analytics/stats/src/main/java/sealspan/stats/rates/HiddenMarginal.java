package sealspan.stats.rates;

import java.util.Collection;
import java.util.List;
import sealspan.stats.NewtonAscent;

/**
 * The marginal likelihood of a gamma prior given units with hidden failures. Units without a
 * failure have a closed form; the others are integrated by the trapezoidal rule in the logarithm of
 * the rate, which converges faster than any power of the step for such smooth, two-sidedly decaying
 * integrands.
 */
final class HiddenMarginal {
  /** Relative mass that may be lost below the lowest rate of the grid. */
  private static final double LOWEST_RATE_TIMES_EXPOSURE = 1e-7;

  private static final double LOG_RANGE_ABOVE_POOLED = 9;

  private final List<UnitGroup> groups;
  private final LikelihoodRows rows;

  HiddenMarginal(Collection<HiddenFailures> units, double pooledLogRate) {
    groups = UnitGroup.merged(units);
    long longest = 1;
    int most = 0;
    for (HiddenFailures unit : units) {
      longest = Math.max(longest, unit.totalDays());
      most = Math.max(most, unit.failures());
    }
    rows =
        new LikelihoodRows(
            RateLattice.spanning(
                StrictMath.log(LOWEST_RATE_TIMES_EXPOSURE / longest),
                pooledLogRate + LOG_RANGE_ABOVE_POOLED,
                Math.min(0.08, 0.9 / Math.sqrt(most))));
  }

  /** Log-likelihood and derivatives at log shape x and log mean y. */
  NewtonAscent.Point at(double x, double y) {
    GammaSurface surface = new GammaSurface(x, y);
    PriorNodes prior = new PriorNodes(rows, x, y);
    double exposure = StrictMath.exp(x - y);
    double shape = StrictMath.exp(x);
    double[] row = new double[rows.nodes()];
    for (UnitGroup group : groups) {
      if (group.failedDays().length == 0) {
        double ratio = group.passedTotalDays() / exposure;
        surface.addConjugate(group.count(), -shape * StrictMath.log1p(ratio), 0, ratio);
      } else {
        double offset = rows.fill(group.passedTotalDays(), group.failedDays(), row);
        prior.add(surface, group.count(), offset, row);
      }
    }
    return surface.point();
  }
}
