package sealspan.app.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.References;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.study.AssemblyTables;
import sealspan.study.LatestFits;
import sealspan.table.AssemblyRows;
import sealspan.table.FindingRow;
import sealspan.table.ReadingRow;
import sealspan.table.TestRow;

/**
 * What the history of an assembly would say with some events more: the same fold that makes the
 * answers, so that a preview and the later answer cannot disagree.
 */
final class VisitPreview {
  private final AssemblyRows before;
  private final AssemblyRows after;
  private final List<LoggedEvent> fresh;

  /**
   * A preview.
   *
   * @param known the events that are known of the assembly, its site, gauges and testers
   * @param fresh the events that may be added
   */
  VisitPreview(
      String assemblyId,
      Collection<LoggedEvent> known,
      List<LoggedEvent> fresh,
      AcceptanceCriteria criteria) {
    List<LoggedEvent> all = new ArrayList<>(known);
    all.addAll(fresh);
    this.before = AssemblyTables.of(assemblyId, known, criteria, LatestFits.none(), 0);
    this.after = AssemblyTables.of(assemblyId, all, criteria, LatestFits.none(), 0);
    this.fresh = fresh;
  }

  /** The subjects whose events are needed beside those of the assembly. */
  static Set<Subject> subjects(String assemblyId, Collection<LoggedEvent> events) {
    Set<Subject> subjects = new LinkedHashSet<>();
    subjects.add(Subject.assembly(assemblyId));
    events.forEach(e -> subjects.addAll(References.of(e.event())));
    return subjects;
  }

  /** The judgement, line by line. */
  List<String> words(Set<String> roundIds) {
    List<String> lines = new ArrayList<>();
    for (TestRow test : after.tests()) {
      if (roundIds.contains(test.eventId())) {
        lines.addAll(round(test));
      }
    }
    List<String> findings = newFindings();
    if (!findings.isEmpty()) {
      lines.add("Noticed (a hint, never a reason to refuse):");
      lines.addAll(findings);
    }
    List<String> missing = missing();
    if (!missing.isEmpty()) {
      lines.add("Not recorded: " + String.join(", ", missing) + ".");
    }
    return lines;
  }

  private List<String> round(TestRow test) {
    List<String> lines = new ArrayList<>();
    lines.add(
        shown(test.phase())
            + ", "
            + test.day()
            + ": "
            + shown(test.outcome()).toUpperCase(Locale.ROOT)
            + (test.marginal()
                ? " (marginal: a reading is within the gauge's error of its limit)"
                : "")
            + (test.reason() == null ? "" : ". " + test.reason()));
    for (ReadingRow reading : after.readings()) {
      if (reading.eventId().equals(test.eventId())) {
        lines.add("  " + reading(reading));
      }
    }
    if (test.verdictIssued() != null && !test.outcome().startsWith(test.verdictIssued())) {
      lines.add("  The report says " + shown(test.verdictIssued()) + ". Both are kept.");
    }
    return lines;
  }

  private static String reading(ReadingRow r) {
    String seen =
        r.enteredValue() == null
            ? shown(r.observation())
            : r.enteredValue() + " " + r.enteredUnit().toLowerCase(Locale.ROOT);
    String limit = r.limitText() == null ? "no limit in force" : "limit " + r.limitText();
    return String.format(
        "%-16s %-22s %-12s %s: %s%s",
        r.component(),
        shown(r.measure()),
        seen,
        limit,
        shown(r.result()),
        r.marginal() ? ", marginal" : "");
  }

  private List<String> newFindings() {
    Set<FindingRow> known = new HashSet<>(before.findings());
    return after.findings().stream()
        .filter(f -> !known.contains(f))
        .map(f -> "  " + shown(f.kind()) + ": " + f.finding())
        .toList();
  }

  /** What programmes commonly ask of a report (common practice, no source). */
  private List<String> missing() {
    Set<String> missing = new LinkedHashSet<>();
    for (LoggedEvent event : fresh) {
      if (event.event() instanceof TestPerformed test) {
        note(missing, "report number", test.reportNumber());
        note(missing, "tester", test.testerId());
        note(missing, "tester's certificate", test.certificateNumber());
        note(missing, "gauge", test.gaugeId());
        note(missing, "day of the gauge's calibration", test.gaugeCalibratedOn());
        note(missing, "test method", test.method());
        note(missing, "line pressure", test.linePressure());
        note(missing, "downstream shutoff", test.downstreamShutoff());
        note(missing, "verdict on the report", test.verdictIssued());
        note(missing, "serial seen", test.serialSeen());
      }
    }
    return List.copyOf(missing);
  }

  private static void note(Set<String> missing, String name, Object value) {
    if (value == null) {
      missing.add(name);
    }
  }

  private static String shown(String code) {
    return code == null ? "not recorded" : code.toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** Ids of some events. */
  static Set<String> ids(Collection<LoggedEvent> events) {
    return events.stream().map(LoggedEvent::id).collect(Collectors.toSet());
  }
}
