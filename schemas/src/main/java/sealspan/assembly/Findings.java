package sealspan.assembly;

import java.util.List;
import sealspan.event.JobCosted;
import sealspan.event.Subject;

/**
 * Everything that is noticed in one history. Both a report that is not valid and one that may be
 * wrong are kept: each use decides. What a source does not carry is never held against it.
 */
final class Findings {
  private Findings() {}

  /** The findings in order of day, event and check. */
  static List<Finding> of(
      Subject subject,
      EventResolution resolved,
      List<HistoryStep> steps,
      AssemblyContext context,
      AcceptanceCriteria criteria) {
    FindingLog log = new FindingLog();
    EventChecks.conflicts(subject, resolved, log);
    EventChecks.targetless(subject, resolved, log);
    DateChecks.all(steps, log);
    RepetitionCheck.all(steps, log);
    for (int i = 0; i < steps.size(); i++) {
      HistoryStep step = steps.get(i);
      if (step.round() != null) {
        log.addAll(step.round().compliance());
        ReportChecks.all(step.round(), context, log);
        ReadingChecks.all(step.round(), criteria, log);
      } else if (step.event() instanceof JobCosted job) {
        EventChecks.currencies(step.source(), job, log);
      }
      RepairChecks.all(steps, i, context, log);
    }
    return log.sorted();
  }
}
