package sealspan.answers.writer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.OneValue;
import sealspan.answers.tables.TableAppender;

/**
 * The events themselves, for answers as of an earlier date. The newest stand in the table {@code
 * own.event}; once there are many, those before the published cut move to a Parquet file that never
 * changes again, so that publishing copies only few.
 */
final class EventStore {
  /** Usual number of events that make a segment. */
  static final int SEGMENT_EVENTS = 20_000;

  /** Sets the recorded time of the newest event of each partition of the cut. */
  static final String NEWEST_OF_CUT =
      """
      update cut set newest_recorded_at = newest.recorded_at
      from (
        select "partition", max(recorded_at) as recorded_at
        from (
          select e."partition", e.recorded_at
          from own.event e join cut c on c."partition" = e."partition"
          where e."offset" < c.next_offset
          union all
          select "partition", newest_recorded_at from own.segment_sum)
        group by "partition") newest
      where cut."partition" = newest."partition"
      """;

  private static final String BEFORE_CUT =
      """
      from own.event e join cut c on c."partition" = e."partition"
      where e."offset" < c.next_offset
      """;

  private EventStore() {}

  /** Appends events to the table. */
  static void append(DuckDBConnection connection, List<EventRow> events, Hand second)
      throws SQLException {
    if (!events.isEmpty()) {
      second.halve(events, part -> append(connection, part));
    }
  }

  private static void append(DuckDBConnection connection, List<EventRow> events)
      throws SQLException {
    try (TableAppender appender = new TableAppender(connection, "own", "event")) {
      for (EventRow row : events) {
        DuckDBAppender out = appender.beginRow();
        out.append(row.partition());
        out.append(row.offset());
        out.append(row.event().id());
        out.append(row.event().event().getClass().getSimpleName());
        out.append(row.event().event().subject().key());
        out.appendEpochDays(Math.toIntExact(row.event().event().when().day().toEpochDay()));
        append(row.event().reportedAt(), out);
        append(row.event().reportedOrigin(), out);
        append(row.event().recordedAt(), out);
        append(row.event().arrival(), out);
        out.append(row.event().source());
        out.append(row.value());
        appender.endRow();
      }
    }
  }

  private static void append(Instant instant, DuckDBAppender out) throws SQLException {
    if (instant == null) {
      out.appendNull();
    } else {
      out.appendEpochMicros(ChronoUnit.MICROS.between(Instant.EPOCH, instant));
    }
  }

  private static void append(Enum<?> constant, DuckDBAppender out) throws SQLException {
    if (constant == null) {
      out.appendNull();
    } else {
      out.append(constant.name());
    }
  }

  /**
   * Moves the events before the cut to a new segment, where there are as many as make one. A
   * segment file that a killed writer left without its row in the table is written over.
   */
  static void cutSegment(DuckDBConnection connection, Path folder, int segmentEvents)
      throws SQLException {
    try (Statement statement = connection.createStatement()) {
      long events = OneValue.number(statement, "select count(*) " + BEFORE_CUT);
      if (events < segmentEvents) {
        return;
      }
      long segment =
          OneValue.number(statement, "select coalesce(max(number), 0) + 1 from own.segment");
      Path file = folder.resolve("segment-%06d.parquet".formatted(segment));
      write(statement, file);
      statement.execute(
          "insert into own.segment values (%d, '%s', %d)"
              .formatted(segment, file.getFileName(), events));
      statement.execute(
          """
          insert into own.segment_sum
          select %d, e."partition", type, arrival, count(*), min(valid_day), max(valid_day),
            max(recorded_at)
          """
                  .formatted(segment)
              + BEFORE_CUT
              + "group by e.\"partition\", type, arrival");
      statement.execute(
          """
          delete from own.event e using cut c
          where c."partition" = e."partition" and e."offset" < c.next_offset
          """);
      connection.commit();
    }
  }

  private static void write(Statement statement, Path file) throws SQLException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.createDirectories(file.getParent());
      statement.execute(
          "copy (select e.* "
              + BEFORE_CUT
              + "order by e.\"partition\", e.\"offset\") to '"
              + part.toString().replace("'", "''")
              + "' (format parquet, compression zstd)");
      CompleteFile.put(part, file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
