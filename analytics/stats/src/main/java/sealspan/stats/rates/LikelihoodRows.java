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

  private static final int BLOCK_BITS = 8;
  private static final int BLOCK = 1 << BLOCK_BITS;

  private final double[] logRate;
  private final double[] rate;
  private final double[][] passWithinBlock = new double[BLOCK][];
  private final Map<Integer, double[]> passBlocks = new HashMap<>();
  private final Map<Integer, double[]> failures = new HashMap<>();

  LikelihoodRows(double lowestLogRate, double highestLogRate, double widestStep) {
    int nodes = (int) Math.ceil((highestLogRate - lowestLogRate) / widestStep) + 1;
    double step = (highestLogRate - lowestLogRate) / (nodes - 1);
    logRate = new double[nodes];
    rate = new double[nodes];
    for (int g = 0; g < nodes; g++) {
      logRate[g] = lowestLogRate + g * step;
      rate[g] = StrictMath.exp(logRate[g]);
    }
  }

  int nodes() {
    return rate.length;
  }

  double step() {
    return logRate[1] - logRate[0];
  }

  double logRate(int node) {
    return logRate[node];
  }

  double rate(int node) {
    return rate[node];
  }

  /** Fills the row up to a factor; returns the logarithm of that factor. */
  double fill(long passedTotalDays, int[] failedDays, double[] row) {
    return failedDays.length <= MOST_FACTORS
        ? product(passedTotalDays, failedDays, row)
        : sumOfLogarithms(passedTotalDays, failedDays, row);
  }

  private double product(long passedTotalDays, int[] failedDays, double[] row) {
    double[] block = passBlock((int) (passedTotalDays >> BLOCK_BITS));
    double[] within = passWithin((int) (passedTotalDays & (BLOCK - 1)));
    for (int g = 0; g < row.length; g++) {
      row[g] = block[g] * within[g];
    }
    for (int days : failedDays) {
      double[] factor = failure(days);
      for (int g = 0; g < row.length; g++) {
        row[g] *= factor[g];
      }
    }
    return 0;
  }

  private double sumOfLogarithms(long passedTotalDays, int[] failedDays, double[] row) {
    double most = Double.NEGATIVE_INFINITY;
    for (int g = 0; g < row.length; g++) {
      double sum = -rate[g] * passedTotalDays;
      for (int days : failedDays) {
        sum += StrictMath.log(failure(days)[g]);
      }
      row[g] = sum;
      most = Math.max(most, sum);
    }
    for (int g = 0; g < row.length; g++) {
      row[g] = StrictMath.exp(row[g] - most);
    }
    return most;
  }

  private double[] passBlock(int block) {
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
