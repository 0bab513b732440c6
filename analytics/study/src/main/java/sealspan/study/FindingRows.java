package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.Finding;
import sealspan.table.FindingRow;

/** Rows of findings. */
final class FindingRows {
  private FindingRows() {}

  static List<FindingRow> of(AssemblyHistory history) {
    List<FindingRow> rows = new ArrayList<>(history.findings().size());
    for (Finding finding : history.findings()) {
      rows.add(
          new FindingRow(
              history.assemblyId(),
              finding.eventId(),
              finding.day(),
              finding.reportNumber(),
              finding.testerId(),
              finding.kind().name(),
              finding.check(),
              finding.words()));
    }
    return rows;
  }
}
