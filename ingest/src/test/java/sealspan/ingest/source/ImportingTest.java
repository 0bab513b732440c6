package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Validator;

/** Imports as a whole: batches, progress, stopping, trial runs. */
class ImportingTest {
  private static final Intake INTAKE = Intake.imported("import", Intaken.TODAY);

  @TempDir Path folder;

  private static String table(int rows) {
    StringBuilder text = new StringBuilder("assembly_id,date,found_check1_psid,left_check1_psid\n");
    for (int i = 0; i < rows; i++) {
      text.append("BF-").append(i).append(",2025-04-17,");
      text.append(i % 7 == 3 ? "low" : "1.2").append(",1.9\n");
    }
    return text.toString();
  }

  private Path file(int rows) throws IOException {
    return Intaken.write(folder, "table.csv", table(rows).getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void progressTellsRowsAndBytesAndEndsAtTheEnd() throws Exception {
    Path file = file(40_000);
    List<Long> rows = new ArrayList<>();
    List<Long> bytes = new ArrayList<>();
    Intaken in = new Intaken();
    Importing<LoggedEvent> importing =
        new Importing<>(
            "import",
            new Validator(INTAKE),
            in,
            in,
            (row, read, total) -> {
              rows.add(row);
              bytes.add(read);
              assertTrue(read <= total);
            });
    ImportSummary summary = importing.run(Sources.open(file, Mapping.NONE, StationZones.NONE));
    assertTrue(rows.size() > 3);
    assertEquals(40_000, rows.get(rows.size() - 1));
    assertEquals(Files.size(file), bytes.get(bytes.size() - 1));
    assertEquals(summary.accepted(), summary.appended());
    assertEquals(5714, summary.rejectedRows());
    assertEquals(5714, in.rows.size());
  }

  @Test
  void anInterruptedImportStopsAfterABatchAndCanBeTakenUpAgain() throws Exception {
    Path file = file(20_000);
    Intaken in = new Intaken();
    Importing<LoggedEvent> importing =
        new Importing<>(
            "import",
            new Validator(INTAKE),
            in,
            in,
            (rows, read, total) -> Thread.currentThread().interrupt());
    ImportSummary stopped = importing.run(Sources.open(file, Mapping.NONE, StationZones.NONE));
    assertTrue(Thread.interrupted());
    assertTrue(stopped.stopped());
    assertFalse(stopped.isClean());
    assertEquals(stopped.accepted(), in.events.size());
    in.take(file, Mapping.NONE, StationZones.NONE);
    assertEquals(stopped.appended(), in.summary.duplicates());
    assertEquals(Intaken.of(file).log, in.log);
  }

  @Test
  void aTrialRunAppendsNothing() throws Exception {
    ImportSummary summary =
        new Importing<>(
                "import",
                new Validator(INTAKE),
                new Appending.TrialRun(),
                Importing.Setting.NOTHING,
                Importing.Progress.SILENT)
            .run(Sources.open(file(100), Mapping.NONE, StationZones.NONE));
    assertEquals(172, summary.accepted());
    assertEquals(0, summary.appended());
    assertEquals(14, summary.rejectedRows());
  }

  /** Fails as soon as events are sent, or only when somebody waits for them. */
  private record FullLog(boolean atOnce) implements Appending<LoggedEvent> {
    @Override
    public LoggedEvent ready(LoggedEvent event) {
      return event;
    }

    @Override
    public Appending.Outcomes send(List<LoggedEvent> batch) throws IOException {
      Appending.Outcomes full =
          () -> {
            throw new IOException("The log is full. Free some space.");
          };
      if (atOnce) {
        full.await();
      }
      return full;
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whatTheLogSaysWhenItFailsReachesThePerson(boolean atOnce) throws Exception {
    Importing<LoggedEvent> importing =
        new Importing<>(
            "import",
            new Validator(INTAKE),
            new FullLog(atOnce),
            Importing.Setting.NOTHING,
            Importing.Progress.SILENT);
    DraftSource source = Sources.open(file(10), Mapping.NONE, StationZones.NONE);
    IOException failed = assertThrows(IOException.class, () -> importing.run(source));
    assertEquals("The log is full. Free some space.", failed.getMessage());
  }

  @Property(tries = 20, seed = "20")
  void theOrderOfRowsDecidesNothing(@ForAll @IntRange(min = 0, max = 1000) int seed)
      throws Exception {
    List<String> lines = new ArrayList<>(table(60).lines().toList());
    String header = lines.remove(0);
    Path folder = Files.createTempDirectory("import");
    Intaken in = Intaken.ofText(folder, "a.csv", header + "\n" + String.join("\n", lines));
    Collections.shuffle(lines, new Random(seed));
    Intaken shuffled = Intaken.ofText(folder, "b.csv", header + "\n" + String.join("\n", lines));
    assertEquals(in.log, shuffled.log);
    assertEquals(in.rows.size(), shuffled.rows.size());
    Files.delete(folder.resolve("a.csv"));
    Files.delete(folder.resolve("b.csv"));
    Files.delete(folder);
  }
}
