package sealspan.stats;

/**
 * The sum over units of squared influences, kept up to date in constant time per change: a robust
 * variance that treats the unit, not the event, as what was sampled.
 *
 * <p>Each unit has an influence and a weight (how much of it is at risk). An event at one time
 * moves every unit's influence by its weight times one number; only sums over units are touched for
 * that, and a unit's own influence is settled when the unit itself changes.
 */
public final class InfluenceSum {
  private static final int INFLUENCE = 0;
  private static final int WEIGHT = 1;
  private static final int DRIFT_SETTLED = 2;
  private static final int STRIDE = 3;

  /** Influence, weight and drift settled of each unit side by side, as they are used together. */
  private final double[] state;

  private double drift;
  private double squares;
  private double weighted;
  private double weightSquares;

  /** Starts with every influence and every weight at zero. */
  public InfluenceSum(int units) {
    state = new double[Math.multiplyExact(STRIDE, units)];
  }

  /** Sets a unit's weight from now on. */
  public void weigh(int unit, double newWeight) {
    int at = settle(unit);
    double old = state[at + WEIGHT];
    weighted += (newWeight - old) * state[at + INFLUENCE];
    weightSquares += newWeight * newWeight - old * old;
    state[at + WEIGHT] = newWeight;
  }

  /** Lowers every unit's influence by its weight times the amount. */
  public void lowerAll(double amount) {
    squares += amount * (amount * weightSquares - 2 * weighted);
    weighted -= amount * weightSquares;
    drift += amount;
  }

  /** Raises one unit's influence. */
  public void raise(int unit, double amount) {
    int at = settle(unit);
    squares += amount * (amount + 2 * state[at + INFLUENCE]);
    weighted += amount * state[at + WEIGHT];
    state[at + INFLUENCE] += amount;
  }

  /** The sum of squared influences; never negative. */
  public double sumOfSquares() {
    return Math.max(0, squares);
  }

  private int settle(int unit) {
    int at = STRIDE * unit;
    state[at + INFLUENCE] -= state[at + WEIGHT] * (drift - state[at + DRIFT_SETTLED]);
    state[at + DRIFT_SETTLED] = drift;
    return at;
  }
}
