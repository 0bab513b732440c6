package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.app.PublishedTables;

/** The record of the samples, written to files and put back elsewhere, as commands. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class ExportAndRestoreTest {
  private static final Path SAMPLES = Path.of(System.getProperty("sealspan.home"), "sample-events");

  @TempDir Path folder;

  @AfterEach
  void stop() {
    Stream.of("first", "second", "third")
        .map(folder::resolve)
        .filter(Files::exists)
        .forEach(data -> Typed.at(data, "stop"));
  }

  @Test
  void answersAreTheSameByteForByteAndADamagedFileIsLeftOut() throws IOException {
    Path first = Files.createDirectories(folder.resolve("first"));
    Files.copy(SAMPLES.resolve("criteria.csv"), first.resolve("criteria.csv"));
    Typed.at(
        first,
        "import",
        SAMPLES.resolve("events.jsonl").toString(),
        SAMPLES.resolve("visits.csv").toString(),
        SAMPLES.resolve("awkward/rejected.csv").toString());
    Settled.fitted(first);
    Path export = folder.resolve("export");
    Typed exported = Typed.at(first, "export", export.toString());
    assertEquals(ExitCode.DONE, exported.code(), exported.toString());
    assertTrue(exported.out().contains("sealspan.ledger"), exported.toString());
    Typed over = Typed.at(first, "restore", export.toString());
    assertEquals(ExitCode.FAILED, over.code());
    Typed.at(first, "stop");
    Map<String, List<String>> expected = PublishedTables.of(first);

    Path second = folder.resolve("second");
    Typed restored = Typed.at(second, "restore", export.toString());

    assertEquals(ExitCode.DONE, restored.code(), restored.toString());
    Settled.until(() -> expected.equals(PublishedTables.of(second)));
    assertEquals(List.of(), PublishedTables.differences(expected, PublishedTables.of(second)));
    assertEquals(
        Files.readString(first.resolve("criteria.csv")),
        Files.readString(second.resolve("criteria.csv")));
    Typed.at(second, "stop");
    inPart(export);
  }

  private void inPart(Path export) throws IOException {
    Path damaged = export.resolve("sealspan.events-1-000000000000.avro");
    byte[] bytes = Files.readAllBytes(damaged);
    bytes[bytes.length / 2] ^= 1;
    Files.write(damaged, bytes);
    Path third = folder.resolve("third");

    Typed refused = Typed.at(third, "restore", export.toString());
    assertEquals(ExitCode.FAILED, refused.code());
    assertTrue(refused.err().contains(damaged.getFileName() + " is damaged"), refused.toString());
    assertFalse(Files.exists(third.resolve("restoring")));

    Typed taken = Typed.at(third, "restore", export.toString(), "--sound-only");
    assertEquals(ExitCode.IN_PART, taken.code(), taken.toString());
    assertTrue(taken.out().contains("The answers are up to date."), taken.toString());
    assertTrue(
        PublishedTables.of(third).get("ledger").stream().anyMatch(l -> l.contains("PLACES_MOVED")));
  }
}
