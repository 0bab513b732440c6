package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.EventTables;
import sealspan.answers.tables.Publication;
import sealspan.answers.tables.RowLoader;
import sealspan.answers.tables.Tables;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.study.BatchTables;
import sealspan.table.Bundle;

/**
 * The model as it would have been at the end of a day: the same study functions over the events
 * that the log had recorded by then, the same tables and sums, in memory. Later corrections are not
 * in, later imports are not in, however old what they tell.
 *
 * @param day the last day that is in
 * @param zone the utility's time zone, in which the day ends
 */
public record AsOf(LocalDate day, ZoneId zone) {
  private static final String COPIES =
      """
      insert into main.%1$s select * from snapshot.main.%1$s where %2$s < ?
      """;

  /** First instant that is no longer in. */
  Instant end() {
    return day.plusDays(1).atStartOfDay(zone).toInstant();
  }

  private LocalDateTime endUtc() {
    return LocalDateTime.ofInstant(end(), ZoneOffset.UTC);
  }

  /**
   * Makes the model and opens it.
   *
   * @param folder the answers of the data folder
   * @param progress told of the steps
   */
  Answers open(AnswersFolder folder, Progress progress) throws SQLException {
    Path snapshot = folder.newestSnapshot();
    DuckDBConnection model =
        DriverManager.getConnection("jdbc:duckdb:").unwrap(DuckDBConnection.class);
    try {
      execute(model, "set threads = 2");
      execute(model, "attach '" + literal(snapshot) + "' as snapshot (read_only)");
      Publication publication = publication(model);
      Tables.create(model);
      EventTables.create(model);
      copy(model, "quarantined", "first_seen_at");
      copy(model, "ledger", "decided_at");
      RecordedEvents events =
          RecordedEvents.read(model, folder.segments(publication.generation()), endUtc(), progress);
      execute(model, "detach snapshot");
      load(model, events, progress);
      publication.addTo(model);
      String zoneWords = " (end of the day in " + zone + ")";
      return new Answers(
          model,
          day + zoneWords + ": " + Cut.of(model).words(),
          PublishedQuestions.ofThisProgram());
    } catch (SQLException | RuntimeException e) {
      model.close();
      throw e;
    }
  }

  private static void load(DuckDBConnection model, RecordedEvents events, Progress progress)
      throws SQLException {
    AsOfLedger ledger = AsOfLedger.read(model);
    progress.at("working out histories", 0, events.events().size());
    List<Bundle> bundles =
        BatchTables.of(
            events.logged(),
            ledger.offsets() == null ? List.of() : events.before(ledger.offsets()),
            ledger.criteria() == null
                ? AcceptanceCriteria.shipped()
                : new AcceptanceCriteria(ledger.criteria()),
            ledger.cut(events),
            ledger.forecasts(),
            ledger.models());
    try (RowLoader loader = new RowLoader(model)) {
      long done = 0;
      for (Bundle bundle : bundles) {
        loader.add(bundle);
        progress.at("filling tables", ++done, bundles.size());
      }
    }
  }

  private void copy(Connection model, String table, String time) throws SQLException {
    try (PreparedStatement statement = model.prepareStatement(COPIES.formatted(table, time))) {
      statement.setObject(1, endUtc());
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

  private static String literal(Path path) {
    return path.toString().replace("'", "''");
  }
}
