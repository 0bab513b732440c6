package sealspan.assembly;

import java.util.LinkedHashSet;
import java.util.Set;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.EventCorrected;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;

/**
 * Which other subjects an assembly's history needs: the site where it stands, and the gauges and
 * testers of its tests. The events of those subjects become part of the history.
 */
public final class References {
  private References() {}

  /** The subjects that an event of an assembly points to; empty for events of other subjects. */
  public static Set<Subject> of(AssemblyEvent event) {
    Set<Subject> subjects = new LinkedHashSet<>();
    if (event instanceof EventCorrected corrected) {
      return of(corrected.replacement());
    }
    if (event instanceof AssemblyInstalled installed && installed.siteId() != null) {
      subjects.add(Subject.site(installed.siteId()));
    }
    if (event instanceof TestPerformed test) {
      if (test.gaugeId() != null) {
        subjects.add(Subject.gauge(test.gaugeId()));
      }
      if (test.testerId() != null) {
        subjects.add(Subject.tester(test.testerId()));
      }
    }
    return subjects;
  }
}
