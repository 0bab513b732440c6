package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A log of the samples that version 0.1.0 wrote and exported. Its bytes are never changed, and
 * every later version opens it.
 */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class OldLogTest {
  private static final Path OLD = Path.of("src", "test", "resources", "old-logs", "0.1.0");

  @TempDir Path data;

  @AfterEach
  void stop() {
    Typed.at(data, "stop");
  }

  @Test
  void opensAndAnswersAsWorkedOutOnPaper() {
    Typed restored = Typed.at(data, "restore", OLD.toString());
    assertEquals(ExitCode.DONE, restored.code(), restored.toString());
    assertTrue(restored.out().contains("226 records are in the log"), restored.toString());
    // sample-events/README.md, "First-test pass share": 53 of 65, .6997 to .9008.
    Typed share = Typed.at(data, "ask", "pass-share");
    assertTrue(
        share
            .out()
            .lines()
            .anyMatch(l -> l.matches("all +all +all +all +65 +53 +0\\.815 +0\\.7 +0\\.901")),
        share.toString());
    assertTrue(share.out().contains("recorded 2026-11-25T15:26:04.470Z"), share.toString());
    Typed before = Typed.at(data, "ask", "worst-sites", "--as-of", "2026-11-24");
    assertTrue(before.out().contains("no events yet"), before.toString());
    Typed then = Typed.at(data, "ask", "pass-share", "--as-of", "2026-11-25", "--format", "csv");
    assertEquals(Typed.at(data, "ask", "pass-share", "--format", "csv").out(), then.out());
  }
}
