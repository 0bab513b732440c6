package sealspan.answers;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Rows under named columns. A value is a String, Boolean, Integer, Long, Double, BigDecimal,
 * LocalDate, LocalDateTime (UTC), or null for "not recorded" or "not identified".
 *
 * @param columns the columns
 * @param rows the rows, each as long as the columns
 */
public record ResultTable(List<ResultColumn> columns, List<List<Object>> rows) {
  /**
   * A column of a result.
   *
   * @param name its name
   * @param sqlType its type in DuckDB
   */
  public record ResultColumn(String name, String sqlType) {
    /** Whether it holds numbers. */
    public boolean isNumber() {
      return sqlType.matches("(U?(TINY|SMALL|BIG|HUGE)INT|U?INTEGER|DOUBLE|FLOAT|DECIMAL.*)");
    }
  }

  public ResultTable {
    columns = List.copyOf(columns);
    rows = rows.stream().map(row -> Collections.unmodifiableList(new ArrayList<>(row))).toList();
  }

  /** Place of a column, from 0; fails with IllegalArgumentException where there is none. */
  public int indexOf(String column) {
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).name().equals(column)) {
        return i;
      }
    }
    throw new IllegalArgumentException("There is no column " + column + ".");
  }

  /** The same columns with other rows. */
  ResultTable withRows(List<List<Object>> others) {
    return new ResultTable(columns, others);
  }
}
