package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.effect.ActionEffect;
import sealspan.stats.effect.Arm;
import sealspan.stats.effect.MatchedChoice;
import sealspan.stats.effect.TippingPoint;
import sealspan.stats.rates.Share;
import sealspan.table.RepairEffectRow;

/** Puts a comparison of cleaning and new seals into rows, the answer in words first. */
final class EffectFigures {
  private static final int FEWEST_WITHIN = 5;

  private final String stratum;
  private final String found;
  private final EpisodeCohort cohort;
  private final int assemblies;
  private final List<RepairEffectRow> rows = new ArrayList<>();

  private EffectFigures(String stratum, String found, EpisodeCohort cohort) {
    this.stratum = stratum;
    this.found = found;
    this.cohort = cohort;
    this.assemblies = cohort.assemblies();
  }

  static List<RepairEffectRow> of(
      String stratum, String found, EpisodeCohort cohort, Estimate<ActionEffect> effect) {
    EffectFigures figures = new EffectFigures(stratum, found, cohort);
    figures.add("in words", null, null, EffectWords.of(cohort, effect));
    figures.risks(effect);
    figures.asItHappened();
    if (effect instanceof Estimate.Identified<ActionEffect> identified) {
      figures.checks(identified.value());
    }
    figures.leftOut();
    return figures.rows;
  }

  private void add(String quantity, Double figure, Interval interval, String note) {
    rows.add(
        new RepairEffectRow(
            stratum,
            found,
            rows.size(),
            quantity,
            figure,
            interval == null ? null : SealFigures.finite(interval.lower()),
            interval == null ? null : SealFigures.finite(interval.upper()),
            cohort.count(Arm.FIRST),
            cohort.failed(Arm.FIRST),
            cohort.count(Arm.SECOND),
            cohort.failed(Arm.SECOND),
            assemblies,
            note));
  }

  private void add(String quantity, PointEstimate estimate, String note) {
    add(quantity, estimate.value(), estimate.interval(), note);
  }

  private void risks(Estimate<ActionEffect> effect) {
    if (effect instanceof Estimate.NotIdentified<ActionEffect> none) {
      String because = "not identified: " + EffectWords.because(none.because());
      add("failing the next yearly test, had all been cleaned", null, null, because);
      add("failing the next yearly test, had all seals been renewed", null, null, because);
      return;
    }
    ActionEffect value = effect.orThrow();
    String basis = "comparable cases, by overlap weights and a model of what followed";
    add("failing the next yearly test, had all been cleaned", value.comparable().first(), basis);
    add(
        "failing the next yearly test, had all seals been renewed",
        value.comparable().second(),
        basis);
    add("difference, cleaned less renewed", value.comparable().difference(), basis);
    add("ratio, cleaned over renewed", value.comparable().ratio(), basis);
  }

  private void asItHappened() {
    for (Arm arm : Arm.values()) {
      int cases = cohort.count(arm);
      int failed = cohort.failed(arm);
      String what = arm == Arm.FIRST ? "cleaned" : "seal renewed";
      add(
          "as it happened, not comparable: " + what + ", failed at the next test",
          cases == 0 ? null : failed / (double) cases,
          cases == 0 ? null : Share.clopperPearson(failed, cases, RepairEffects.LEVEL),
          failed + " of " + cases + ", whatever the days to the next test");
    }
  }

  private void checks(ActionEffect value) {
    String model = "all cases, also those without a counterpart: rests on the model alone";
    add("over all cases, had all been cleaned", value.all().first(), model);
    add("over all cases, had all seals been renewed", value.all().second(), model);
    add("over all cases, difference", value.all().difference(), model);
    withinAssemblies();
    untouched();
    TippingPoint tipping = TippingPoint.of(value.comparable().ratio());
    String reading =
        "something not recorded would have to go with both the choice and the failure by this risk"
            + " ratio to explain it away";
    add("tipping point of the ratio", tipping.ofEstimate(), null, reading);
    add("tipping point of the limit nearer to 1", tipping.ofLimit(), null, reading);
    add(
        "share of cases that might as well have got the other action",
        value.comparableShare(),
        null,
        "probability of a new seal from .05 to .95");
    add("cases that the weighted cleaned ones are worth", value.effectiveFirst(), null, null);
    add("cases that the weighted renewed ones are worth", value.effectiveSecond(), null, null);
  }

  private void withinAssemblies() {
    String quantity = "within assemblies, odds ratio of failing, cleaned over renewed";
    Estimate<MatchedChoice.Fit> fit =
        MatchedChoice.fit(cohort.withinAssemblies(), EpisodeCohort.withinRidges());
    if (fit instanceof Estimate.Identified<MatchedChoice.Fit> identified
        && identified.value().strata() >= FEWEST_WITHIN) {
      add(
          quantity,
          identified.value().oddsRatio(0, RepairEffects.LEVEL),
          identified.value().strata()
              + " assemblies that had both, and both outcomes; what one repair leaves to the next"
              + " makes this a check, not an answer");
    } else {
      add(
          quantity,
          null,
          null,
          "not identified: fewer than "
              + FEWEST_WITHIN
              + " assemblies had both actions and both outcomes");
    }
  }

  private void untouched() {
    String quantity = "check: the same difference at components that nobody touched";
    Estimate<ActionEffect> effect = ActionEffect.of(cohort.untouchedCases(), RepairEffects.LEVEL);
    if (effect instanceof Estimate.NotIdentified<ActionEffect> none) {
      add(quantity, null, null, "not identified: " + EffectWords.because(none.because()));
      return;
    }
    PointEstimate difference = effect.orThrow().comparable().difference();
    add(
        quantity,
        difference,
        difference.interval().contains(0)
            ? "none expected, and the interval holds 0"
            : "none expected, but the interval excludes 0: the cases are not alike, do not trust the"
                + " comparison");
  }

  private void leftOut() {
    for (Map.Entry<String, Integer> reason : cohort.leftOut().entrySet()) {
      add("left out: " + reason.getKey(), (double) reason.getValue(), null, null);
    }
  }
}
