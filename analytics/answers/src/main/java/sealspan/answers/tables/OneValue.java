package sealspan.answers.tables;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Reads the single value that a query gives. */
public final class OneValue {
  private OneValue() {}

  /** A whole number. */
  public static long number(Statement statement, String sql) throws SQLException {
    try (ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }

  /** A text. */
  public static String text(Statement statement, String sql) throws SQLException {
    try (ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }
}
