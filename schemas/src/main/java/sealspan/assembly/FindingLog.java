package sealspan.assembly;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.InspectionPerformed;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;

/** Collects findings; who and which report follow from the event. */
final class FindingLog {
  private final List<Finding> findings = new ArrayList<>(0);

  void add(Finding.Kind kind, String check, StandingEvent event, String words) {
    add(kind, check, event.id(), event.event(), words);
  }

  void add(Finding.Kind kind, String check, String eventId, AssemblyEvent event, String words) {
    findings.add(
        new Finding(
            kind,
            check,
            eventId,
            event.when().day(),
            reportNumber(event),
            event instanceof TestPerformed test ? test.testerId() : null,
            words));
  }

  void addAll(List<Finding> more) {
    findings.addAll(more);
  }

  /** The findings in order. */
  List<Finding> sorted() {
    findings.sort(Finding.ORDER);
    return List.copyOf(findings);
  }

  private static String reportNumber(AssemblyEvent event) {
    if (event instanceof TestPerformed test) {
      return test.reportNumber();
    }
    if (event instanceof RepairPerformed repair) {
      return repair.reportNumber();
    }
    return event instanceof InspectionPerformed inspection ? inspection.reportNumber() : null;
  }
}
