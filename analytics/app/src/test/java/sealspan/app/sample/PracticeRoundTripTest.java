package sealspan.app.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.LoggedEvent;
import sealspan.ingest.source.EventLinesWriter;
import sealspan.ingest.source.Mapping;
import sealspan.ingest.source.VisitSheetWriter;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;

/** What is written as tables reads back as the same events, with the same ids. */
class PracticeRoundTripTest {
  @TempDir Path folder;

  private final PracticeFleet fleet = new PracticeFleet(PracticeParameters.usual(12, 400));

  @Test
  void aSheetOfVisitsAndLinesOfTheRest() throws Exception {
    Path visits = folder.resolve("visits.csv");
    Path others = folder.resolve("events.jsonl");
    List<LoggedEvent> inSheet = new ArrayList<>();
    List<LoggedEvent> inLines = new ArrayList<>();
    try (VisitSheetWriter sheet = new VisitSheetWriter(Files.newBufferedWriter(visits));
        EventLinesWriter lines = new EventLinesWriter(Files.newBufferedWriter(others))) {
      for (LoggedEvent event : fleet.events().toList()) {
        if (sheet.write(event)) {
          inSheet.add(event);
        } else {
          lines.write(event);
          inLines.add(event);
        }
      }
    }
    assertTrue(inSheet.size() > 3000, "in the sheet: " + inSheet.size());
    ReadFile sheetBack = ReadFile.of(visits, "practice", Mapping.NONE);
    assertEquals(List.of(), sheetBack.problems());
    assertSame(inSheet, sheetBack.events());
    assertTrue(sheetBack.rows() < inSheet.size(), "events of a visit share a row");
    ReadFile linesBack = ReadFile.of(others, "practice", Mapping.NONE);
    assertEquals(List.of(), linesBack.problems());
    assertSame(inLines, linesBack.events());
  }

  @Test
  void linesOfEverything() throws Exception {
    Path file = folder.resolve("all.jsonl");
    List<LoggedEvent> events = fleet.events().toList();
    try (EventLinesWriter lines = new EventLinesWriter(Files.newBufferedWriter(file))) {
      for (LoggedEvent event : events) {
        lines.write(event);
      }
    }
    assertSame(events, ReadFile.of(file, "practice", Mapping.NONE).events());
  }

  /** One by one: a whole list in a message would drown what differs. */
  private static void assertSame(List<LoggedEvent> expected, List<LoggedEvent> actual) {
    for (int i = 0; i < Math.min(expected.size(), actual.size()); i++) {
      assertEquals(expected.get(i), actual.get(i), "event " + i);
    }
    assertEquals(expected.size(), actual.size());
  }
}
