package sealspan.answers.tables;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/**
 * What makes a model a snapshot: the standing sums, and a table that says what made it and when.
 * The time of publishing stands in that table alone, so that answers do not depend on it.
 *
 * @param generation generation of the results
 * @param codeVersion version of the program
 * @param publishedAt time of publishing
 */
public record Publication(String generation, String codeVersion, Instant publishedAt) {

  /** Adds sums and publication to a model that has all its rows, in the place of earlier ones. */
  public void addTo(Connection connection) throws SQLException {
    PublishedSums.create(connection);
    try (Statement statement = connection.createStatement()) {
      statement.execute(
          "create or replace table publication ("
              + "generation VARCHAR, code_version VARCHAR, published_at TIMESTAMP)");
    }
    try (PreparedStatement insert =
        connection.prepareStatement("insert into publication values (?, ?, ?)")) {
      insert.setString(1, generation);
      insert.setString(2, codeVersion);
      insert.setObject(
          3, LocalDateTime.ofInstant(publishedAt.truncatedTo(ChronoUnit.MILLIS), ZoneOffset.UTC));
      insert.execute();
    }
  }
}
