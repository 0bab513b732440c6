package sealspan.stats.recurrence;

/**
 * A test whether events come at a constant rate.
 *
 * @param statistic the statistic; its distribution is that of the test
 * @param events events that enter it
 * @param units units with such events
 * @param risingP probability, at a constant rate, of a statistic at least as far on the side of a
 *     rising rate
 * @param fallingP the same on the side of a falling rate
 */
public record TrendTest(double statistic, int events, int units, double risingP, double fallingP) {

  /** Twice the smaller tail, at most 1. */
  public double twoSidedP() {
    return Math.min(1, 2 * Math.min(risingP, fallingP));
  }
}
