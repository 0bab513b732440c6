package sealspan.stats.rates;

/**
 * What ranking one unit needs to know of all: for each node of the lattice, the units expected
 * there, and the sum over units of the squared probability of lying above it. Sums are whole
 * numbers of 2^-40, so they are exact in any order and a unit can be taken out again. At most 8
 * million units. Not safe for several threads.
 */
public final class FleetSums {
  static final int BITS = 40;
  private static final double ONE = 1L << BITS;

  private final long[] masses;
  private final long[] squares;
  private long units;

  /** No unit yet. */
  public FleetSums(RateLattice lattice) {
    this(new long[lattice.nodes()], new long[lattice.nodes()], 0);
  }

  /**
   * As it was when {@link #mass}, {@link #square} and {@link #units} were read.
   *
   * @param masses one per node
   * @param squares one per node
   */
  public FleetSums(long[] masses, long[] squares, long units) {
    if (masses.length != squares.length) {
      throw new IllegalArgumentException(
          masses.length + " masses but " + squares.length + " sums of squares");
    }
    this.masses = masses.clone();
    this.squares = squares.clone();
    this.units = units;
  }

  /** Takes a unit in. */
  public void add(GridPosterior unit) {
    move(unit, 1);
  }

  /** Takes a unit out that was taken in with the same posterior. */
  public void remove(GridPosterior unit) {
    move(unit, -1);
  }

  private void move(GridPosterior unit, int sign) {
    long[] whole = unit.wholeMasses();
    double[] above = unit.above();
    for (int g = 0; g < whole.length; g++) {
      masses[g] += sign * whole[g];
      squares[g] += sign * (long) (above[g] * above[g] * ONE);
    }
    units += sign;
  }

  /** Units taken in. */
  public long units() {
    return units;
  }

  /** Expected number of units at a node, in 2^-40. */
  public long mass(int node) {
    return masses[node];
  }

  /** Sum of squared probabilities of lying above a node, in 2^-40. */
  public long square(int node) {
    return squares[node];
  }

  /** Expected number of units above each node, with half of those at it. */
  double[] unitsAbove() {
    return above(masses);
  }

  double[] squaresAbove() {
    double[] sums = new double[squares.length];
    for (int g = 0; g < sums.length; g++) {
      sums[g] = squares[g] / ONE;
    }
    return sums;
  }

  /** For each node the sum of what lies above it, with half of what lies at it. */
  static double[] above(long[] whole) {
    double[] above = new double[whole.length];
    long sum = 0;
    for (int g = whole.length - 1; g >= 0; g--) {
      above[g] = (sum + whole[g] / 2.0) / ONE;
      sum += whole[g];
    }
    return above;
  }
}
