package sealspan.ingest.source;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.event.AssemblyEvent;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validator;
import sealspan.table.QuarantinedRow;

/** A log and a quarantine in memory, and what an import put there. */
final class Intaken implements Appending<LoggedEvent>, Importing.Setting {
  static final LocalDate TODAY = LocalDate.of(2026, 1, 1);

  final Map<String, LoggedEvent> log = new HashMap<>();
  final List<LoggedEvent> events = new ArrayList<>();
  final List<QuarantinedRow> rows = new ArrayList<>();
  ImportSummary summary;

  static Intaken of(Path file) throws SourceException, IOException {
    return of(file, Mapping.NONE, StationZones.NONE);
  }

  static Intaken of(Path file, Mapping mapping, StationZones zones)
      throws SourceException, IOException {
    Intaken intaken = new Intaken();
    intaken.take(file, mapping, zones);
    return intaken;
  }

  static Intaken ofText(Path folder, String name, String text) throws SourceException, IOException {
    return of(write(folder, name, text.getBytes(StandardCharsets.UTF_8)));
  }

  static Path write(Path folder, String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  void take(Path file, Mapping mapping, StationZones zones) throws SourceException, IOException {
    take(file, mapping, zones, Intake.imported("import", TODAY));
  }

  void take(Path file, Mapping mapping, StationZones zones, Intake intake)
      throws SourceException, IOException {
    Importing<LoggedEvent> importing =
        new Importing<>("import", new Validator(intake), this, this, Importing.Progress.SILENT);
    summary = importing.run(Sources.open(file, mapping, zones));
  }

  @Override
  public LoggedEvent ready(LoggedEvent event) {
    return event;
  }

  @Override
  public Appending.Outcomes send(List<LoggedEvent> batch) {
    List<Appending.Outcome> outcomes = new ArrayList<>();
    for (LoggedEvent event : batch) {
      LoggedEvent holds = log.putIfAbsent(event.id(), event);
      if (holds == null) {
        events.add(event);
        outcomes.add(new Appending.Outcome.Appended());
      } else {
        outcomes.add(
            holds.event().equals(event.event())
                ? new Appending.Outcome.Duplicate()
                : new Appending.Outcome.Conflict(holds));
      }
    }
    return () -> outcomes;
  }

  @Override
  public void aside(List<QuarantinedRow> more) {
    rows.addAll(more);
  }

  <E extends AssemblyEvent> List<E> all(Class<E> type) {
    return events.stream()
        .map(LoggedEvent::event)
        .filter(type::isInstance)
        .map(type::cast)
        .toList();
  }

  <E extends AssemblyEvent> E only(Class<E> type) {
    List<E> all = all(type);
    if (all.size() != 1) {
      throw new AssertionError("Expected one " + type.getSimpleName() + ", got " + all);
    }
    return all.get(0);
  }
}
