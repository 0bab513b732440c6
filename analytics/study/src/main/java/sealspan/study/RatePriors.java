package sealspan.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RateEstimate;
import sealspan.stats.rates.RateShrinkage;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposurePowerRow;
import sealspan.table.RateEffectRow;
import sealspan.table.RateNodeRow;
import sealspan.table.RatePriorRow;

/**
 * The failure rates of a stratum, and how they differ between its assemblies.
 *
 * @param prior the stratum's row
 * @param nodes lattice of rates; only for all assemblies
 * @param effects what goes with higher rates; only for all assemblies
 * @param powers whether failures accumulate; only with all assemblies, and there for each type too
 */
record RatePriors(
    RatePriorRow prior,
    List<RateNodeRow> nodes,
    List<RateEffectRow> effects,
    List<ExposurePowerRow> powers) {
  /** Days of a mean year; rates are quoted a year. */
  static final double YEAR_DAYS = 365.25;

  /** Component name of the exposures of the assembly as a whole. */
  static final String WHOLE = "whole";

  /** With more tests than this the exact interval of the pooled rate costs more than it tells. */
  private static final int MOST_TESTS_EXACT = 2_000;

  private static final double LEVEL = .95;

  /** The rates of a stratum of whole assemblies. */
  static RatePriors of(String stratum, Members members) {
    List<RatedUnit> units = units(members);
    CommonRates common = CommonRates.of(units);
    if (!stratum.equals("all")) {
      List<HiddenFailures> tested = units.stream().map(RatedUnit::hiddenFailures).toList();
      return new RatePriors(
          common.row(stratum, RateShrinkage.fitHidden(tested), null, null),
          List.of(),
          List.of(),
          List.of());
    }
    List<ExposurePowerRow> powers = ExposurePowers.of(units);
    ExposureScale scale = ExposureScale.read(powers);
    Estimate<PriorFit> differ = gamma(units, scale, RateEffects.read(List.of()));
    if (differ instanceof Estimate.NotIdentified<PriorFit>) {
      SiteLikeness sites = SiteLikeness.of(units, scale, RateEffects.read(List.of()));
      return new RatePriors(common.row(stratum, differ, sites, null), List.of(), List.of(), powers);
    }
    List<RateEffectRow> effectRows = RateEffects.fit(units, scale);
    RateEffects effects = RateEffects.read(effectRows);
    Estimate<PriorFit> left = effectRows.isEmpty() ? differ : gamma(units, scale, effects);
    String note =
        left instanceof Estimate.NotIdentified<PriorFit>
            ? "beyond type, size, zone and age the assemblies differ little more than by chance"
            : null;
    RatePriorRow row = common.row(stratum, differ, SiteLikeness.of(units, scale, effects), note);
    RateFleet fleet = RateFleet.of(units, scale, effects, common.startPerYear());
    return new RatePriors(
        fleet.complete(row, logLikelihood(left)), fleet.nodes(stratum), effectRows, powers);
  }

  /** The assemblies with a test that has an exposure; levels that come again are kept once. */
  private static List<RatedUnit> units(Members members) {
    List<RatedUnit> units = new ArrayList<>();
    Map<List<String>, List<String>> levels = new HashMap<>();
    for (AssemblyRows rows : members) {
      RatedUnit unit = RatedUnit.of(rows);
      if (!unit.tests().isEmpty()) {
        units.add(unit.sharing(levels));
      }
    }
    return units;
  }

  private static Double logLikelihood(Estimate<PriorFit> fit) {
    return fit instanceof Estimate.Identified<PriorFit> f ? f.value().logLikelihood() : null;
  }

  private static Estimate<PriorFit> gamma(
      List<RatedUnit> units, ExposureScale scale, RateEffects effects) {
    return RateShrinkage.fitHidden(
        units.stream().map(unit -> RateModel.scaled(unit, scale, effects, 1)).toList());
  }

  /** All tests of some units as if of one. */
  static HiddenFailures pooled(List<HiddenFailures> units) {
    return new HiddenFailures(
        units.stream().flatMapToInt(u -> Arrays.stream(u.passedDays())).toArray(),
        units.stream().flatMapToInt(u -> Arrays.stream(u.failedDays())).toArray());
  }

  /** The rate that all tests share, with an interval that fits their number. */
  static Estimate<RateEstimate> commonRate(HiddenFailures pooled) {
    return pooled.tests() <= MOST_TESTS_EXACT
        ? HiddenFailureRate.exact(pooled, LEVEL)
        : HiddenFailureRate.likelihoodRatio(pooled, LEVEL);
  }

  /** What is to be said where the exact interval misses the most likely rate; null elsewhere. */
  static String doubt(Estimate<RateEstimate> estimate) {
    return estimate instanceof Estimate.Identified<RateEstimate> e
            && !e.value().interval().contains(e.value().perDay())
        ? "a constant rate is doubtful: failures came after other exposures than their number says"
        : null;
  }

  /** A rate per day as a rate a year; null where it has no end. */
  static Double finite(double perDay) {
    return Double.isFinite(perDay) ? perDay * YEAR_DAYS : null;
  }

  static Double lowerPerYear(Interval perDay) {
    return perDay == null ? null : finite(perDay.lower());
  }

  static Double upperPerYear(Interval perDay) {
    return perDay == null ? null : finite(perDay.upper());
  }
}
