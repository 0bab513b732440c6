package sealspan.stats.rates;

import java.util.Arrays;

/**
 * The rank of a unit by its rate within a fleet: 1 for the highest rate. Work of order nodes per
 * unit, whatever the number of units (of order nodes x log units for an interval).
 *
 * <p>Given the unit's own rate, the number of others above it is a sum of independent events with
 * known mean and variance. Its distribution is taken as the binomial with these two moments, which
 * is exact for units that are alike (Ehm 1991, Statistics and Probability Letters 11:7).
 */
public final class FleetRanks {
  private static final int EACH_RANK_UP_TO = 32;
  private static final double RATIO = 1.07;

  private final double[] unitsAbove;
  private final double[] squaresAbove;
  private final long units;
  private final long[] ranks;
  private final double[][][] atMost;
  private long tabled;
  private double[][] tabledAtMost;

  /** The rank within the unit sums; the unit itself must be among them. */
  public FleetRanks(FleetSums fleet) {
    unitsAbove = fleet.unitsAbove();
    squaresAbove = fleet.squaresAbove();
    units = fleet.units();
    ranks = ranks(units);
    atMost = new double[ranks.length][][];
  }

  /** Units of the fleet. */
  public long units() {
    return units;
  }

  /**
   * Expected rank of a unit of the fleet; ties are shared, so that the sum over all units is n (n +
   * 1) / 2. It minimises the squared error of ranks (Laird and Louis 1989).
   */
  public double expected(GridPosterior unit) {
    long[] whole = unit.wholeMasses();
    double sum = 0;
    for (int g = unit.first(); g < unit.end(); g++) {
      sum += whole[g] / (double) (1L << FleetSums.BITS) * unitsAbove[g];
    }
    // The unit itself counts for exactly one half in the sum.
    return sum + .5;
  }

  /** Probability that the unit is among the so many with the highest rates. */
  public double probabilityInWorst(long most, GridPosterior unit) {
    if (most >= units) {
      return 1;
    }
    if (most < 1) {
      return 0;
    }
    if (tabledAtMost == null || tabled != most) {
      tabled = most;
      tabledAtMost = table(most);
    }
    return probability(unit, tabledAtMost);
  }

  /**
   * A range of ranks that the unit's rank leaves with at most half of the error at either end.
   * Beyond rank 32 its ends are rounded outward by up to 7 %.
   */
  public RankInterval interval(GridPosterior unit, double level) {
    double tail = sealspan.stats.Confidence.tail(level);
    int low = firstReaching(unit, tail);
    int high = firstReaching(unit, 1 - tail);
    return new RankInterval(low == 0 ? 1 : ranks[low - 1] + 1, ranks[high], level);
  }

  /**
   * The first tabled rank that the unit's rank exceeds with at most the rest of probability. Sought
   * outward from the rank of the rate that the unit exceeds with that probability: most often it is
   * next to it.
   */
  private int firstReaching(GridPosterior unit, double probability) {
    int last = ranks.length - 1;
    int at = tabledAt(unitsAbove[exceededWith(unit, probability)]);
    int low;
    int high;
    if (at == last || reaches(unit, at, probability)) {
      high = at;
      int below = at - 1;
      for (int step = 2; below >= 0 && reaches(unit, below, probability); step *= 2) {
        high = below;
        below -= step;
      }
      low = Math.max(0, below + 1);
    } else {
      low = at + 1;
      int above = at + 1;
      for (int step = 2; above < last && !reaches(unit, above, probability); step *= 2) {
        low = above + 1;
        above += step;
      }
      high = Math.min(above, last);
    }
    while (low < high) {
      int middle = (low + high) / 2;
      if (reaches(unit, middle, probability)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** The first node that the unit's rate lies above with at most this probability. */
  private static int exceededWith(GridPosterior unit, double probability) {
    double[] above = unit.above();
    int low = unit.first();
    int high = unit.end() - 1;
    while (low < high) {
      int middle = (low + high) / 2;
      if (above[middle] <= probability) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** The tabled rank of a unit with so many above it, or the next beyond. */
  private int tabledAt(double unitsAbove) {
    int at = Arrays.binarySearch(ranks, (long) unitsAbove + 1);
    return Math.min(ranks.length - 1, at >= 0 ? at : -1 - at);
  }

  private boolean reaches(GridPosterior unit, int rank, double probability) {
    if (atMost[rank] == null) {
      atMost[rank] = table(ranks[rank]);
    }
    return probability(unit, atMost[rank]) >= probability;
  }

  /** Sum over the unit's nodes. */
  private static double probability(GridPosterior unit, double[][] table) {
    long[] whole = unit.wholeMasses();
    double[] above = unit.above();
    double sum = 0;
    for (int g = unit.first(); g < unit.end(); g++) {
      double t = above[g];
      sum += whole[g] * (table[0][g] + t * (table[1][g] + t * table[2][g]));
    }
    return Math.max(0, Math.min(1, sum / (1L << FleetSums.BITS)));
  }

  /**
   * P(at most rank - 1 other units lie above) at each node, as a parabola in the unit's own chance
   * of lying above it, through its values at no, even and full chance.
   */
  private double[][] table(long rank) {
    double[][] table = new double[3][unitsAbove.length];
    for (int g = 0; g < unitsAbove.length; g++) {
      double none = atMost(rank - 1, g, 0);
      double even = atMost(rank - 1, g, .5);
      double full = atMost(rank - 1, g, 1);
      table[0][g] = none;
      table[1][g] = 4 * even - 3 * none - full;
      table[2][g] = 2 * (none + full - 2 * even);
    }
    return table;
  }

  private double atMost(long most, int node, double own) {
    return MatchedBinomial.atMost(
        most,
        Math.max(0, unitsAbove[node] - own),
        Math.max(0, squaresAbove[node] - own * own),
        units - 1);
  }

  private static long[] ranks(long units) {
    java.util.TreeSet<Long> ranks = new java.util.TreeSet<>();
    for (long rank = 1; rank <= Math.min(units, EACH_RANK_UP_TO); rank++) {
      ranks.add(rank);
    }
    for (double rank = EACH_RANK_UP_TO; rank < units; rank *= RATIO) {
      ranks.add((long) rank);
    }
    ranks.add(Math.max(1, units));
    return ranks.stream().mapToLong(Long::longValue).toArray();
  }
}
