package sealspan.study;

import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateEstimate;
import sealspan.stats.rates.Share;
import sealspan.table.AssemblyRow;
import sealspan.table.ExposureRow;
import sealspan.table.RateRow;
import sealspan.table.TestRow;

/** The failure rate of one assembly: by itself, and drawn towards assemblies like it. */
final class RateRows {
  private static final double LEVEL = .95;

  private RateRows() {}

  /** The row, from the other rows of the assembly and the last fit. */
  static RateRow of(
      AssemblyRow assembly, List<TestRow> tests, List<ExposureRow> exposures, LatestFits fits) {
    RatedUnit unit = RatedUnit.of(assembly, RatedTest.of(tests, exposures));
    ExposureScale scale = fits.exposureScale();
    RateScore score = RateScore.of(unit, fits.rateModel());
    HiddenFailures all = unit.hiddenFailures();
    HiddenFailures compliant =
        RatedUnit.hiddenFailures(unit.tests().stream().filter(RatedTest::compliant).toList());
    boolean perYear = scale.quoted(unit.type()).equals(ExposurePowers.PER_YEAR);
    Estimate<RateEstimate> own = HiddenFailureRate.exact(all, LEVEL);
    Estimate<RateEstimate> without =
        compliant.tests() == all.tests() ? own : HiddenFailureRate.exact(compliant, LEVEL);
    RateEstimate rate = perYear ? value(own) : null;
    RateEstimate compliantRate = perYear ? value(without) : null;
    Interval share =
        all.tests() == 0 ? null : Share.clopperPearson(all.failures(), all.tests(), LEVEL);
    return new RateRow(
        unit.assemblyId(),
        all.tests(),
        all.failures(),
        all.totalDays(),
        scale.quoted(unit.type()),
        perYear(rate),
        lower(rate),
        upper(rate),
        share == null ? null : (double) all.failures() / all.tests(),
        share == null ? null : share.lower(),
        share == null ? null : share.upper(),
        compliant.tests(),
        compliant.failures(),
        perYear(compliantRate),
        lower(compliantRate),
        upper(compliantRate),
        score.expectedFrom(),
        perYear ? score.perYear() : null,
        perYear ? score.lowerPerYear() : null,
        perYear ? score.upperPerYear() : null,
        score.failsWithinYear(),
        score.failsLower(),
        score.failsUpper(),
        score.failsVariance(),
        score.aboveLimit(),
        score.expectedRank(),
        score.rank() == null ? null : score.rank().lower(),
        score.rank() == null ? null : score.rank().upper(),
        score.worstTen(),
        score.listed(),
        note(own, rate, scale.because(unit.type()), score.note()));
  }

  private static String note(
      Estimate<RateEstimate> own, RateEstimate rate, String perTest, String score) {
    String first = null;
    if (own instanceof Estimate.NotIdentified<RateEstimate> not) {
      first = not.because();
    } else if (rate != null && Double.isInfinite(rate.perDay())) {
      first = "it failed at every test with an exposure, so its rate has no upper end";
    } else if (rate != null) {
      first = RatePriors.doubt(own);
    }
    return joined(joined(first, perTest), score);
  }

  private static RateEstimate value(Estimate<RateEstimate> estimate) {
    return estimate instanceof Estimate.Identified<RateEstimate> e ? e.value() : null;
  }

  private static Double perYear(RateEstimate rate) {
    return rate == null ? null : RatePriors.finite(rate.perDay());
  }

  private static Double lower(RateEstimate rate) {
    return rate == null ? null : RatePriors.lowerPerYear(rate.interval());
  }

  private static Double upper(RateEstimate rate) {
    return rate == null ? null : RatePriors.upperPerYear(rate.interval());
  }

  private static String joined(String first, String second) {
    return first == null ? second : second == null ? first : first + "; " + second;
  }
}
