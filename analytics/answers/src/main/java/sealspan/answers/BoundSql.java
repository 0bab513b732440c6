package sealspan.answers;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * SQL of the program's own in which {@code $name} stands for a filter.
 *
 * @param text the SQL with numbered parameters
 * @param filters the filters in the order of their numbers
 */
record BoundSql(String text, List<Filter> filters) {
  private static final Pattern NAME = Pattern.compile("\\$([a-z]+)");

  static BoundSql of(String sql) {
    List<Filter> filters = new ArrayList<>();
    Matcher name = NAME.matcher(sql);
    StringBuilder text = new StringBuilder();
    while (name.find()) {
      Filter filter = Filter.ofLabel(name.group(1));
      if (!filters.contains(filter)) {
        filters.add(filter);
      }
      String parameter =
          "cast(\\$%d as %s)".formatted(filters.indexOf(filter) + 1, filter.kind().sqlType());
      name.appendReplacement(text, parameter);
    }
    name.appendTail(text);
    return new BoundSql(text.toString(), List.copyOf(filters));
  }

  /** Runs it with the values of filters; a filter without a value is null. */
  ResultTable run(Connection connection, Map<Filter, Object> values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(text)) {
      for (int i = 0; i < filters.size(); i++) {
        Object value = values.get(filters.get(i));
        if (value == null) {
          statement.setNull(i + 1, Types.NULL);
        } else {
          statement.setObject(i + 1, value);
        }
      }
      try (ResultSet result = statement.executeQuery()) {
        return read(result);
      }
    }
  }

  private static ResultTable read(ResultSet result) throws SQLException {
    ResultSetMetaData meta = result.getMetaData();
    List<ResultTable.ResultColumn> columns = new ArrayList<>();
    for (int i = 1; i <= meta.getColumnCount(); i++) {
      columns.add(new ResultTable.ResultColumn(meta.getColumnLabel(i), meta.getColumnTypeName(i)));
    }
    List<List<Object>> rows = new ArrayList<>();
    while (result.next()) {
      List<Object> row = new ArrayList<>();
      for (int i = 1; i <= columns.size(); i++) {
        row.add(
            columns.get(i - 1).sqlType().startsWith("TIMESTAMP")
                ? result.getObject(i, LocalDateTime.class)
                : result.getObject(i));
      }
      rows.add(row);
    }
    return new ResultTable(columns, rows);
  }
}
