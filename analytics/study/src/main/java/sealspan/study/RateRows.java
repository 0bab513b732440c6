package sealspan.study;

import java.util.Map;
import sealspan.assembly.AssemblyHistory;
import sealspan.table.RatePriorRow;
import sealspan.table.RateRow;

/** The failure rate of one assembly. */
final class RateRows {
  private RateRows() {}

  static RateRow of(AssemblyHistory history, Map<String, RatePriorRow> priors) {
    ExposureTotals totals = ExposureTotals.of(history);
    return new RateRow(
        history.assemblyId(),
        totals.tests(),
        totals.failures(),
        totals.days(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        "the rate is not estimated yet");
  }
}
