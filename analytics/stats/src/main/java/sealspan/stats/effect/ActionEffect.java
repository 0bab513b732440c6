package sealspan.stats.effect;

import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;

/**
 * What each of two actions would have led to.
 *
 * @param comparable risks among comparable cases: each case counts as far as it might as well have
 *     got the other action
 * @param all risks among all cases, which rest on the model where no comparable case exists
 * @param balance how alike the groups are, covariate by covariate
 * @param effectiveFirst cases that the weighted first group is worth
 * @param effectiveSecond cases that the weighted second group is worth
 * @param comparableShare share of the cases whose probability of the second action is from .05 to
 *     .95
 */
public record ActionEffect(
    Risks comparable,
    Risks all,
    List<Balance> balance,
    double effectiveFirst,
    double effectiveSecond,
    double comparableShare) {

  /** Fewer failures, or fewer passes, after one of the actions tell nothing of it. */
  public static final int FEWEST_OF_A_KIND = 5;

  /** Beyond this difference, in standard deviations, weighted groups do not compare. */
  public static final double LARGEST_DIFFERENCE = 0.25;

  /** Outside of this and one less this, a probability of the second action has no counterpart. */
  public static final double LEAST_PROBABILITY = 0.05;

  /**
   * Risks within one unit of exposure.
   *
   * @param first had all cases got the first action
   * @param second had all got the second
   * @param difference first less second
   * @param ratio first over second
   */
  public record Risks(
      PointEstimate first, PointEstimate second, PointEstimate difference, PointEstimate ratio) {}

  public ActionEffect {
    balance = List.copyOf(balance);
  }

  /**
   * The effect, by overlap weights (Li, Morgan and Zaslavsky 2018, Journal of the American
   * Statistical Association 113:390) of a logistic model of the choice, and a complementary log-log
   * model with the log of the exposure as offset for what followed each action. The second model is
   * shifted until it meets the weighted failures, so that the answer holds if either model does.
   * Intervals take units as what was sampled and both models as estimated.
   *
   * @param cases the cases
   * @param level two-sided level of the intervals
   */
  public static Estimate<ActionEffect> of(ComparedCases cases, double level) {
    String tooFew = tooFew(cases);
    if (tooFew != null) {
      return Estimate.notIdentified(tooFew);
    }
    return new EffectFit(cases, level).estimate();
  }

  private static String tooFew(ComparedCases cases) {
    for (Arm arm : Arm.values()) {
      if (cases.cases(arm) == 0) {
        return "no case got " + (arm == Arm.FIRST ? "the first action" : "the second action");
      }
    }
    for (Arm arm : Arm.values()) {
      int n = cases.cases(arm);
      int failures = cases.failures(arm);
      String which = arm == Arm.FIRST ? "first" : "second";
      if (failures < FEWEST_OF_A_KIND) {
        return of(failures, n) + " failed after the " + which + " action";
      }
      if (n - failures < FEWEST_OF_A_KIND) {
        return of(n - failures, n) + " held after the " + which + " action";
      }
    }
    return cases.units() < 2 * FEWEST_OF_A_KIND
        ? "the cases belong to only " + cases.units() + " units"
        : null;
  }

  private static String of(int count, int cases) {
    return (count == 0 ? "none" : "only " + count) + " of " + cases + " cases";
  }
}
