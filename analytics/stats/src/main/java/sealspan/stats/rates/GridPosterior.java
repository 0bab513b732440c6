package sealspan.stats.rates;

import java.util.function.DoubleUnaryOperator;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;

/**
 * What is known of one unit's rate: masses on a lattice of sum 1. Between nodes a mass lies spread
 * evenly over its cell in the logarithm of the rate. Not safe for several threads.
 */
public final class GridPosterior {
  private static final double ONE = 1L << FleetSums.BITS;

  private final RateLattice lattice;
  private final double[] perDay;
  private final double[] masses;
  private final int from;
  private final int to;
  private long[] whole;
  private double[] above;
  private int first;
  private int end;

  GridPosterior(RateLattice lattice, double[] masses) {
    this(lattice, lattice.allPerDay(), masses, 0, masses.length);
  }

  /** With the rates of all nodes worked out before; all mass lies from one node to another. */
  GridPosterior(RateLattice lattice, double[] perDay, double[] masses, int from, int to) {
    this.lattice = lattice;
    this.perDay = perDay;
    this.masses = masses;
    this.from = from;
    this.to = to;
  }

  /** Posterior mean rate per day. */
  public double meanPerDay() {
    double sum = 0;
    for (int g = from; g < to; g++) {
      sum += masses[g] * perDay[g];
    }
    return sum;
  }

  /** Posterior mean of a function of the rate per day. */
  public double mean(DoubleUnaryOperator ofPerDay) {
    double sum = 0;
    for (int g = from; g < to; g++) {
      sum += masses[g] == 0 ? 0 : masses[g] * ofPerDay.applyAsDouble(perDay[g]);
    }
    return sum;
  }

  /** Posterior probability that the rate exceeds a limit, per day and above 0. */
  public double probabilityAbove(double perDay) {
    double position = lattice.position(perDay) + .5;
    if (position <= 0) {
      return 1;
    }
    int cell = (int) Math.min(position, lattice.nodes());
    double sum = cell < masses.length ? masses[cell] * (cell + 1 - position) : 0;
    for (int g = Math.max(from, cell + 1); g < to; g++) {
      sum += masses[g];
    }
    return Math.min(1, sum);
  }

  /** Equal-tailed posterior interval of the rate per day. */
  public Interval interval(double level) {
    double tail = Confidence.tail(level);
    return new Interval(lower(tail), upper(tail), level);
  }

  private double lower(double tail) {
    double sum = 0;
    for (int g = from; g < to; g++) {
      if (sum + masses[g] >= tail) {
        return lattice.perDay(g - .5 + (tail - sum) / masses[g]);
      }
      sum += masses[g];
    }
    return lattice.perDay(masses.length - .5);
  }

  private double upper(double tail) {
    double sum = 0;
    for (int g = to - 1; g >= from; g--) {
      if (sum + masses[g] >= tail) {
        return lattice.perDay(g + .5 - (tail - sum) / masses[g]);
      }
      sum += masses[g];
    }
    return lattice.perDay(-.5);
  }

  /** The masses in units of 2^-40, with a sum of 2^40 exactly; not to be changed. */
  long[] wholeMasses() {
    if (whole == null) {
      whole = rounded();
    }
    return whole;
  }

  /** Probability of a rate above each node, with half of that at it; not to be changed. */
  double[] above() {
    if (above == null) {
      above = FleetSums.above(wholeMasses());
    }
    return above;
  }

  /** The first node with a whole mass. */
  int first() {
    wholeMasses();
    return first;
  }

  /** The node after the last with a whole mass. */
  int end() {
    wholeMasses();
    return end;
  }

  private long[] rounded() {
    long[] whole = new long[masses.length];
    long left = (long) ONE;
    int largest = from;
    for (int g = from; g < to; g++) {
      whole[g] = (long) (masses[g] * ONE);
      left -= whole[g];
      largest = whole[g] > whole[largest] ? g : largest;
    }
    whole[largest] += left;
    for (first = from; whole[first] == 0; first++) {}
    for (end = to; whole[end - 1] == 0; end--) {}
    return whole;
  }

  RateLattice lattice() {
    return lattice;
  }
}
