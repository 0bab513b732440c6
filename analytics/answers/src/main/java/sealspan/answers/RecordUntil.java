package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.Attached;
import sealspan.answers.tables.EventTables;
import sealspan.answers.tables.Publication;
import sealspan.answers.tables.Tables;
import sealspan.assembly.AcceptanceCriteria;

/**
 * What the log had recorded before an instant, taken from the newest snapshot into a model in
 * memory: its events, what had been rejected, and what had been decided. Close it after use.
 *
 * @param model the model; its tables of results are empty
 * @param publication what the snapshot says of itself
 * @param events the events
 * @param ledger what had been decided
 */
record RecordUntil(
    DuckDBConnection model, Publication publication, RecordedEvents events, AsOfLedger ledger)
    implements AutoCloseable {
  private static final String COPIES =
      """
      insert into main.%1$s select * from snapshot.main.%1$s where %2$s < ?
      """;

  /** Later than anything that a log records. */
  static final Instant EVER = Instant.parse("9999-12-31T00:00:00Z");

  /** Takes in what was recorded before an instant. */
  static RecordUntil of(AnswersFolder folder, Instant end, Progress progress) throws SQLException {
    Path snapshot = folder.newestSnapshot();
    LocalDateTime endUtc = LocalDateTime.ofInstant(end, ZoneOffset.UTC);
    DuckDBConnection model =
        DriverManager.getConnection("jdbc:duckdb:").unwrap(DuckDBConnection.class);
    try {
      execute(model, "set threads = 2");
      try (Statement statement = model.createStatement()) {
        Attached.readOnly(statement, snapshot, "snapshot");
      }
      Publication publication = publication(model);
      Tables.create(model);
      EventTables.create(model);
      copy(model, "quarantined", "first_seen_at", endUtc);
      copy(model, "ledger", "decided_at", endUtc);
      RecordedEvents events =
          RecordedEvents.read(model, folder.segments(publication.generation()), endUtc, progress);
      execute(model, "detach snapshot");
      return new RecordUntil(model, publication, events, AsOfLedger.read(model));
    } catch (SQLException | RuntimeException e) {
      model.close();
      throw e;
    }
  }

  /** The limits that were in force. */
  AcceptanceCriteria criteria() {
    return ledger.criteria() == null
        ? AcceptanceCriteria.shipped()
        : new AcceptanceCriteria(ledger.criteria());
  }

  @Override
  public void close() throws SQLException {
    model.close();
  }

  private static void copy(Connection model, String table, String time, LocalDateTime endUtc)
      throws SQLException {
    try (PreparedStatement statement = model.prepareStatement(COPIES.formatted(table, time))) {
      statement.setObject(1, endUtc);
      statement.execute();
    }
  }

  private static Publication publication(Connection model) throws SQLException {
    try (Statement statement = model.createStatement();
        ResultSet row =
            statement.executeQuery(
                "select generation, code_version from snapshot.main.publication")) {
      row.next();
      return new Publication(row.getString(1), row.getString(2), Instant.now());
    }
  }

  private static void execute(Connection model, String sql) throws SQLException {
    try (Statement statement = model.createStatement()) {
      statement.execute(sql);
    }
  }
}
