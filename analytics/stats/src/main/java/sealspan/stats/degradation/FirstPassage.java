package sealspan.stats.degradation;

/**
 * When a level that drifts and wanders is first below a limit: the inverse Gaussian distribution
 * (Chhikara and Folks 1989; from memory).
 */
public final class FirstPassage {
  private FirstPassage() {}

  /**
   * Probability that the level is below the limit at any time within some days.
   *
   * @param above how far the level is above the limit now; at or below 0 the answer is 1
   * @param driftPerDay drift, a day
   * @param volatilityPerRootDay standard deviation of the wander after a day, at least 0
   * @param days at least 0
   */
  public static double probability(
      double above, double driftPerDay, double volatilityPerRootDay, double days) {
    if (above <= 0) {
      return 1;
    }
    double sd = volatilityPerRootDay * Math.sqrt(days);
    if (sd == 0) {
      return above + driftPerDay * days < 0 ? 1 : 0;
    }
    double variance = volatilityPerRootDay * volatilityPerRootDay;
    double passedNow = Bell.below((-above - driftPerDay * days) / sd);
    // The product of a large and a tiny number: their logs add.
    double returned =
        StrictMath.exp(
            -2 * driftPerDay * above / variance
                + Bell.logBelow((-above + driftPerDay * days) / sd));
    return Math.min(1, passedNow + returned);
  }
}
