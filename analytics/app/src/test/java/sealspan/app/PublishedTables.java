package sealspan.app;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import sealspan.answers.AnswersFolder;

/** Every table of the newest snapshot, every row in full, to hold two records equal. */
public final class PublishedTables {
  private PublishedTables() {}

  /**
   * The rows of each table in an order of their own. Without the table that says when it was
   * published and by which generation, which differ on purpose.
   */
  public static Map<String, List<String>> of(Path dataFolder) {
    Properties settings = new Properties();
    settings.setProperty("duckdb.read_only", "true");
    String url = "jdbc:duckdb:" + new AnswersFolder(dataFolder).newestSnapshot();
    Map<String, List<String>> tables = new TreeMap<>();
    try (Connection connection = DriverManager.getConnection(url, settings);
        Statement statement = connection.createStatement()) {
      for (String table : names(statement)) {
        tables.put(table, rows(statement, "select t::VARCHAR from " + table + " t order by 1"));
      }
      return tables;
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<String> names(Statement statement) throws SQLException {
    return rows(
        statement,
        "select table_name from information_schema.tables where table_schema = 'main'"
            + " and table_type = 'BASE TABLE' and table_name <> 'publication' order by 1");
  }

  private static List<String> rows(Statement statement, String sql) throws SQLException {
    List<String> rows = new ArrayList<>();
    try (ResultSet result = statement.executeQuery(sql)) {
      while (result.next()) {
        rows.add(result.getString(1));
      }
    }
    return rows;
  }
}
