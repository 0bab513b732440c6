package sealspan.study;

import java.util.Map;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.TestExposure;
import sealspan.event.AssemblyType;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.rates.GammaPrior;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateEstimate;
import sealspan.stats.rates.RatePosterior;
import sealspan.table.RatePriorRow;
import sealspan.table.RateRow;

/** The failure rate of one assembly: by itself, and drawn towards assemblies like it. */
final class RateRows {
  private static final double LEVEL = 0.95;

  private RateRows() {}

  /** The row; the prior of the type goes before that of all, where it is identified. */
  static RateRow of(AssemblyHistory history, Map<String, RatePriorRow> priors) {
    HiddenFailures unit = hiddenFailures(history);
    Double perYear = null;
    Double lower = null;
    Double upper = null;
    String note = null;
    Estimate<RateEstimate> estimate = HiddenFailureRate.exact(unit, LEVEL);
    if (estimate instanceof Estimate.Identified<RateEstimate> identified) {
      RateEstimate rate = identified.value();
      perYear = RatePriors.finite(rate.perDay());
      lower = RatePriors.finite(rate.interval().lower());
      upper = RatePriors.finite(rate.interval().upper());
      if (perYear == null) {
        note = "it failed at every test with an exposure, so its rate has no upper end";
      }
    } else if (estimate instanceof Estimate.NotIdentified<RateEstimate> not) {
      note = not.because();
    }
    RatePriorRow prior = prior(history.type(), priors);
    if (prior == null) {
      return new RateRow(
          history.assemblyId(),
          unit.tests(),
          unit.failures(),
          unit.totalDays(),
          perYear,
          lower,
          upper,
          null,
          null,
          null,
          null,
          null,
          joined(note, noPrior(priors.get("all"))));
    }
    GammaPrior gamma = new GammaPrior(prior.shape(), prior.rateYears() * RatePriors.YEAR_DAYS);
    RatePosterior posterior = RatePosterior.of(gamma, unit);
    Interval interval = posterior.interval(LEVEL);
    return new RateRow(
        history.assemblyId(),
        unit.tests(),
        unit.failures(),
        unit.totalDays(),
        perYear,
        lower,
        upper,
        prior.stratum(),
        posterior.meanPerDay() * RatePriors.YEAR_DAYS,
        interval.lower() * RatePriors.YEAR_DAYS,
        interval.upper() * RatePriors.YEAR_DAYS,
        posterior.probabilityAbove(2 * gamma.meanPerDay()),
        note);
  }

  private static RatePriorRow prior(AssemblyType type, Map<String, RatePriorRow> priors) {
    RatePriorRow own = type == null ? null : priors.get("type=" + type.name());
    if (own != null && own.shape() != null) {
      return own;
    }
    RatePriorRow all = priors.get("all");
    return all != null && all.shape() != null ? all : null;
  }

  private static String noPrior(RatePriorRow all) {
    return all == null ? "no prior is fitted yet" : all.note();
  }

  private static HiddenFailures hiddenFailures(AssemblyHistory history) {
    int n = 0;
    int[] days = new int[history.exposures().size()];
    boolean[] failed = new boolean[days.length];
    for (TestExposure exposure : history.exposures()) {
      if (exposure.at().equals(AssemblyHistory.WHOLE)) {
        days[n] = exposure.exposureDays();
        failed[n++] = exposure.failed();
      }
    }
    return HiddenFailures.of(java.util.Arrays.copyOf(days, n), java.util.Arrays.copyOf(failed, n));
  }

  private static String joined(String first, String second) {
    return first == null ? second : first + "; " + second;
  }
}
