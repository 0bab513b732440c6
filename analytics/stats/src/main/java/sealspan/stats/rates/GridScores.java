package sealspan.stats.rates;

/**
 * Scores units with a prior on a lattice. A unit may have a known multiplier of its rate, in whole
 * nodes of the lattice: its prior is then shifted by so many. Not safe for several threads.
 */
public final class GridScores {
  /** The largest shift either way. */
  public static final int MOST_SHIFT = 64;

  private final GridPrior prior;
  private final RateLattice lattice;
  private final LikelihoodRows likelihood;
  private final double[] perDay;
  private final double[] row;

  /** Prepares a prior. */
  public GridScores(GridPrior prior) {
    this.prior = prior;
    lattice = prior.lattice().extended(MOST_SHIFT);
    likelihood = new LikelihoodRows(lattice);
    perDay = lattice.allPerDay();
    row = new double[prior.lattice().nodes()];
  }

  /** The prior's lattice with room for shifts at either end; posteriors are on it. */
  public RateLattice lattice() {
    return lattice;
  }

  /** The prior. */
  public GridPrior prior() {
    return prior;
  }

  /**
   * What is known of a unit's rate; without tests, the shifted prior.
   *
   * @param unit its tests
   * @param shift logarithm of its multiplier, in nodes; cut to {@link #MOST_SHIFT} either way
   */
  public GridPosterior posterior(HiddenFailures unit, int shift) {
    int from = MOST_SHIFT + Math.max(-MOST_SHIFT, Math.min(MOST_SHIFT, shift));
    likelihood.fill(unit.passedTotalDays(), unit.failedDays(), from, row);
    double[] masses = new double[lattice.nodes()];
    int alternatives = prior.alternatives().size();
    for (double[] each : prior.alternatives()) {
      double total = 0;
      for (int g = 0; g < row.length; g++) {
        total += row[g] * each[g];
      }
      double scale = 1 / (total * alternatives);
      for (int g = 0; g < row.length; g++) {
        masses[from + g] += row[g] * each[g] * scale;
      }
    }
    return new GridPosterior(lattice, perDay, masses, from, from + row.length);
  }
}
