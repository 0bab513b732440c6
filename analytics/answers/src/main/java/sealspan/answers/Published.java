package sealspan.answers;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * How far the newest snapshot is: for those who wait until something is in the answers.
 *
 * @param cut what the tables stand for
 * @param fitOffsets the cut of the newest fit, in the form of {@link Cut#offsets()}; null for none
 * @param fitNewestRecordedAt recorded time of the newest event of that cut, UTC; null for no fit
 * @param scored whether every assembly is scored with that fit
 */
public record Published(
    Cut cut, String fitOffsets, LocalDateTime fitNewestRecordedAt, boolean scored) {
  private static final String FIT =
      "select cut_offsets, newest_recorded_at, cut_id from fit where stratum = 'all'";

  /**
   * The newest snapshot of a data folder; empty where nothing was published yet.
   *
   * @throws AnswersException where it cannot be read
   */
  public static Optional<Published> newest(Path dataFolder) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    if (!Files.exists(folder.currentFile())) {
      return Optional.empty();
    }
    for (Path snapshot = folder.newestSnapshot(); ; ) {
      try {
        return Optional.of(of(snapshot));
      } catch (SQLException e) {
        Path newer = folder.newestSnapshot();
        if (newer.equals(snapshot)) {
          throw new AnswersException(
              "The snapshot " + snapshot + " cannot be read: " + e.getMessage(), e);
        }
        snapshot = newer;
      }
    }
  }

  private static Published of(Path snapshot) throws SQLException {
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement statement = connection.createStatement();
        ResultSet fit = statement.executeQuery(FIT)) {
      Cut cut = Cut.of(connection);
      return fit.next()
          ? new Published(
              cut,
              fit.getString(1),
              fit.getObject(2, LocalDateTime.class),
              isScored(connection, fit.getString(3)))
          : new Published(cut, null, null, false);
    }
  }

  /** Where another build has made other tables, nothing is scored as this one scores. */
  private static boolean isScored(Connection connection, String cutId) {
    try {
      return DueForecasts.isScored(connection, cutId);
    } catch (SQLException e) {
      return false;
    }
  }
}
