package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sealspan.avro.EventCodec;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;

/**
 * The events that the log had recorded before an instant, as far as the snapshot goes.
 *
 * @param events the events with their places, by partition and offset
 */
record RecordedEvents(List<Placed> events) {
  /** What {@link #logged(ResultSet)} reads. */
  static final String FIELDS =
      """
      "partition", "offset", id, source, "value", reported_at, reported_origin, recorded_at, arrival
      """;

  private static final int STEP = 10_000;

  private static final String OF_MODEL =
      """
      insert into main.cut
      select "partition", max("offset") + 1, max(recorded_at)
      from chosen group by "partition" order by "partition"
      """;

  private static final String SUMS_OF_MODEL =
      """
      insert into own.segment_sum
      select 0, "partition", type, arrival, count(*), min(valid_day), max(valid_day),
        max(recorded_at)
      from chosen group by "partition", type, arrival
      """;

  /**
   * An event and its place.
   *
   * @param partition partition of the log
   * @param offset offset in it
   * @param event the event
   */
  record Placed(int partition, long offset, LoggedEvent event) {}

  /** Reads them, and notes the cut and the sums in the model. */
  static RecordedEvents read(
      Connection model, Path segmentFolder, LocalDateTime end, Progress progress)
      throws SQLException {
    try (PreparedStatement choose =
        model.prepareStatement(
            """
            create temp table chosen as
            select e.* from (%s) e
            join snapshot.main.cut c on c."partition" = e."partition"
            where e."offset" < c.next_offset and e.recorded_at < ?
            """
                .formatted(sources(model, "snapshot.own", segmentFolder)))) {
      choose.setObject(1, end);
      choose.execute();
    }
    try (Statement statement = model.createStatement()) {
      statement.execute(OF_MODEL);
      statement.execute(SUMS_OF_MODEL);
      RecordedEvents events = decode(statement, progress);
      statement.execute("drop table chosen");
      return events;
    }
  }

  /** The query of all events of a snapshot: those of its segments and those in its own table. */
  static String sources(Connection connection, String own, Path segmentFolder) throws SQLException {
    List<String> files = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("select file from " + own + ".segment order by number")) {
      while (rows.next()) {
        String path = segmentFolder.resolve(rows.getString(1)).toString();
        files.add("'" + path.replace("'", "''") + "'");
      }
    }
    String tail = "select * from " + own + ".event";
    return files.isEmpty()
        ? tail
        : tail + " union all select * from read_parquet([" + String.join(", ", files) + "])";
  }

  private static RecordedEvents decode(Statement statement, Progress progress) throws SQLException {
    List<Placed> events = new ArrayList<>();
    long all = count(statement);
    try (ResultSet row =
        statement.executeQuery(
            "select " + FIELDS + " from chosen order by \"partition\", \"offset\"")) {
      while (row.next()) {
        events.add(new Placed(row.getInt(1), row.getLong(2), logged(row)));
        if (events.size() % STEP == 0) {
          progress.at("reading events", events.size(), all);
        }
      }
    }
    progress.at("reading events", events.size(), all);
    return new RecordedEvents(events);
  }

  /** The event of a row of {@link #FIELDS}. */
  static LoggedEvent logged(ResultSet row) throws SQLException {
    String origin = row.getString(7);
    String arrival = row.getString(9);
    return new LoggedEvent(
        row.getString(3),
        row.getString(4),
        EventCodec.decode(row.getBytes(5)),
        instant(row, 6),
        origin == null ? null : ReportedOrigin.valueOf(origin),
        instant(row, 8),
        arrival == null ? null : Arrival.valueOf(arrival));
  }

  private static Instant instant(ResultSet row, int column) throws SQLException {
    LocalDateTime utc = row.getObject(column, LocalDateTime.class);
    return utc == null ? null : utc.toInstant(ZoneOffset.UTC);
  }

  private static long count(Statement statement) throws SQLException {
    try (ResultSet row = statement.executeQuery("select count(*) from chosen")) {
      row.next();
      return row.getLong(1);
    }
  }

  /** All of them, without their places. */
  List<LoggedEvent> logged() {
    return events.stream().map(Placed::event).toList();
  }

  /** Those before an offset of their partition; of a partition without one, none. */
  List<LoggedEvent> before(Map<Integer, Long> nextOffsets) {
    return events.stream()
        .filter(e -> e.offset() < nextOffsets.getOrDefault(e.partition(), 0L))
        .map(Placed::event)
        .toList();
  }
}
