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
  private final double[] influence;
  private final double[] weight;
  private final double[] driftSettled;
  private double drift;
  private double squares;
  private double weighted;
  private double weightSquares;

  /** Starts with every influence and every weight at zero. */
  public InfluenceSum(int units) {
    influence = new double[units];
    weight = new double[units];
    driftSettled = new double[units];
  }

  /** Sets a unit's weight from now on. */
  public void weigh(int unit, double newWeight) {
    settle(unit);
    double old = weight[unit];
    weighted += (newWeight - old) * influence[unit];
    weightSquares += newWeight * newWeight - old * old;
    weight[unit] = newWeight;
  }

  /** Lowers every unit's influence by its weight times the amount. */
  public void lowerAll(double amount) {
    squares += amount * (amount * weightSquares - 2 * weighted);
    weighted -= amount * weightSquares;
    drift += amount;
  }

  /** Raises one unit's influence. */
  public void raise(int unit, double amount) {
    settle(unit);
    squares += amount * (amount + 2 * influence[unit]);
    weighted += amount * weight[unit];
    influence[unit] += amount;
  }

  /** The sum of squared influences; never negative. */
  public double sumOfSquares() {
    return Math.max(0, squares);
  }

  private void settle(int unit) {
    influence[unit] -= weight[unit] * (drift - driftSettled[unit]);
    driftSettled[unit] = drift;
  }
}
