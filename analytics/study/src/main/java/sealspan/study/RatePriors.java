package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RateEstimate;
import sealspan.stats.rates.RateShrinkage;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.RatePriorRow;

/** How the failure rates of a stratum differ between its assemblies. */
final class RatePriors {
  /** Days of a mean year; rates are quoted a year. */
  static final double YEAR_DAYS = 365.25;

  /** Component name of the exposures of the assembly as a whole. */
  static final String WHOLE = "whole";

  /** With more tests than this the exact interval of the pooled rate costs more than it tells. */
  private static final int MOST_TESTS_EXACT = 2_000;

  private static final double LEVEL = 0.95;

  private RatePriors() {}

  /** The prior of a stratum. */
  static RatePriorRow of(String stratum, List<AssemblyRows> members) {
    List<HiddenFailures> units = new ArrayList<>();
    for (AssemblyRows rows : members) {
      HiddenFailures unit = hiddenFailures(rows.exposures());
      if (unit.tests() > 0) {
        units.add(unit);
      }
    }
    HiddenFailures pooled = pooled(units);
    Estimate<PriorFit> fitted = RateShrinkage.fitHidden(units);
    Estimate<RateEstimate> rate =
        pooled.tests() <= MOST_TESTS_EXACT
            ? HiddenFailureRate.exact(pooled, LEVEL)
            : HiddenFailureRate.likelihoodRatio(pooled, LEVEL);
    Interval interval =
        rate instanceof Estimate.Identified<RateEstimate> r ? r.value().interval() : null;
    String basis = "the interval takes all assemblies to share one rate";
    if (fitted instanceof Estimate.Identified<PriorFit> identified) {
      PriorFit fit = identified.value();
      return new RatePriorRow(
          stratum,
          units.size(),
          pooled.tests(),
          pooled.failures(),
          pooled.totalDays(),
          fit.prior().shape(),
          fit.prior().exposureDays() / YEAR_DAYS,
          fit.prior().meanPerDay() * YEAR_DAYS,
          lowerPerYear(interval),
          upperPerYear(interval),
          basis);
    }
    return new RatePriorRow(
        stratum,
        units.size(),
        pooled.tests(),
        pooled.failures(),
        pooled.totalDays(),
        null,
        null,
        rate instanceof Estimate.Identified<RateEstimate> r ? finite(r.value().perDay()) : null,
        lowerPerYear(interval),
        upperPerYear(interval),
        "no prior: "
            + ((Estimate.NotIdentified<PriorFit>) fitted).because()
            + "; the mean is that of one common rate");
  }

  /** The exposures of the assembly as a whole; an exposure of no day tells nothing of a rate. */
  static HiddenFailures hiddenFailures(List<ExposureRow> exposures) {
    List<ExposureRow> whole =
        exposures.stream()
            .filter(e -> e.component().equals(WHOLE) && e.exposureDays() > 0)
            .toList();
    int[] days = new int[whole.size()];
    boolean[] failed = new boolean[whole.size()];
    for (int i = 0; i < days.length; i++) {
      days[i] = whole.get(i).exposureDays();
      failed[i] = whole.get(i).failed();
    }
    return HiddenFailures.of(days, failed);
  }

  private static HiddenFailures pooled(List<HiddenFailures> units) {
    return new HiddenFailures(
        units.stream().flatMapToInt(u -> java.util.Arrays.stream(u.passedDays())).toArray(),
        units.stream().flatMapToInt(u -> java.util.Arrays.stream(u.failedDays())).toArray());
  }

  private static Double lowerPerYear(Interval perDay) {
    return perDay == null ? null : finite(perDay.lower());
  }

  private static Double upperPerYear(Interval perDay) {
    return perDay == null ? null : finite(perDay.upper());
  }

  /** A rate per day as a rate a year; null where it has no end. */
  static Double finite(double perDay) {
    return Double.isFinite(perDay) ? perDay * YEAR_DAYS : null;
  }
}
