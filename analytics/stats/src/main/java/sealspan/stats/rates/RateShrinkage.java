package sealspan.stats.rates;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.hipparchus.special.Gamma;
import sealspan.stats.Estimate;
import sealspan.stats.NewtonAscent;

/**
 * Fits the gamma prior of rates by marginal likelihood, so that a unit with little history borrows
 * from the others. The order of units is of no account: equal units are merged and the rest summed
 * in sorted order, to the last bit.
 */
public final class RateShrinkage {
  /** Fewer units than this say nothing about how units differ. */
  public static final int FEWEST_UNITS = 5;

  /** Fewer failures than this say nothing about how units differ. */
  public static final int FEWEST_FAILURES = 5;

  private static final double LOWEST_SHAPE = 0.01;
  private static final double HIGHEST_SHAPE = 200;
  private static final double LOG_MEAN_RANGE = 7;

  private RateShrinkage() {}

  /**
   * Fits the prior to units whose failures are found only at tests; units without a test are left
   * out.
   */
  public static Estimate<PriorFit> fitHidden(Collection<HiddenFailures> units) {
    List<HiddenFailures> tested = new ArrayList<>();
    long failures = 0;
    long passed = 0;
    long total = 0;
    for (HiddenFailures unit : units) {
      if (unit.tests() > 0) {
        tested.add(unit);
        failures += unit.failures();
        passed += unit.passedTotalDays();
        total += unit.totalDays();
      }
    }
    String obstacle = obstacle(tested.size(), failures);
    if (obstacle != null) {
      return Estimate.notIdentified(obstacle);
    }
    if (passed == 0) {
      return Estimate.notIdentified("every test failed, so the rates have no upper limit");
    }
    double start = StrictMath.log((double) failures / total);
    HiddenMarginal marginal = new HiddenMarginal(tested, start);
    return climb(marginal::at, start, tested.size(), failures);
  }

  /**
   * Fits the prior to counted events (marginally negative binomial).
   *
   * @param events events per unit
   * @param exposureDays exposure per unit, above 0
   */
  public static Estimate<PriorFit> fitCounted(long[] events, double[] exposureDays) {
    if (events.length != exposureDays.length) {
      throw new IllegalArgumentException(
          events.length + " counts but " + exposureDays.length + " exposures");
    }
    long failures = 0;
    for (long each : events) {
      failures += each;
    }
    String obstacle = obstacle(events.length, failures);
    if (obstacle != null) {
      return Estimate.notIdentified(obstacle);
    }
    List<CountedUnit> sorted = CountedUnit.sorted(events, exposureDays);
    double total = 0;
    for (CountedUnit unit : sorted) {
      total += unit.exposureDays();
    }
    return climb(
        (x, y) -> counted(sorted, x, y), StrictMath.log(failures / total), events.length, failures);
  }

  private static String obstacle(int units, long failures) {
    if (failures == 0) {
      return "none of the " + units + " units has failed";
    }
    if (units < FEWEST_UNITS) {
      return "there are only " + units + " units; how units differ needs at least " + FEWEST_UNITS;
    }
    if (failures < FEWEST_FAILURES) {
      return "there are only "
          + failures
          + " failures; how units differ needs at least "
          + FEWEST_FAILURES;
    }
    return null;
  }

  private static Estimate<PriorFit> climb(
      NewtonAscent.Surface surface, double startLogMean, long units, long failures) {
    NewtonAscent.Box box =
        new NewtonAscent.Box(
            StrictMath.log(LOWEST_SHAPE),
            StrictMath.log(HIGHEST_SHAPE),
            startLogMean - LOG_MEAN_RANGE,
            startLogMean + LOG_MEAN_RANGE);
    NewtonAscent.Point top = NewtonAscent.climb(surface, 0, startLogMean, box);
    if (top.x() >= box.highestX()) {
      return Estimate.notIdentified(
          "the units differ no more than chance would make them; use one common rate");
    }
    if (box.onSide(top) || !top.concave()) {
      return Estimate.notIdentified(
          "the likelihood has no clear maximum; too few units carry the failures");
    }
    double shape = StrictMath.exp(top.x());
    // log exposure = log shape - log mean
    double variance = top.varianceX() + top.varianceY() - 2 * top.covariance();
    return Estimate.of(
        new PriorFit(
            new GammaPrior(shape, StrictMath.exp(top.x() - top.y())),
            top.value(),
            Math.sqrt(top.varianceX()),
            Math.sqrt(variance),
            units,
            failures));
  }

  private static NewtonAscent.Point counted(List<CountedUnit> units, double x, double y) {
    GammaSurface surface = new GammaSurface(x, y);
    double shape = StrictMath.exp(x);
    double exposure = StrictMath.exp(x - y);
    double logGammaShape = Gamma.logGamma(shape);
    for (CountedUnit unit : units) {
      double ratio = unit.exposureDays() / exposure;
      double log1p = StrictMath.log1p(ratio);
      double logMarginal =
          Gamma.logGamma(shape + unit.events())
              - logGammaShape
              - Gamma.logGamma(unit.events() + 1.0)
              - (shape + unit.events()) * log1p
              + (unit.events() == 0 ? 0 : unit.events() * StrictMath.log(ratio));
      surface.addConjugate(1, logMarginal, unit.events(), ratio);
    }
    return surface.point();
  }
}
