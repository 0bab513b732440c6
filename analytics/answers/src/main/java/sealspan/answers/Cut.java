package sealspan.answers;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.time.ZoneOffset;

/**
 * What a snapshot stands for.
 *
 * @param offsets offset after the last event of each partition that is in, such as {@code 0:12,1:7}
 * @param events events in the log before the cut
 * @param newestRecordedAt recorded time of the newest of them, UTC; null without events
 * @param generation generation of the results
 * @param codeVersion version of the program that made them
 */
public record Cut(
    String offsets,
    long events,
    LocalDateTime newestRecordedAt,
    String generation,
    String codeVersion) {

  private static final String SQL =
      """
      select
        coalesce(
          (select string_agg("partition" || ':' || next_offset, ',' order by "partition")
           from cut), ''),
        coalesce((select cast(sum(events) as bigint) from event_sum), 0),
        (select max(newest_recorded_at) from cut),
        generation,
        code_version
      from publication
      """;

  /** The cut of a snapshot. */
  public static Cut of(Connection snapshot) throws SQLException {
    try (Statement statement = snapshot.createStatement();
        ResultSet row = statement.executeQuery(SQL)) {
      row.next();
      return new Cut(
          row.getString(1),
          row.getLong(2),
          row.getObject(3, LocalDateTime.class),
          row.getString(4),
          row.getString(5));
    }
  }

  /** The cut in words. */
  public String words() {
    if (events == 0) {
      return "no events yet";
    }
    return "%d events, the newest recorded %s (offsets %s)"
        .formatted(events, newestRecordedAt.toInstant(ZoneOffset.UTC), offsets);
  }
}
