package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import sealspan.study.watch.HighSide;
import sealspan.study.watch.WatchModel;
import sealspan.study.watch.WatchSite;
import sealspan.table.FoulingCoefficientRow;

/**
 * Whether the watch over fouling is due for another model, as the newest snapshot tells: when none
 * was frozen yet, when the last one is four weeks old, or when the fit knows twice the visits that
 * it knew then.
 *
 * @param fitted whether the snapshot holds the fit that was asked for
 * @param model the model to be frozen; null where none is due
 */
public record DueWatchModel(boolean fitted, WatchModel model) {
  private static final Duration LONGEST_USE = Duration.ofDays(28);
  private static final DueWatchModel NOT_FITTED = new DueWatchModel(false, null);

  private static final String FIT = "select code_version, visits from fouling_fit where cut_id = ?";
  private static final String KNOWN = "select count(*) from ledger where id = ?";

  /** Tests a year, by the last year that is on record. */
  private static final String PACE =
      """
      with rounds as (select day from test
        where counted and phase = 'AS_FOUND' and exposure_days > 0),
      newest as (select max(day) as day, min(day) as first from rounds)
      select count(*) * 365.25 / greatest(90, least(365, any_value(n.day - n.first)))
      from rounds r, newest n where r.day > n.day - 365
      """;

  private static final String SITES =
      """
      select coalesce(site_id, ' ' || assembly_id) as place, max(zone_id), max(latitude),
        max(longitude)
      from assembly where removed_on is null group by place order by place
      """;

  /**
   * Reads the newest snapshot.
   *
   * @param cutId id of the cut of the last fit
   * @param lastModelId id of the last ledger entry with a model; null for none. While the snapshot
   *     does not know it yet, nothing is told.
   * @param now the time now
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static DueWatchModel read(Path dataFolder, String cutId, String lastModelId, Instant now) {
    try (Answers answers = Answers.open(dataFolder)) {
      Connection snapshot = answers.connection();
      if (lastModelId != null && !isKnown(snapshot, lastModelId)) {
        return NOT_FITTED;
      }
      try (PreparedStatement statement = snapshot.prepareStatement(FIT)) {
        statement.setString(1, cutId);
        try (ResultSet row = statement.executeQuery()) {
          return row.next()
              ? new DueWatchModel(true, due(snapshot, cutId, row.getString(1), row.getInt(2), now))
              : NOT_FITTED;
        }
      }
    } catch (SQLException e) {
      throw new AnswersException("The model of the watch cannot be read: " + e.getMessage(), e);
    }
  }

  private static WatchModel due(
      Connection snapshot, String cutId, String codeVersion, int visits, Instant now)
      throws SQLException {
    List<WatchModel> models = WatchModel.of(AsOfLedger.entries(snapshot, WatchModel.KIND));
    WatchModel last = models.isEmpty() ? null : models.get(models.size() - 1);
    boolean good =
        last != null
            && last.frozenAt().plus(LONGEST_USE).isAfter(now)
            && visits < 2L * last.visits();
    List<FoulingCoefficientRow> coefficients = coefficients(snapshot);
    if (good || coefficients.isEmpty()) {
      return null;
    }
    double pace = pace(snapshot);
    return new WatchModel(
        null,
        null,
        cutId,
        codeVersion,
        visits,
        pace,
        WatchModel.thresholdFor(pace),
        HighSide.of(coefficients),
        sites(snapshot));
  }

  private static boolean isKnown(Connection snapshot, String id) throws SQLException {
    try (PreparedStatement statement = snapshot.prepareStatement(KNOWN)) {
      statement.setString(1, id);
      try (ResultSet row = statement.executeQuery()) {
        row.next();
        return row.getLong(1) > 0;
      }
    }
  }

  private static List<FoulingCoefficientRow> coefficients(Connection snapshot) throws SQLException {
    List<FoulingCoefficientRow> rows = new ArrayList<>();
    try (Statement statement = snapshot.createStatement();
        ResultSet row =
            statement.executeQuery(
                "select name, \"value\", lower, upper from fouling_coefficient order by name")) {
      while (row.next()) {
        rows.add(
            new FoulingCoefficientRow(
                row.getString(1),
                row.getDouble(2),
                (Double) row.getObject(3),
                (Double) row.getObject(4)));
      }
    }
    return rows;
  }

  private static double pace(Connection snapshot) throws SQLException {
    try (Statement statement = snapshot.createStatement();
        ResultSet row = statement.executeQuery(PACE)) {
      row.next();
      return Math.max(1, row.getDouble(1));
    }
  }

  private static List<WatchSite> sites(Connection snapshot) throws SQLException {
    List<WatchSite> sites = new ArrayList<>();
    try (Statement statement = snapshot.createStatement();
        ResultSet row = statement.executeQuery(SITES)) {
      while (row.next()) {
        sites.add(
            new WatchSite(
                row.getString(1),
                row.getString(2),
                (Double) row.getObject(3),
                (Double) row.getObject(4)));
      }
    }
    return sites;
  }
}
