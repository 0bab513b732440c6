package sealspan.stats.rates;

/**
 * Rates evenly spaced in the logarithm. A node stands for the cell around it that reaches halfway
 * to its neighbours.
 *
 * @param lowestLogPerDay logarithm of the lowest rate, per day
 * @param step distance of neighbours in the logarithm, above 0
 * @param nodes number of nodes, at least 2
 */
public record RateLattice(double lowestLogPerDay, double step, int nodes) {
  public RateLattice {
    if (!Double.isFinite(lowestLogPerDay) || !(step > 0) || nodes < 2) {
      throw new IllegalArgumentException(
          "a lattice needs a step above 0 and at least 2 nodes, but got " + step + " and " + nodes);
    }
  }

  /** From the lowest to the highest rate per day, both nodes. */
  public static RateLattice between(double lowestPerDay, double highestPerDay, int nodes) {
    double low = StrictMath.log(lowestPerDay);
    return new RateLattice(low, (StrictMath.log(highestPerDay) - low) / (nodes - 1), nodes);
  }

  static RateLattice spanning(double lowestLog, double highestLog, double widestStep) {
    int nodes = (int) Math.ceil((highestLog - lowestLog) / widestStep) + 1;
    return new RateLattice(lowestLog, (highestLog - lowestLog) / (nodes - 1), nodes);
  }

  /** The same lattice with so many more nodes at either end. */
  public RateLattice extended(int more) {
    return new RateLattice(lowestLogPerDay - more * step, step, nodes + 2 * more);
  }

  /** Logarithm of the rate of a node. */
  public double logPerDay(double node) {
    return lowestLogPerDay + node * step;
  }

  /** Rate per day of a node; between nodes for a number that is not whole. */
  public double perDay(double node) {
    return StrictMath.exp(logPerDay(node));
  }

  /** Rates per day of all nodes. */
  double[] allPerDay() {
    double[] rates = new double[nodes];
    for (int g = 0; g < nodes; g++) {
      rates[g] = perDay(g);
    }
    return rates;
  }

  /** Where a rate lies, as a number of nodes from the lowest; may lie outside. */
  public double position(double perDay) {
    return (StrictMath.log(perDay) - lowestLogPerDay) / step;
  }

  /** A multiplier of rates, rounded to whole nodes. */
  public int shift(double multiplier) {
    return (int) Math.rint(StrictMath.log(multiplier) / step);
  }
}
