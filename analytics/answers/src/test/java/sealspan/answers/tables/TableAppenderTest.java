package sealspan.answers.tables;

import static java.util.stream.Collectors.joining;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.junit.jupiter.api.Test;

class TableAppenderTest {
  /** So many, and so wide, that both threads hand over many times, often at once. */
  private static final int ROWS = 300_000;

  private static final int TEXTS = 12;

  @Test
  void twoThreadsAppendByOneConnection() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try (DuckDBConnection connection =
            DriverManager.getConnection("jdbc:duckdb:").unwrap(DuckDBConnection.class);
        Statement statement = connection.createStatement()) {
      statement.execute(
          "create table number (value BIGINT"
              + IntStream.range(0, TEXTS)
                  .mapToObj(i -> ", text" + i + " VARCHAR")
                  .collect(joining())
              + ")");
      connection.setAutoCommit(false); // One transaction, as where batches are taken in.
      Future<?> even = threads.submit(every(connection, 0));
      Future<?> odd = threads.submit(every(connection, 1));
      even.get();
      odd.get();
      assertEquals(
          ROWS,
          OneValue.number(
              statement,
              "select count(distinct value) from number where text0 = 'the number ' || value"));
      assertEquals(ROWS, OneValue.number(statement, "select count(*) from number"));
    } finally {
      threads.shutdown();
    }
  }

  private static Callable<Void> every(DuckDBConnection connection, int first) {
    return () -> {
      try (TableAppender appender = new TableAppender(connection, "main", "number")) {
        for (int i = first; i < ROWS; i += 2) {
          append(i, appender);
        }
      }
      return null;
    };
  }

  private static void append(int number, TableAppender appender) throws SQLException {
    DuckDBAppender out = appender.beginRow();
    out.append((long) number);
    String text = "the number " + number;
    for (int i = 0; i < TEXTS; i++) {
      out.append(text);
    }
    appender.endRow();
  }
}
