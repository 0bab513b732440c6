package sealspan.study;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.FitRows;
import sealspan.table.RatePriorRow;

/**
 * What the last fit found, made ready for scoring single assemblies: prepared once, read for each
 * assembly. Not safe for several threads.
 */
public final class LatestFits {
  private final Map<String, RatePriorRow> ratePriors = new TreeMap<>();

  private LatestFits() {}

  /** Before the first fit. */
  public static LatestFits none() {
    return new LatestFits();
  }

  /** The fits of one cut, one per stratum, in any order; curves are not needed. */
  public static LatestFits of(Collection<FitRows> fits) {
    LatestFits latest = new LatestFits();
    for (FitRows fit : fits) {
      if (fit.ratePrior() != null) {
        latest.ratePriors.put(fit.stratum(), fit.ratePrior());
      }
    }
    return latest;
  }

  /** The priors of failure rates, by stratum. */
  Map<String, RatePriorRow> ratePriors() {
    return ratePriors;
  }
}
