package sealspan.answers;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.ResultTable.ResultColumn;

/**
 * An answer as a Parquet file; title, as_of and notes stand in its metadata. A time is in UTC.
 * Whatever is neither number, flag, day nor time is text.
 */
public final class ParquetFile {
  private ParquetFile() {}

  /**
   * Writes the file whole, in place of one that is there.
   *
   * @throws AnswersException where it cannot be written
   */
  public static void write(Answer answer, Path file) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      write(answer.table(), copy(answer, part));
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (SQLException | IOException e) {
      remove(part, e);
      throw new AnswersException(
          "The file " + file + " cannot be written: " + e.getMessage() + ".", e);
    }
  }

  private static void write(ResultTable table, String copy) throws SQLException {
    String columns =
        table.columns().stream()
            .map(c -> quoted(c.name()) + " " + type(c))
            .collect(Collectors.joining(", "));
    try (DuckDBConnection connection =
            DriverManager.getConnection("jdbc:duckdb:").unwrap(DuckDBConnection.class);
        Statement statement = connection.createStatement()) {
      statement.execute("create table answer (" + columns + ")");
      try (DuckDBAppender out = connection.createAppender("main", "answer")) {
        for (List<Object> row : table.rows()) {
          out.beginRow();
          for (int i = 0; i < row.size(); i++) {
            append(row.get(i), table.columns().get(i), out);
          }
          out.endRow();
        }
      }
      statement.execute(copy);
    }
  }

  private static String copy(Answer answer, Path file) {
    return "copy answer to %s (format parquet, compression zstd, kv_metadata {question: %s, title: %s, as_of: %s, notes: %s})"
        .formatted(
            literal(file.toString()),
            literal(answer.name()),
            literal(answer.title()),
            literal(answer.asOf()),
            literal(String.join("\n", answer.notes())));
  }

  private static String type(ResultColumn column) {
    String type = column.sqlType();
    boolean kept =
        type.matches("BOOLEAN|INTEGER|BIGINT|DOUBLE|DATE|TIMESTAMP|DECIMAL\\(\\d+,\\s?\\d+\\)");
    return kept ? type : column.isNumber() ? "DOUBLE" : "VARCHAR";
  }

  private static void append(Object value, ResultColumn column, DuckDBAppender out)
      throws SQLException {
    String type = type(column);
    if (value == null) {
      out.appendNull();
    } else if (type.equals("DOUBLE")) {
      out.append(((Number) value).doubleValue());
    } else if (value instanceof Boolean flag) {
      out.append(flag.booleanValue());
    } else if (value instanceof Integer number) {
      out.append(number.intValue());
    } else if (value instanceof Long number) {
      out.append(number.longValue());
    } else if (value instanceof BigDecimal number) {
      out.append(number);
    } else if (value instanceof BigInteger number) {
      out.append(number);
    } else if (value instanceof LocalDate day) {
      out.append(day);
    } else if (value instanceof LocalDateTime time) {
      out.append(time);
    } else {
      out.append(value.toString());
    }
  }

  private static void remove(Path part, Exception because) {
    try {
      Files.deleteIfExists(part);
    } catch (IOException e) {
      because.addSuppressed(e);
    }
  }

  private static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }

  private static String literal(String text) {
    return "'" + text.replace("'", "''") + "'";
  }
}
