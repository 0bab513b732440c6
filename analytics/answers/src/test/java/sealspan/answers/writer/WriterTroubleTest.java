package sealspan.answers.writer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.apache.kafka.common.errors.TimeoutException;
import org.junit.jupiter.api.Test;

/** The texts of failures are those that DuckDB 1.5.6 and Java 17 gave on Linux. */
class WriterTroubleTest {
  private static final WriterSettings SETTINGS =
      new WriterSettings(Path.of("/data"), "127.0.0.1:9092", "g1", "test");

  private static final String FULL =
      "The disk of /data/answers is full: free some space. Nothing is lost: the log has"
          + " everything, and the writer tries again by itself.";

  @Test
  void namesAFullDisk() {
    assertEquals(
        FULL,
        WriterTrouble.explain(
            new SQLException(
                "TransactionContext Error: Failed to commit: Could not write file"
                    + " \"/data/answers/model-g1.duckdb.wal\": No space left on device"),
            SETTINGS));
    assertEquals(
        FULL,
        WriterTrouble.explain(
            new UncheckedIOException(
                new FileSystemException("/data/answers/x", null, "No space left on device")),
            SETTINGS));
  }

  @Test
  void namesAFolderThatCannotBeWritten() {
    String denied =
        WriterTrouble.explain(new AccessDeniedException("/data/answers/lock"), SETTINGS);
    assertTrue(denied.startsWith("The folder /data/answers cannot be written"), denied);
    String readOnly =
        WriterTrouble.explain(new IOException("/data/x: Read-only file system"), SETTINGS);
    assertTrue(readOnly.startsWith("The folder /data/answers cannot be written"), readOnly);
  }

  @Test
  void namesALogThatDoesNotAnswer() {
    String said = WriterTrouble.explain(new TimeoutException("Timeout expired"), SETTINGS);
    assertTrue(said.startsWith("The log at 127.0.0.1:9092 does not answer"), said);
  }
}
