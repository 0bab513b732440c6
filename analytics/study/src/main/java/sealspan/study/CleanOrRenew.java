package sealspan.study;

import java.util.Locale;
import org.hipparchus.distribution.continuous.NormalDistribution;
import sealspan.stats.Confidence;

/**
 * Whether a new seal pays, one step ahead: it costs more now and saves return visits at the next
 * yearly test. The difference of the two risks is taken as normal about its estimate.
 *
 * @param breakEvenRevisit what a return visit has to cost for both to cost the same; null where
 *     cleaning fails no more often, so that no cost of a visit makes a new seal pay
 * @param probabilityRenewalPays probability that a new seal is cheaper
 * @param expectedSaving what a new seal saves on average; below 0 it costs
 * @param expectedRegret what the choice that the figures favour is expected to lose against knowing
 *     the true difference
 * @param verdict the choice in words; a toss-up where the probability is from .2 to .8
 */
public record CleanOrRenew(
    Double breakEvenRevisit,
    double probabilityRenewalPays,
    double expectedSaving,
    double expectedRegret,
    String verdict) {
  private static final double TOSS_UP = 0.2;
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /**
   * The decision.
   *
   * @param difference risk of failing the next yearly test after cleaning, less that after a new
   *     seal
   * @param lower lower end of its 95 % interval, below the upper
   * @param upper upper end
   * @param extraCost what a new seal costs more than cleaning, above 0
   * @param revisitCost what a failure at the next test costs, above 0, in the same money
   */
  public static CleanOrRenew of(
      double difference, double lower, double upper, double extraCost, double revisitCost) {
    if (!(lower < upper && extraCost > 0 && revisitCost > 0)) {
      throw new IllegalArgumentException(
          "a decision needs an interval with a width, and costs above 0, but got "
              + String.join(", ", "" + lower, "" + upper, "" + extraCost, "" + revisitCost));
    }
    double saving = revisitCost * difference - extraCost;
    double spread = revisitCost * (upper - lower) / (2 * Confidence.z(RepairEffects.LEVEL));
    double off = Math.abs(saving) / spread;
    double pays = NORMAL.cumulativeProbability(saving / spread);
    double regret =
        spread * NORMAL.density(off) - Math.abs(saving) * NORMAL.cumulativeProbability(-off);
    return new CleanOrRenew(
        difference > 0 ? extraCost / difference : null,
        pays,
        saving,
        Math.max(0, regret),
        verdict(pays));
  }

  private static String verdict(double pays) {
    String chance = String.format(Locale.ROOT, "P that a new seal is cheaper: %.2f", pays);
    if (pays >= TOSS_UP && pays <= 1 - TOSS_UP) {
      return "a toss-up; " + chance;
    }
    return (pays > TOSS_UP ? "a new seal" : "cleaning") + " by these costs; " + chance;
  }
}
