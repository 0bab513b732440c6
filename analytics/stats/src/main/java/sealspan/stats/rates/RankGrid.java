package sealspan.stats.rates;

import java.util.List;

/**
 * Expected ranks of units by their rate (1 = highest) in work of order units x nodes. A unit's
 * posterior becomes masses on a common grid, in whole units of 2^-40; the fleet's masses are their
 * sum. Sums of whole numbers are exact in any order and a unit can be taken out again, so the fleet
 * can be kept up to date as units change. At most 8 million units. Not safe for several threads.
 */
public final class RankGrid {
  private static final int BITS = 40;
  private static final long ONE = 1L << BITS;
  private static final double LOWEST_RATE_TIMES_EXPOSURE = 1e-4;

  private final GammaPrior prior;
  private final LikelihoodRows rows;
  private final double[] priorMass;
  private final double[] row;

  /**
   * A grid for one prior; masses of different grids must not be mixed.
   *
   * @param prior the prior in force
   * @param longestTotalDays the longest total exposure of a unit, at least 1
   * @param mostFailures the most failures of a unit
   */
  public RankGrid(GammaPrior prior, long longestTotalDays, int mostFailures) {
    this.prior = prior;
    double a = prior.shape();
    rows =
        new LikelihoodRows(
            StrictMath.log(LOWEST_RATE_TIMES_EXPOSURE / (prior.exposureDays() + longestTotalDays)),
            StrictMath.log((a + 10 * Math.sqrt(a) + 50) / prior.exposureDays()),
            Math.min(0.08, 0.9 / Math.sqrt(a + mostFailures)));
    priorMass = new double[rows.nodes()];
    row = new double[rows.nodes()];
    double peak = a * StrictMath.log(a / prior.exposureDays()) - a;
    for (int g = 0; g < priorMass.length; g++) {
      priorMass[g] =
          StrictMath.exp(a * rows.logRate(g) - prior.exposureDays() * rows.rate(g) - peak);
    }
  }

  /** Number of nodes. */
  public int nodes() {
    return rows.nodes();
  }

  /** The unit's posterior as masses that sum to 2^40 exactly. */
  public long[] masses(HiddenFailures unit) {
    rows.fill(unit.passedTotalDays(), unit.failedDays(), row);
    double total = 0;
    for (int g = 0; g < row.length; g++) {
      row[g] *= priorMass[g];
    }
    // Below the lowest node the density is a power of the rate: the node stands for a geometric
    // sum.
    row[0] /= -StrictMath.expm1(-(prior.shape() + unit.failures()) * rows.step());
    for (double each : row) {
      total += each;
    }
    long[] masses = new long[row.length];
    long left = ONE;
    int largest = 0;
    for (int g = 0; g < row.length; g++) {
      masses[g] = (long) (row[g] / total * ONE);
      left -= masses[g];
      largest = masses[g] > masses[largest] ? g : largest;
    }
    masses[largest] += left;
    return masses;
  }

  /** Adds a unit's masses to the fleet's (sign 1) or takes them out (sign -1). */
  public static void add(long[] fleet, long[] unit, int sign) {
    for (int g = 0; g < fleet.length; g++) {
      fleet[g] += sign * unit[g];
    }
  }

  /** For each node, how many units are expected above it, with half of those at it. */
  public static double[] unitsAbove(long[] fleet) {
    double[] above = new double[fleet.length];
    long sum = 0;
    for (int g = fleet.length - 1; g >= 0; g--) {
      above[g] = (sum + fleet[g] / 2.0) / ONE;
      sum += fleet[g];
    }
    return above;
  }

  /**
   * The expected rank of a unit that is part of the fleet: 1 for the highest rate, ties shared.
   *
   * @param unitsAbove from {@link #unitsAbove}
   */
  public static double expectedRank(long[] unit, double[] unitsAbove) {
    double sum = 0;
    for (int g = 0; g < unit.length; g++) {
      sum += (double) unit[g] / ONE * unitsAbove[g];
    }
    // The unit itself counts for exactly one half in the sum.
    return sum + 0.5;
  }

  /** Expected ranks of all units, in the order given. */
  public static double[] expectedRanks(GammaPrior prior, List<HiddenFailures> units) {
    long longest = 1;
    int most = 0;
    for (HiddenFailures unit : units) {
      longest = Math.max(longest, unit.totalDays());
      most = Math.max(most, unit.failures());
    }
    RankGrid grid = new RankGrid(prior, longest, most);
    long[] fleet = new long[grid.nodes()];
    for (HiddenFailures unit : units) {
      add(fleet, grid.masses(unit), 1);
    }
    double[] above = unitsAbove(fleet);
    double[] ranks = new double[units.size()];
    for (int i = 0; i < ranks.length; i++) {
      ranks[i] = expectedRank(grid.masses(units.get(i)), above);
    }
    return ranks;
  }
}
