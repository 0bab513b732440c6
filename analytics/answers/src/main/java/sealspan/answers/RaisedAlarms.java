package sealspan.answers;

import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import sealspan.study.watch.RaisedAlarm;

/** Alarms of the watch over fouling that are in the ledger. */
public final class RaisedAlarms {
  private static final String SQL =
      "select count(*) from ledger where kind = ? and split_part(content, chr(9), 2) = ?";

  private RaisedAlarms() {}

  /**
   * Whether the newest snapshot knows an alarm.
   *
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static boolean isRaised(Path dataFolder, String alarmId) {
    try (Answers answers = Answers.open(dataFolder);
        PreparedStatement statement = answers.connection().prepareStatement(SQL)) {
      statement.setString(1, RaisedAlarm.KIND);
      statement.setString(2, alarmId);
      try (ResultSet row = statement.executeQuery()) {
        row.next();
        return row.getLong(1) > 0;
      }
    } catch (SQLException e) {
      throw new AnswersException("The alarms cannot be read: " + e.getMessage(), e);
    }
  }
}
