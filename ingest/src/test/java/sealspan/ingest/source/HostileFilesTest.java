package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.table.QuarantinedRow;

/**
 * The sample files with cells, lines and bytes changed from a fixed seed: each file is taken in or
 * refused, each row taken or set aside, always with words, and nothing is written anywhere.
 */
@Timeout(value = 60, unit = TimeUnit.MINUTES)
class HostileFilesTest {
  private static final long ROWS = Boolean.getBoolean("sealspan.deep") ? 1_000_000 : 5_000;
  private static final Path SAMPLES = Path.of("..", "sample-events");
  private static final List<String> FILES =
      List.of(
          "visits.csv",
          "events.jsonl",
          "water-samples.csv",
          "disturbances.csv",
          "awkward/rejected.csv",
          "awkward/fathom-ridge.csv");

  /** Cells that people and attackers write. */
  private static final List<String> NASTY =
      List.of(
          "",
          " ",
          "\"",
          "\"\"",
          "\0",
          "\uFEFF",
          "\u202E",
          "=cmd|' /C calc'!A0",
          "'; drop table event; --",
          "../../etc/passwd",
          "${jndi:ldap://x}",
          "%s%n%d",
          "NaN",
          "-Infinity",
          "1e999",
          "1e-999",
          "99999999999999999999999999",
          "-0",
          "0x10",
          "1,5",
          "1.2.3",
          "٣",
          "2024-02-30",
          "0000-00-00",
          "9999-12-31",
          "-999999999-01-01",
          "+999999999-12-31",
          "24:00",
          "null",
          "true",
          "{\"a\":",
          "[[[[",
          "a\nb",
          "a,b;c\td",
          "x".repeat(5_000),
          "𝄞");

  @TempDir Path folder;
  private final Random random = new Random(64);

  @Test
  void areTakenInOrRefusedWithWords() throws IOException {
    List<byte[]> samples = new ArrayList<>();
    for (String file : FILES) {
      samples.add(Files.readAllBytes(SAMPLES.resolve(file)));
    }
    long rows = 0;
    long set = 0;
    int refused = 0;
    int files = 0;
    while (rows < ROWS) {
      int which = random.nextInt(FILES.size());
      String name = Path.of(FILES.get(which)).getFileName().toString();
      Path file = Intaken.write(folder, name, hurt(samples.get(which)));
      try {
        Intaken intaken = Intaken.of(file);
        rows += intaken.summary.rowsRead();
        set += intaken.rows.size();
        intaken.rows.forEach(HostileFilesTest::requireWords);
      } catch (SourceException e) {
        assertFalse(e.getMessage().contains("Exception"), e.getMessage());
        assertTrue(e.getMessage().length() > 20, e.getMessage());
        refused++;
        rows++;
      } catch (RuntimeException | Error e) {
        fail("file " + files + ", from " + name + ", is kept in " + keep(file), e);
      }
      Files.delete(file);
      files++;
    }
    assertTrue(set > ROWS / 20, set + " rows set aside of " + rows);
    assertTrue(refused > files / 50, refused + " files refused of " + files);
    try (Stream<Path> left = Files.list(folder)) {
      assertEquals(List.of(), left.toList());
    }
  }

  private static void requireWords(QuarantinedRow row) {
    assertTrue(row.reason().length() > 10, row.toString());
    assertFalse(row.reason().contains("Exception"), row.reason());
    assertFalse(row.reason().contains("java."), row.reason());
    assertTrue(row.line() >= 1, row.toString());
  }

  private static Path keep(Path file) throws IOException {
    Path kept = Files.createTempFile("hostile-", "-" + file.getFileName());
    return Files.write(kept, Files.readAllBytes(file));
  }

  private byte[] hurt(byte[] sample) {
    String text = new String(sample, StandardCharsets.UTF_8);
    List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
    int changes = 1 + random.nextInt(20);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(12) == 0 ? 0 : random.nextInt(lines.size());
      lines.set(at, hurt(lines.get(at)));
    }
    if (random.nextInt(8) == 0) {
      lines.add(random.nextInt(lines.size()), lines.get(random.nextInt(lines.size())));
    }
    byte[] bytes = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    if (random.nextInt(4) == 0) {
      for (int i = 0; i < 3; i++) {
        bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
      }
    }
    if (random.nextInt(20) == 0) {
      bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
    }
    if (random.nextInt(30) == 0) {
      ByteArrayOutputStream marked = new ByteArrayOutputStream();
      marked.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xFE});
      marked.writeBytes(bytes);
      bytes = marked.toByteArray();
    }
    return bytes;
  }

  private String hurt(String line) {
    String nasty = NASTY.get(random.nextInt(NASTY.size()));
    String[] cells = line.split(",", -1);
    int cell = random.nextInt(cells.length);
    switch (random.nextInt(6)) {
      case 0:
        return line.substring(0, random.nextInt(line.length() + 1));
      case 1:
        return line + "," + nasty;
      case 2:
        int at = random.nextInt(line.length() + 1);
        return line.substring(0, at) + nasty + line.substring(at);
      case 3:
        cells[cell] = cells[random.nextInt(cells.length)];
        return String.join(",", cells);
      default:
        int colon = cells[cell].indexOf(':');
        cells[cell] =
            line.startsWith("{") && colon > 0
                ? cells[cell].substring(0, colon + 1) + "\"" + nasty.replace("\"", "") + "\""
                : nasty;
        return String.join(",", cells);
    }
  }
}
