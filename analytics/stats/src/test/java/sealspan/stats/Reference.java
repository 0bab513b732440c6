package sealspan.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads the reference cases; each folder has a SOURCE.txt that names data and method. */
public final class Reference {
  private final List<Map<String, String>> rows;

  private Reference(List<Map<String, String>> rows) {
    this.rows = rows;
  }

  public static Reference read(String path) {
    List<Map<String, String>> rows = new ArrayList<>();
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + path);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      String[] header = cells(reader.readLine());
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        String[] cells = cells(line);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < header.length; i++) {
          row.put(header[i], cells[i]);
        }
        rows.add(row);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Reference(rows);
  }

  public List<Map<String, String>> rows() {
    return rows;
  }

  /** Rows whose column has the value. */
  public Reference where(String column, String value) {
    return new Reference(rows.stream().filter(row -> row.get(column).equals(value)).toList());
  }

  /** The value of a named quantity. */
  public double value(String quantity) {
    List<Map<String, String>> found = where("quantity", quantity).rows();
    if (found.size() != 1) {
      throw new IllegalStateException(found.size() + " rows for " + quantity);
    }
    return Double.parseDouble(found.get(0).get("value"));
  }

  private static String[] cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (char c : line.toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells.toArray(String[]::new);
  }
}
