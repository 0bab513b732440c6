package sealspan.answers.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * Standing sums: each is a query in {@code resources/sealspan/answers/publish}, made into a table
 * of its name when a snapshot is published. A sum thus always agrees with the rows beside it.
 */
public final class PublishedSums {
  private static final String FOLDER = "/sealspan/answers/publish/";

  /** Names of the tables, which are those of the files, in the order in which they are made. */
  public static final List<String> NAMES = names();

  private PublishedSums() {}

  private static List<String> names() {
    return text("index").lines().filter(line -> !line.isBlank()).toList();
  }

  /** Makes all sums, anew where they are there, from the tables that the connection has. */
  public static void create(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String name : NAMES) {
        statement.execute("create or replace table \"" + name + "\" as " + text(name + ".sql"));
      }
    }
  }

  private static String text(String file) {
    try (InputStream in = PublishedSums.class.getResourceAsStream(FOLDER + file)) {
      if (in == null) {
        throw new IllegalStateException("The program's own file " + FOLDER + file + " is missing.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
