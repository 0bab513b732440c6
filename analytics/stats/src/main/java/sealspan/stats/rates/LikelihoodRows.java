package sealspan.stats.rates;

import java.util.HashMap;
import java.util.Map;

/**
 * The likelihood of a unit's tests at the nodes of a grid of rates, evenly spaced in the logarithm.
 * Days are whole, so each row is a product of rows kept for a day count: no exponential per unit.
 * Not safe for several threads.
 */
final class LikelihoodRows {
  /** Beyond this many failures a product could underflow; then logarithms are added instead. */
  private static final int MOST_FACTORS = 16;

  /** Rows kept of one kind, so that a long run with any exposures needs bounded memory. */
  private static final int MOST_KEPT = 4_096;

  private static final int BLOCK_BITS = 8;
  private static final int BLOCK = 1 << BLOCK_BITS;

  private final double step;
  private final double[] logRate;
  private final double[] rate;
  private final double[][] passWithinBlock = new double[BLOCK][];
  private final Map<Integer, double[]> passBlocks = new HashMap<>();
  private final Map<Integer, double[]> failures = new HashMap<>();

  LikelihoodRows(RateLattice lattice) {
    step = lattice.step();
    logRate = new double[lattice.nodes()];
    rate = new double[lattice.nodes()];
    for (int g = 0; g < rate.length; g++) {
      logRate[g] = lattice.logPerDay(g);
      rate[g] = lattice.perDay(g);
    }
  }

  int nodes() {
    return rate.length;
  }

  double step() {
    return step;
  }

  double logRate(int node) {
    return logRate[node];
  }

  double rate(int node) {
    return rate[node];
  }

  /** Fills the row up to a factor; returns the logarithm of that factor. */
  double fill(long passedTotalDays, int[] failedDays, double[] row) {
    return fill(passedTotalDays, failedDays, 0, row);
  }

  /** The same for the nodes from one onward, as many as the row is long. */
  double fill(long passedTotalDays, int[] failedDays, int from, double[] row) {
    return failedDays.length <= MOST_FACTORS
        ? product(passedTotalDays, failedDays, from, row)
        : sumOfLogarithms(passedTotalDays, failedDays, from, row);
  }

  private double product(long passedTotalDays, int[] failedDays, int from, double[] row) {
    double[] block = passBlock((int) (passedTotalDays >> BLOCK_BITS));
    double[] within = passWithin((int) (passedTotalDays & (BLOCK - 1)));
    for (int g = 0; g < row.length; g++) {
      row[g] = block[from + g] * within[from + g];
    }
    for (int days : failedDays) {
      double[] factor = failure(days);
      for (int g = 0; g < row.length; g++) {
        row[g] *= factor[from + g];
      }
    }
    return 0;
  }

  private double sumOfLogarithms(long passedTotalDays, int[] failedDays, int from, double[] row) {
    double most = Double.NEGATIVE_INFINITY;
    for (int g = 0; g < row.length; g++) {
      double sum = -rate[from + g] * passedTotalDays;
      for (int days : failedDays) {
        sum += StrictMath.log(failure(days)[from + g]);
      }
      row[g] = sum;
      most = Math.max(most, sum);
    }
    for (int g = 0; g < row.length; g++) {
      row[g] = StrictMath.exp(row[g] - most);
    }
    return most;
  }

  private static void makeRoom(Map<Integer, double[]> kept) {
    if (kept.size() >= MOST_KEPT) {
      kept.clear();
    }
  }

  private double[] passBlock(int block) {
    makeRoom(passBlocks);
    return passBlocks.computeIfAbsent(block, b -> pass((double) b * BLOCK));
  }

  private double[] passWithin(int days) {
    if (passWithinBlock[days] == null) {
      passWithinBlock[days] = pass(days);
    }
    return passWithinBlock[days];
  }

  private double[] pass(double days) {
    double[] row = new double[rate.length];
    for (int g = 0; g < row.length; g++) {
      row[g] = StrictMath.exp(-rate[g] * days);
    }
    return row;
  }

  private double[] failure(int days) {
    makeRoom(failures);
    return failures.computeIfAbsent(
        days,
        d -> {
          double[] row = new double[rate.length];
          for (int g = 0; g < row.length; g++) {
            row[g] = -StrictMath.expm1(-rate[g] * d);
          }
          return row;
        });
  }
}
