package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.stats.AdjustedProbabilities;
import sealspan.stats.Estimate;
import sealspan.study.Members;
import sealspan.table.WaterEffectRow;
import sealspan.table.ZoneRows;

/**
 * What fouling goes with in the water of its zone: for each kind of event and each quality, whether
 * more tests find fouling when it acted since the last pass, beside two controls that should show
 * nothing. All questions are asked at once, so their probabilities are raised together.
 */
public final class WaterEffects {
  static final String INTERVAL_EXPOSURE = "INTERVAL_EXPOSURE";

  private WaterEffects() {}

  /**
   * The answers, one row for each question.
   *
   * @param assemblies the rows of all assemblies
   * @param zones the rows of all water zones, ordered by id
   */
  public static List<WaterEffectRow> of(Members assemblies, List<ZoneRows> zones) {
    WaterRecord water = WaterRecord.of(zones);
    WaterTests tests = WaterTests.of(assemblies, water);
    List<WaterAnswer> answers = new ArrayList<>();
    for (EventExposure event : water.events()) {
      for (WaterLag lag : WaterLag.values()) {
        answers.add(WaterAnswer.of(event, lag, tests, water));
      }
    }
    for (QualityExposure quality : water.qualities()) {
      answers.add(WaterAnswer.of(quality, WaterLag.SINCE_LAST_PASS, tests, water));
    }
    double[] p =
        answers.stream()
            .filter(answer -> answer.effect() instanceof Estimate.Identified<WaterEffectFit>)
            .mapToDouble(answer -> answer.effect().orThrow().p())
            .toArray();
    double[] adjusted = AdjustedProbabilities.benjaminiHochberg(p);
    List<WaterEffectRow> rows = new ArrayList<>();
    int identified = 0;
    for (WaterAnswer answer : answers) {
      boolean known = answer.effect() instanceof Estimate.Identified<WaterEffectFit>;
      rows.add(
          row(rows.size(), answer, tests, known ? adjusted[identified] : null, adjusted.length));
      identified += known ? 1 : 0;
    }
    rows.addAll(DatedWater.rows(rows.size(), assemblies, water));
    return List.copyOf(rows);
  }

  private static WaterEffectRow row(
      int place, WaterAnswer answer, WaterTests tests, Double adjustedP, int questions) {
    double[] ratio = ratio(answer.effect());
    double[] chance = ratio == null ? null : chance(answer, ratio);
    double[] future = ratio(answer.future());
    double[] other = ratio(answer.otherZone());
    boolean isEvent = answer.exposure().isEvent();
    WaterEffectFit fit = ratio == null ? null : answer.effect().orThrow();
    return new WaterEffectRow(
        place,
        answer.exposure().text(),
        answer.lag().words(),
        INTERVAL_EXPOSURE,
        WaterWords.of(answer, chance, adjustedP, questions),
        answer.tests(),
        answer.fouled(),
        isEvent ? answer.exposed() : null,
        isEvent ? answer.exposedFouled() : null,
        answer.events(),
        answer.zones(),
        at(ratio, 0),
        at(ratio, 1),
        at(ratio, 2),
        compares(answer),
        at(chance, 0),
        at(chance, 1),
        at(chance, 2),
        fit == null ? null : fit.p(),
        adjustedP,
        questions,
        at(future, 0),
        at(future, 1),
        at(future, 2),
        at(other, 0),
        at(other, 1),
        at(other, 2),
        fit == null ? null : fit.clusteredBy(),
        leftOut(answer, tests),
        answer.effect() instanceof Estimate.NotIdentified<WaterEffectFit> not
            ? not.because()
            : null);
  }

  private static String compares(WaterAnswer answer) {
    String model =
        answer.fouled() < WaterEffectFit.FEWEST_FOR_SEASON
            ? "within zones; season and type are left out, since few tests were fouled"
            : "within zones, at equal season and type";
    if (answer.exposure() instanceof QualityExposure quality) {
      return "twice the mean in "
          + quality.quality().unit()
          + ", "
          + model
          + (quality.atLimit() == 0
              ? ""
              : "; " + quality.atLimit() + " results outside their limits stand at the limit");
    }
    return "tests that met such an event with tests that did not, " + model;
  }

  private static String leftOut(WaterAnswer answer, WaterTests tests) {
    Map<String, Integer> more = new LinkedHashMap<>(answer.leftOut());
    if (answer.exposure() instanceof QualityExposure quality) {
      more.putAll(quality.leftOut());
    }
    return tests.leftOutText(more);
  }

  private static double[] ratio(Estimate<WaterEffectFit> estimate) {
    if (estimate instanceof Estimate.Identified<WaterEffectFit> found) {
      WaterEffectFit fit = found.value();
      return new double[] {
        StrictMath.exp(fit.log()), StrictMath.exp(fit.lower()), StrictMath.exp(fit.upper())
      };
    }
    return null;
  }

  /** Ratios of chances that ratios of rates come to, at the mean chance of tests without. */
  private static double[] chance(WaterAnswer answer, double[] ratio) {
    double without =
        (answer.fouled() - answer.exposedFouled()) / (double) (answer.tests() - answer.exposed());
    double[] chance = new double[3];
    for (int i = 0; i < 3; i++) {
      chance[i] = -StrictMath.expm1(ratio[i] * StrictMath.log1p(-without)) / without;
    }
    return chance;
  }

  static Double at(double[] values, int place) {
    return values == null || !Double.isFinite(values[place]) ? null : values[place];
  }
}
