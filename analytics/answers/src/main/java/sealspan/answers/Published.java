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
 * How far a snapshot is: for those who wait until something is in the answers.
 *
 * @param snapshot its file
 * @param cut what the tables stand for
 * @param fitOffsets the cut of the newest fit, in the form of {@link Cut#offsets()}; null for none
 * @param fitNewestRecordedAt recorded time of the newest event of that cut, UTC; null for no fit
 * @param fitCutId id of that cut; null for no fit
 */
public record Published(
    Path snapshot, Cut cut, String fitOffsets, LocalDateTime fitNewestRecordedAt, String fitCutId) {
  private static final String FIT =
      "select cut_offsets, newest_recorded_at, cut_id from fit where stratum = 'all'";

  /**
   * The newest snapshot of a data folder; empty where nothing was published yet.
   *
   * @throws AnswersException where it cannot be read
   */
  public static Optional<Published> newest(Path dataFolder) {
    return newer(dataFolder, null);
  }

  /**
   * The newest snapshot where it is another than one that was seen before: to open it again and
   * again would keep those busy who make the next.
   *
   * @param seen the one that was seen; null for none
   * @throws AnswersException where it cannot be read
   */
  public static Optional<Published> newer(Path dataFolder, Published seen) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    if (!Files.exists(folder.currentFile())) {
      return Optional.empty();
    }
    for (Path snapshot = folder.newestSnapshot(); ; ) {
      if (seen != null && snapshot.equals(seen.snapshot())) {
        return Optional.empty();
      }
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
              snapshot,
              cut,
              fit.getString(1),
              fit.getObject(2, LocalDateTime.class),
              fit.getString(3))
          : new Published(snapshot, cut, null, null, null);
    }
  }

  /**
   * Whether every assembly is scored with the fit. Where another build has made other tables,
   * nothing is scored as this one scores; nor is what a newer snapshot has already replaced.
   */
  public boolean isScored() {
    if (fitCutId == null) {
      return false;
    }
    try (Connection connection = OpenSnapshot.readOnly(snapshot)) {
      return DueForecasts.isScored(connection, fitCutId);
    } catch (SQLException e) {
      return false;
    }
  }
}
