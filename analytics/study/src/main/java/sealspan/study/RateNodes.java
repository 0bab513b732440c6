package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GridPrior;
import sealspan.stats.rates.GridScores;
import sealspan.stats.rates.RateLattice;
import sealspan.table.FitRows;
import sealspan.table.RateNodeRow;
import sealspan.table.RatePriorRow;

/** The lattice of rates, to rows and back. */
final class RateNodes {
  private RateNodes() {}

  /** The rows of a prior and of the fleet that was scored with it. */
  static List<RateNodeRow> of(String stratum, GridPrior prior, FleetSums fleet) {
    List<RateNodeRow> rows = new ArrayList<>();
    int nodes = prior.lattice().nodes();
    RateLattice wide = prior.lattice().extended(GridScores.MOST_SHIFT);
    for (int alternative = 0; alternative < prior.alternatives().size(); alternative++) {
      double[] masses = prior.alternatives().get(alternative);
      int beyond = alternative == 0 ? GridScores.MOST_SHIFT : 0;
      for (int node = -beyond; node < nodes + beyond; node++) {
        int place = node + GridScores.MOST_SHIFT;
        rows.add(
            new RateNodeRow(
                stratum,
                alternative,
                node,
                wide.perDay(place) * RatePriors.YEAR_DAYS,
                node < 0 || node >= nodes ? null : masses[node],
                alternative == 0 ? fleet.mass(place) : null,
                alternative == 0 ? fleet.square(place) : null));
      }
    }
    return rows;
  }

  /** Ready to score; null where no prior was fitted. */
  static GridScores scores(RatePriorRow prior, List<RateNodeRow> rows) {
    if (prior.latticeStep() == null) {
      return null;
    }
    int alternatives = 0;
    int nodes = 0;
    for (RateNodeRow row : rows) {
      alternatives = Math.max(alternatives, row.alternative() + 1);
      nodes = row.mass() == null ? nodes : Math.max(nodes, row.node() + 1);
    }
    List<double[]> masses = new ArrayList<>();
    for (int i = 0; i < alternatives; i++) {
      masses.add(new double[nodes]);
    }
    for (RateNodeRow row : rows) {
      if (row.mass() != null) {
        masses.get(row.alternative())[row.node()] = row.mass();
      }
    }
    RateLattice lattice = new RateLattice(prior.latticeLowestLog(), prior.latticeStep(), nodes);
    return new GridScores(new GridPrior(lattice, masses));
  }

  /** The fleet of a fit. */
  static FleetSums fleet(RateLattice wide, FitRows fit) {
    long[] masses = new long[wide.nodes()];
    long[] squares = new long[wide.nodes()];
    for (RateNodeRow row : fit.rateNodes()) {
      if (row.fleetMass() != null) {
        masses[row.node() + GridScores.MOST_SHIFT] = row.fleetMass();
        squares[row.node() + GridScores.MOST_SHIFT] = row.fleetSquare();
      }
    }
    return new FleetSums(masses, squares, fit.ratePrior().ranked());
  }
}
