package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.WatchAlarmRow;

/**
 * The alarms of the newest snapshot that are not in the ledger yet.
 *
 * @param offsets the cut of the snapshot
 * @param alarms the alarms, in the order in which they were raised
 */
public record NewAlarms(String offsets, List<WatchAlarmRow> alarms) {
  private static final String SQL =
      """
      select alarm_id, run, raised_at, raised_by_event_id, model_id, model_frozen_at, zone,
        zone_kind, zone_id, centre_site_id, latitude, longitude, radius_km, sites, members,
        multiplier, share, evidence, threshold, tests_watched, tests_per_year,
        years_to_false_alarm, since, since_day, tests, cases, expected, case_event_ids,
        calibration_tests, calibration_cases, calibration_expected, calibration_ratio,
        calibration_lower, calibration_upper, promise, promise_words
      from watch_alarm a
      where not exists (from ledger l
        where l.kind = 'ALARM_RAISED' and split_part(l.content, chr(9), 2) = a.alarm_id)
      order by raised_at, run, alarm_id
      """;

  /**
   * Reads the newest snapshot.
   *
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static NewAlarms read(Path dataFolder) {
    try (Answers answers = Answers.open(dataFolder)) {
      Connection snapshot = answers.connection();
      List<WatchAlarmRow> alarms = new ArrayList<>();
      try (Statement statement = snapshot.createStatement();
          ResultSet row = statement.executeQuery(SQL)) {
        while (row.next()) {
          alarms.add(alarm(row));
        }
      }
      return new NewAlarms(Cut.of(snapshot).offsets(), alarms);
    } catch (SQLException e) {
      throw new AnswersException("The alarms cannot be read: " + e.getMessage(), e);
    }
  }

  private static WatchAlarmRow alarm(ResultSet row) throws SQLException {
    return new WatchAlarmRow(
        row.getString(1),
        row.getString(2),
        instant(row, 3),
        row.getString(4),
        row.getString(5),
        instant(row, 6),
        row.getString(7),
        row.getString(8),
        row.getString(9),
        row.getString(10),
        (Double) row.getObject(11),
        (Double) row.getObject(12),
        (Double) row.getObject(13),
        row.getInt(14),
        row.getString(15),
        row.getDouble(16),
        row.getDouble(17),
        row.getDouble(18),
        row.getDouble(19),
        row.getLong(20),
        row.getDouble(21),
        row.getDouble(22),
        instant(row, 23),
        row.getObject(24, LocalDate.class),
        row.getInt(25),
        row.getInt(26),
        row.getDouble(27),
        row.getString(28),
        row.getInt(29),
        row.getInt(30),
        row.getDouble(31),
        (Double) row.getObject(32),
        (Double) row.getObject(33),
        (Double) row.getObject(34),
        row.getString(35),
        row.getString(36));
  }

  private static Instant instant(ResultSet row, int column) throws SQLException {
    LocalDateTime utc = row.getObject(column, LocalDateTime.class);
    return utc == null ? null : utc.toInstant(ZoneOffset.UTC);
  }
}
