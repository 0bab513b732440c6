package sealspan.answers.tables;

import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;

/** Attaches other database files to a connection. */
public final class Attached {
  private Attached() {}

  /** Attaches a file under a name; makes it where it is missing. */
  public static void writable(Statement statement, Path file, String name) throws SQLException {
    statement.execute("attach %s as %s".formatted(literal(file), name));
  }

  /**
   * Attaches a file under a name; makes it where it is missing. What is committed is on disk only
   * once a checkpoint was made: without one the file is as it was at the last.
   */
  public static void untilCheckpoint(Statement statement, Path file, String name)
      throws SQLException {
    statement.execute(
        "attach %s as %s (recovery_mode no_wal_writes)".formatted(literal(file), name));
  }

  /** Attaches a file under a name, for reading only. */
  public static void readOnly(Statement statement, Path file, String name) throws SQLException {
    statement.execute("attach %s as %s (read_only)".formatted(literal(file), name));
  }

  private static String literal(Path file) {
    return "'" + file.toString().replace("'", "''") + "'";
  }
}
