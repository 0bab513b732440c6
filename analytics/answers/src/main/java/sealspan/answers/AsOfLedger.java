package sealspan.answers;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sealspan.event.LoggedEvent;
import sealspan.study.FitCut;
import sealspan.study.IssuedForecast;
import sealspan.study.watch.WatchModel;
import sealspan.table.LedgerEntry;

/**
 * What had been decided by then: the criteria in force, the last cut that was fitted, the forecasts
 * that were issued, and the models of the watch that were frozen.
 *
 * @param criteria the criteria table as CSV; null where the shipped one was in force
 * @param cutId id of the cut; null where nothing had been fitted
 * @param cutOffsets its offsets, such as {@code 0:12,1:7}
 * @param cuts number of cuts that had been fitted
 * @param forecasts the forecasts that had been issued
 * @param models the entries with models of the watch that had been frozen
 */
record AsOfLedger(
    String criteria,
    String cutId,
    String cutOffsets,
    long cuts,
    List<IssuedForecast> forecasts,
    List<LedgerEntry> models) {
  private static final Pattern OFFSET = Pattern.compile("(\\d+):(\\d+)");

  private static final String SQL =
      """
      select
        max_by(content, (decided_at, id)) filter (kind = 'CRITERIA_ADOPTED'),
        max_by(id, (decided_at, id)) filter (kind = 'CUT_FITTED'),
        max_by(content, (decided_at, id)) filter (kind = 'CUT_FITTED'),
        count(*) filter (kind = 'CUT_FITTED')
      from ledger
      """;

  static AsOfLedger read(Connection model) throws SQLException {
    try (Statement statement = model.createStatement();
        ResultSet row = statement.executeQuery(SQL)) {
      row.next();
      List<IssuedForecast> forecasts = new ArrayList<>();
      entries(model, IssuedForecast.KIND).forEach(e -> forecasts.addAll(IssuedForecast.of(e)));
      return new AsOfLedger(
          row.getString(1),
          row.getString(2),
          row.getString(3),
          row.getLong(4),
          forecasts,
          entries(model, WatchModel.KIND));
    }
  }

  /** The entries of a kind. */
  static List<LedgerEntry> entries(Connection model, String kind) throws SQLException {
    List<LedgerEntry> entries = new ArrayList<>();
    try (PreparedStatement statement =
        model.prepareStatement("select id, content, decided_at from ledger where kind = ?")) {
      statement.setString(1, kind);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          Instant decidedAt = row.getObject(3, LocalDateTime.class).toInstant(ZoneOffset.UTC);
          entries.add(new LedgerEntry(row.getString(1), kind, row.getString(2), decidedAt, null));
        }
      }
    }
    return entries;
  }

  /** Next offset by partition of the cut; null where nothing had been fitted. */
  Map<Integer, Long> offsets() {
    if (cutId == null) {
      return null;
    }
    Map<Integer, Long> offsets = new HashMap<>();
    Matcher offset = OFFSET.matcher(cutOffsets);
    while (offset.find()) {
      offsets.put(Integer.valueOf(offset.group(1)), Long.valueOf(offset.group(2)));
    }
    return offsets;
  }

  /** The cut for the study; null where nothing had been fitted. */
  FitCut cut(RecordedEvents events) {
    if (cutId == null) {
      return null;
    }
    Instant newest =
        events.before(offsets()).stream()
            .map(LoggedEvent::recordedAt)
            .max(Instant::compareTo)
            .orElse(null);
    return new FitCut(cutId, cutOffsets, newest, cuts);
  }
}
