package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.table.AssemblyRows;

/** The rows of an invented fleet's assemblies, position by position. */
final class PracticeRows {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  private PracticeRows() {}

  static List<AssemblyRows> of(PracticeParameters parameters) {
    PracticeFleet fleet = new PracticeFleet(parameters);
    List<AssemblyRows> rows = new ArrayList<>();
    for (int position = 0; position < parameters.positions(); position++) {
      Map<String, List<LoggedEvent>> byAssembly = new TreeMap<>();
      for (LoggedEvent event : fleet.eventsAt(position)) {
        if (event.event().subject().kind() == Subject.Kind.ASSEMBLY) {
          byAssembly
              .computeIfAbsent(event.event().subject().id(), id -> new ArrayList<>())
              .add(event);
        }
      }
      byAssembly.forEach(
          (id, events) -> rows.add(AssemblyTables.of(id, events, CRITERIA, LatestFits.none(), 0)));
    }
    return rows;
  }
}
