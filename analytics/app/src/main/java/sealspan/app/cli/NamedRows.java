package sealspan.app.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.answers.ResultTable;

/** Rows of an answer by the names of their columns. */
final class NamedRows {
  private NamedRows() {}

  /** All rows of a table. */
  static List<Map<String, Object>> of(ResultTable table) {
    List<Map<String, Object>> rows = new ArrayList<>();
    for (List<Object> row : table.rows()) {
      Map<String, Object> named = new LinkedHashMap<>();
      for (int i = 0; i < row.size(); i++) {
        named.put(table.columns().get(i).name(), row.get(i));
      }
      rows.add(named);
    }
    return rows;
  }
}
