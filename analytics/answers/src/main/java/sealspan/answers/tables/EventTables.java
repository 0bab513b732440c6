package sealspan.answers.tables;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * What a model holds beside the tables of rows: the cut that it stands for, and in the schema
 * {@code own} the newest events, the list of the segment files that hold the others, and their
 * sums; and the list of its layers ({@link Layers}). The schema {@code own} is not for users.
 */
public final class EventTables {
  private static final List<String> STATEMENTS =
      List.of(
          """
          create table cut (
            "partition" INTEGER, next_offset BIGINT, newest_recorded_at TIMESTAMP)
          """,
          "comment on column cut.next_offset is 'offset after the last event that is in'",
          "create schema own",
          """
          create table own.event (
            "partition" INTEGER, "offset" BIGINT, id VARCHAR, type VARCHAR, subject_key VARCHAR,
            valid_day DATE, reported_at TIMESTAMP, reported_origin VARCHAR, recorded_at TIMESTAMP,
            arrival VARCHAR, source VARCHAR, "value" BLOB)
          """,
          "create table own.layer (number INTEGER, file VARCHAR, tables VARCHAR, bundles BIGINT)",
          "create table own.stale (layer INTEGER, key VARCHAR)",
          "create table own.segment (number INTEGER, file VARCHAR, events BIGINT)",
          """
          create table own.segment_sum (
            number INTEGER, "partition" INTEGER, type VARCHAR, arrival VARCHAR, events BIGINT,
            first_day DATE, last_day DATE, newest_recorded_at TIMESTAMP)
          """);

  private EventTables() {}

  /** Makes these tables, empty. */
  public static void create(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String sql : STATEMENTS) {
        statement.execute(sql);
      }
    }
  }
}
