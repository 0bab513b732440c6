package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import sealspan.stats.Estimate;
import sealspan.stats.rates.GammaPrior;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RatePosterior;
import sealspan.stats.rates.RateShrinkage;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.SuddenFailureRow;

/** Failures that no drift of a reading explains: debris, damage, and all that is not measured. */
final class SuddenFailures {
  private static final double YEAR_DAYS = RatePriors.YEAR_DAYS;

  private SuddenFailures() {}

  /**
   * What the exposures of one assembly tell of sudden failures: one that ended in a gradual failure
   * had no sudden one.
   */
  static HiddenFailures unit(List<ExposureRow> exposures, Set<String> gradual) {
    List<ExposureRow> whole =
        exposures.stream()
            .filter(e -> e.component().equals(RatePriors.WHOLE) && e.exposureDays() > 0)
            .toList();
    int[] days = new int[whole.size()];
    boolean[] failed = new boolean[whole.size()];
    for (int i = 0; i < days.length; i++) {
      days[i] = whole.get(i).exposureDays();
      failed[i] = whole.get(i).failed() && !gradual.contains(whole.get(i).eventId());
    }
    return HiddenFailures.of(days, failed);
  }

  /** How the rates of sudden failures differ between the assemblies of a stratum. */
  static SuddenFailureRow of(String stratum, Members members, Drifts drifts) {
    List<HiddenFailures> units = new ArrayList<>();
    int tests = 0;
    int failures = 0;
    int gradualFailures = 0;
    long days = 0;
    for (AssemblyRows rows : members) {
      Set<String> gradual = drifts.gradualFailures(rows.readings());
      HiddenFailures unit = unit(rows.exposures(), gradual);
      if (unit.tests() > 0) {
        units.add(unit);
        tests += unit.tests();
        failures += unit.failures();
        days += unit.totalDays();
        gradualFailures += unit(rows.exposures(), Set.of()).failures() - unit.failures();
      }
    }
    Estimate<PriorFit> fitted = RateShrinkage.fitHidden(units);
    if (fitted instanceof Estimate.Identified<PriorFit> identified) {
      GammaPrior prior = identified.value().prior();
      return new SuddenFailureRow(
          stratum,
          units.size(),
          tests,
          failures,
          gradualFailures,
          prior.shape(),
          prior.exposureDays() / YEAR_DAYS,
          prior.meanPerDay() * YEAR_DAYS,
          null);
    }
    String because = ((Estimate.NotIdentified<PriorFit>) fitted).because();
    return new SuddenFailureRow(
        stratum,
        units.size(),
        tests,
        failures,
        gradualFailures,
        null,
        null,
        days == 0 ? null : (failures + 0.5) / days * YEAR_DAYS,
        days == 0
            ? because
            : because + "; the mean is that of all together, with half a failure added");
  }

  /**
   * Probability of a sudden failure of a unit in an exposure, by its days.
   *
   * @param row the sudden failures of assemblies like it; with a mean
   * @param unit what is known of its own
   */
  static DoubleUnaryOperator probability(SuddenFailureRow row, HiddenFailures unit) {
    if (row.shape() == null) {
      return days -> -StrictMath.expm1(-row.meanPerYear() * days / YEAR_DAYS);
    }
    GammaPrior prior = new GammaPrior(row.shape(), row.rateYears() * YEAR_DAYS);
    return RatePosterior.of(prior, unit)::probabilityWithin;
  }
}
