package sealspan.stats.rates;

import java.util.List;
import org.hipparchus.special.Gamma;

/**
 * How rates differ between units: masses on the nodes of a lattice. Where few units were seen there
 * are several equally credible sets of masses, and a posterior is the average over them.
 *
 * @param lattice the rates
 * @param alternatives at least one set of masses, each of sum 1; not to be changed
 */
public record GridPrior(RateLattice lattice, List<double[]> alternatives) {
  public GridPrior {
    alternatives = List.copyOf(alternatives);
    if (alternatives.isEmpty()) {
      throw new IllegalArgumentException("a prior needs at least one set of masses");
    }
    for (double[] masses : alternatives) {
      if (masses.length != lattice.nodes()) {
        throw new IllegalArgumentException(
            masses.length + " masses for " + lattice.nodes() + " nodes");
      }
    }
  }

  /** A gamma prior, each cell with its mass and the ends with all beyond. */
  public static GridPrior of(GammaPrior gamma, RateLattice lattice) {
    double[] masses = new double[lattice.nodes()];
    double below = 0;
    for (int g = 0; g < masses.length; g++) {
      double upTo =
          g == masses.length - 1
              ? 1
              : Gamma.regularizedGammaP(
                  gamma.shape(), gamma.exposureDays() * lattice.perDay(g + .5));
      masses[g] = upTo - below;
      below = upTo;
    }
    return new GridPrior(lattice, List.of(masses));
  }

  /** Mean rate per day. */
  public double meanPerDay() {
    double sum = 0;
    for (double[] masses : alternatives) {
      for (int g = 0; g < masses.length; g++) {
        sum += masses[g] * lattice.perDay(g);
      }
    }
    return sum / alternatives.size();
  }
}
