package sealspan.app;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sealspan.answers.AnswersFolder;
import sealspan.answers.OpenSnapshot;

/** Every table of the newest snapshot, every row in full, to hold two records equal. */
public final class PublishedTables {
  private PublishedTables() {}

  /**
   * What depends on the moment at which the log took something in, or on how often it was fitted.
   */
  private static final Set<String> OF_THE_CLOCK =
      Set.of(
          "\"recorded_at\"",
          "\"last_recorded_at\"",
          "\"newest_recorded_at\"",
          "\"first_seen_at\"",
          "\"decided_at\"",
          // Rows with their recorded times.
          "\"input_digest\"");

  /** Tables that tell when something was decided: when was fitted, forecast, frozen. */
  private static final Set<String> OF_DECISIONS =
      Set.of("ledger", "frozen_forecast", "watch_state", "watch_alarm");

  /** A conflict names when the log took in what holds, and the id of its row follows from that. */
  private static final String RECORDED_AT = "recorded \\d{4}-\\d{2}-\\d{2}T[0-9:.]+Z";

  private static final String ID_OF_QUARANTINED = "\\b[0-9a-f]{32}\\b";

  /**
   * The rows of each table in an order of their own. Without the table that says when it was
   * published and by which generation, which differ on purpose.
   */
  public static Map<String, List<String>> of(Path dataFolder) {
    return of(dataFolder, Set.of(), Set.of());
  }

  /**
   * The same without recorded times, without the ledger and what was forecast, which tell when was
   * fitted, and without the watch, which goes by when models were frozen.
   */
  public static Map<String, List<String>> withoutTheClock(Path dataFolder) {
    Map<String, List<String>> tables = of(dataFolder, OF_THE_CLOCK, OF_DECISIONS);
    tables.computeIfPresent(
        "quarantined",
        (table, rows) ->
            rows.stream()
                .map(row -> row.replaceAll(RECORDED_AT, "recorded then"))
                .map(row -> row.replaceAll(ID_OF_QUARANTINED, "id"))
                .sorted()
                .toList());
    return tables;
  }

  /** What a query over the newest snapshot gives in its first column. */
  public static List<String> ask(Path dataFolder, String sql) {
    try (Connection connection = newest(dataFolder);
        Statement statement = connection.createStatement()) {
      return rows(statement, sql);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Connection newest(Path dataFolder) throws SQLException {
    return OpenSnapshot.readOnly(new AnswersFolder(dataFolder).newestSnapshot());
  }

  private static Map<String, List<String>> of(
      Path dataFolder, Set<String> leftOutColumns, Set<String> leftOutTables) {
    Map<String, List<String>> tables = new TreeMap<>();
    try (Connection connection = newest(dataFolder);
        Statement statement = connection.createStatement()) {
      for (String table : names(statement)) {
        if (!leftOutTables.contains(table)) {
          List<String> columns = columns(statement, table);
          columns.removeAll(leftOutColumns);
          String row = "row(" + String.join(", ", columns) + ")::VARCHAR";
          tables.put(table, rows(statement, "select " + row + " from " + table + " order by 1"));
        }
      }
      return tables;
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** In which tables two records differ, with the first rows of each that the other lacks. */
  public static List<String> differences(
      Map<String, List<String>> expected, Map<String, List<String>> actual) {
    List<String> differences = new ArrayList<>();
    Set<String> tables = new TreeSet<>(expected.keySet());
    tables.addAll(actual.keySet());
    for (String table : tables) {
      List<String> should = expected.getOrDefault(table, List.of());
      List<String> is = actual.getOrDefault(table, List.of());
      if (!should.equals(is)) {
        differences.add(
            table
                + "\n  lacks "
                + firstOf(should, is)
                + "\n  has   "
                + firstOf(is, should)
                + "\n  rows  "
                + should.size()
                + " and "
                + is.size());
      }
    }
    return differences;
  }

  private static List<String> firstOf(List<String> some, List<String> without) {
    Set<String> others = new HashSet<>(without);
    return some.stream().filter(row -> !others.contains(row)).limit(2).toList();
  }

  private static List<String> columns(Statement statement, String table) throws SQLException {
    return rows(
        statement,
        "select '\"' || column_name || '\"' from information_schema.columns"
            + " where table_catalog = current_database() and table_schema = 'main'"
            + " and table_name = '"
            + table
            + "' order by ordinal_position");
  }

  private static List<String> names(Statement statement) throws SQLException {
    return rows(
        statement,
        "select table_name from information_schema.tables where table_schema = 'main'"
            + " and table_catalog = current_database()"
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
