package sealspan.answers;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Properties;
import sealspan.answers.tables.Layers;

/** Opens a snapshot with all that belongs to it. */
public final class OpenSnapshot {
  private OpenSnapshot() {}

  /**
   * A connection for reading only, whose tables show all rows.
   *
   * @param snapshot its file; its layers lie in folders beside it
   */
  public static Connection readOnly(Path snapshot) throws SQLException {
    return readOnly(snapshot, new Properties());
  }

  /**
   * The same with further settings.
   *
   * @param settings of the driver or the database
   */
  public static Connection readOnly(Path snapshot, Properties settings) throws SQLException {
    Properties all = new Properties();
    all.putAll(settings);
    all.setProperty("duckdb.read_only", "true");
    Connection connection = DriverManager.getConnection("jdbc:duckdb:" + snapshot, all);
    try {
      Layers.show(connection, snapshot.toAbsolutePath().getParent());
      return connection;
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
  }
}
