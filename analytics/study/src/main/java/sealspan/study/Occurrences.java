package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.StandingEvent;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.EventCorrected;
import sealspan.event.InspectionPerformed;
import sealspan.event.ServiceStateChanged;
import sealspan.event.VisitAttempted;
import sealspan.table.OccurrenceRow;

/** The events of a history that are neither tests nor repairs nor jobs, and corrections. */
final class Occurrences {
  private Occurrences() {}

  /** None, one, or two rows: the event, and the correction that put it right. */
  static List<OccurrenceRow> of(String assemblyId, StandingEvent event) {
    List<OccurrenceRow> rows = new ArrayList<>(1);
    String words = words(event.event());
    if (words != null) {
      rows.add(
          new OccurrenceRow(
              assemblyId,
              event.id(),
              event.event().when().day(),
              event.event().getClass().getSimpleName(),
              words));
    }
    if (event.correction() != null) {
      EventCorrected corrected = (EventCorrected) event.correction().event();
      rows.add(
          new OccurrenceRow(
              assemblyId,
              event.correction().id(),
              corrected.when().day(),
              "EventCorrected",
              join(
                  "a correction of the event " + event.id(),
                  "by " + corrected.by(),
                  corrected.why())));
    }
    return rows;
  }

  private static String words(AssemblyEvent event) {
    if (event instanceof AssemblyInstalled e) {
      return join(
          e.dayMeaning() == DayMeaning.RECORD_BEGINS ? "known to stand here" : "installed",
          labelled("site", e.siteId()),
          labelled("position", e.positionId()),
          labelled("in place of", e.replacesAssemblyId()));
    }
    if (event instanceof AssemblyChanged e) {
      return join(
          "changed",
          labelled("position", e.positionId()),
          labelled("zone", e.zoneId()),
          labelled("hazard", e.hazard()),
          labelled("use", e.use()),
          labelled("owner", e.ownerId()),
          labelled("orientation", e.orientation()),
          e.siteChange(),
          e.remarks());
    }
    if (event instanceof AssemblyRemoved e) {
      return join("removed", named(e.reason()), e.remarks());
    }
    if (event instanceof ServiceStateChanged e) {
      return join("service state", named(e.state()), e.remarks());
    }
    if (event instanceof InspectionPerformed e) {
      return join(
          "inspection", named(e.kind()), named(e.outcome()), String.join(", ", e.findings()));
    }
    if (event instanceof VisitAttempted e) {
      return join("visit without a test", named(e.reason()), e.remarks());
    }
    return null;
  }

  private static String labelled(String label, Object value) {
    return value == null ? null : label + " " + (value instanceof Enum<?> e ? named(e) : value);
  }

  private static String named(Enum<?> value) {
    return value == null ? null : value.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private static String join(String... parts) {
    StringBuilder words = new StringBuilder();
    for (String part : parts) {
      if (part != null && !part.isBlank()) {
        words.append(words.length() == 0 ? "" : ", ").append(part);
      }
    }
    return words.toString();
  }
}
