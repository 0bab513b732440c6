package sealspan.assembly;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.Subject;

/** Everything that is noticed in one history, in order of day. */
final class Findings {
  private Findings() {}

  static List<Finding> of(
      Subject subject,
      EventResolution resolved,
      List<HistoryStep> steps,
      AssemblyContext context,
      AcceptanceCriteria criteria) {
    List<Finding> findings = new ArrayList<>();
    for (HistoryStep step : steps) {
      if (step.round() != null) {
        findings.addAll(step.round().compliance());
      }
    }
    findings.sort(Finding.ORDER);
    return findings;
  }
}
