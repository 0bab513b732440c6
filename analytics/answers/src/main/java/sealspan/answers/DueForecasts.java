package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.study.Fits;
import sealspan.study.IssuedForecast;

/**
 * The forecasts of the newest snapshot that have not been issued yet: those of assemblies that have
 * passed another round since the last one was. What was issued is read from the ledger in the same
 * snapshot, so nothing is remembered anywhere else.
 *
 * @param scored whether every assembly is scored with the last fit, so that no more will follow
 * @param forecasts the forecasts, by assembly
 */
public record DueForecasts(boolean scored, List<IssuedForecast> forecasts) {
  private static final String KNOWN = "select count(*) from ledger where id = ?";

  /**
   * Fits reach the scores stratum by stratum: a forecast that rests on all types, although the type
   * has a fit of its own, is not done.
   */
  private static final String DONE =
      """
      f.fit_cut_id = ? and not exists (from sudden_failure s
        where s.stratum = 'type=' || a.type and s.stratum <> f.stratum and s.tests >= %d)
      """
          .formatted(Fits.FEWEST_TESTS_OF_A_TYPE);

  private static final String BEHIND =
      "select count(*) - count(*) filter (%s) from forecast f join assembly a using (assembly_id)"
          .formatted(DONE);

  private static final String DUE =
      """
      with issued as (
        select split_part(line, chr(9), 1) as assembly_id, split_part(line, chr(9), 2) as basis
        from (select unnest(string_split(content, chr(10))) as line
          from ledger where kind = 'FORECASTS_ISSUED'))
      select f.assembly_id, f.basis_event_id, f.basis_day, f.probability_at_once,
        f."probability6_months", f.probability_fails, f."probability24_months",
        coalesce(f.base_probability, f.probability_fails), f.probability_drift,
        f.probability_sudden, f.driven_by, coalesce(a.type, '')
      from forecast f
      join assembly a using (assembly_id)
      where %s and f.probability_fails is not null
        and not exists (from issued i
          where i.assembly_id = f.assembly_id and i.basis = f.basis_event_id)
      order by f.assembly_id
      """
          .formatted(DONE);

  /**
   * Reads the newest snapshot.
   *
   * @param cutId id of the cut of the last fit
   * @param lastIssuedId id of the last ledger entry with forecasts; null for none. While the
   *     snapshot does not know it yet, nothing is due.
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static DueForecasts read(Path dataFolder, String cutId, String lastIssuedId) {
    try (Answers answers = Answers.open(dataFolder)) {
      Connection snapshot = answers.connection();
      if (lastIssuedId != null && count(snapshot, KNOWN, lastIssuedId) == 0) {
        return new DueForecasts(false, List.of());
      }
      return new DueForecasts(isScored(snapshot, cutId), due(snapshot, cutId));
    } catch (SQLException e) {
      throw new AnswersException("The forecasts that are due cannot be read: " + e.getMessage(), e);
    }
  }

  /** Whether every assembly of a snapshot is scored with the fit of a cut. */
  static boolean isScored(Connection snapshot, String cutId) throws SQLException {
    return count(snapshot, BEHIND, cutId) == 0;
  }

  private static long count(Connection snapshot, String sql, String value) throws SQLException {
    try (PreparedStatement statement = snapshot.prepareStatement(sql)) {
      statement.setString(1, value);
      try (ResultSet row = statement.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }

  private static List<IssuedForecast> due(Connection snapshot, String cutId) throws SQLException {
    List<IssuedForecast> due = new ArrayList<>();
    try (PreparedStatement statement = snapshot.prepareStatement(DUE)) {
      statement.setString(1, cutId);
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          if (IssuedForecast.isWritable(row.getString(1))
              && IssuedForecast.isWritable(row.getString(2))) {
            due.add(forecast(row, cutId));
          }
        }
      }
    }
    return due;
  }

  private static IssuedForecast forecast(ResultSet row, String cutId) throws SQLException {
    return new IssuedForecast(
        row.getString(1),
        null,
        null,
        cutId,
        Fits.CODE_VERSION,
        row.getString(2),
        row.getObject(3, LocalDate.class),
        row.getDouble(4),
        row.getDouble(5),
        row.getDouble(6),
        row.getDouble(7),
        row.getDouble(8),
        row.getDouble(9),
        row.getDouble(10),
        row.getString(11),
        row.getString(12));
  }
}
