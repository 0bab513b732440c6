package sealspan.study;

import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.PriorFit;
import sealspan.stats.rates.RateEstimate;
import sealspan.table.RatePriorRow;

/** One rate for all assemblies of a stratum, with and without the rounds that do not comply. */
record CommonRates(
    int assemblies,
    HiddenFailures tests,
    Estimate<RateEstimate> rate,
    HiddenFailures compliantTests,
    Estimate<RateEstimate> compliantRate) {

  static CommonRates of(List<RatedUnit> units) {
    HiddenFailures all = RatePriors.pooled(units.stream().map(RatedUnit::hiddenFailures).toList());
    HiddenFailures compliant =
        RatePriors.pooled(
            units.stream()
                .map(
                    unit ->
                        RatedUnit.hiddenFailures(
                            unit.tests().stream().filter(RatedTest::compliant).toList()))
                .toList());
    Estimate<RateEstimate> rate = RatePriors.commonRate(all);
    Estimate<RateEstimate> without =
        compliant.tests() == all.tests() ? rate : RatePriors.commonRate(compliant);
    return new CommonRates(units.size(), all, rate, compliant, without);
  }

  /**
   * The row without what only a fleet's prior fills in.
   *
   * @param differentNote what to note instead of how the gamma prior fared; null: that
   */
  RatePriorRow row(
      String stratum, Estimate<PriorFit> gamma, SiteLikeness sites, String differentNote) {
    Interval interval = interval(rate);
    Interval without = interval(compliantRate);
    PriorFit fit = gamma instanceof Estimate.Identified<PriorFit> f ? f.value() : null;
    String about =
        differentNote != null
            ? differentNote
            : gamma instanceof Estimate.NotIdentified<PriorFit> not
                ? "no prior: " + not.because()
                : "the intervals take all assemblies to share one rate";
    String doubt = RatePriors.doubt(rate);
    String note = doubt == null ? about : about + "; " + doubt;
    return new RatePriorRow(
        stratum,
        assemblies,
        tests.tests(),
        tests.failures(),
        tests.totalDays(),
        perYear(rate),
        RatePriors.lowerPerYear(interval),
        RatePriors.upperPerYear(interval),
        compliantTests.tests(),
        compliantTests.failures(),
        perYear(compliantRate),
        RatePriors.lowerPerYear(without),
        RatePriors.upperPerYear(without),
        fit == null ? null : fit.prior().shape(),
        fit == null ? null : fit.prior().exposureDays() / RatePriors.YEAR_DAYS,
        fit == null ? null : fit.prior().meanPerDay() * RatePriors.YEAR_DAYS,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        sites == null ? null : sites.correlation(),
        sites == null ? null : sites.designEffect(),
        note);
  }

  /** Failures a year to lay a lattice around; .1 where the tests give none. */
  double startPerYear() {
    Double perYear = perYear(rate);
    return perYear == null || perYear == 0 ? .1 : perYear;
  }

  private static Double perYear(Estimate<RateEstimate> rate) {
    return rate instanceof Estimate.Identified<RateEstimate> r
        ? RatePriors.finite(r.value().perDay())
        : null;
  }

  private static Interval interval(Estimate<RateEstimate> rate) {
    return rate instanceof Estimate.Identified<RateEstimate> r ? r.value().interval() : null;
  }
}
