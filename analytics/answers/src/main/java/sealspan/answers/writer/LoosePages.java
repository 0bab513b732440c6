package sealspan.answers.writer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import sealspan.answers.tables.Attached;
import sealspan.answers.tables.PublishedSums;

/**
 * A private file keeps the size that it once had, and every snapshot is a copy of it. What has
 * become mostly empty is written anew.
 */
final class LoosePages {
  /** Blocks have 256 KB. */
  private static final long FREE_BLOCKS = 128;

  private static final String SIZE =
      "select free_blocks, total_blocks from pragma_database_size()"
          + " where database_name = current_database()";

  private static final String TABLES =
      """
      select schema_name || '."' || table_name || '"' from duckdb_tables()
      where database_name = 'loose'
        and table_name not in ('publication', 'standing_question', '%s')
      order by 1
      """
          .formatted(String.join("', '", PublishedSums.NAMES));

  private LoosePages() {}

  /** Whether most of an opened file is empty, and that is worth the work. */
  static boolean areMany(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(SIZE)) {
      return row.next() && row.getLong(1) >= FREE_BLOCKS && 2 * row.getLong(1) > row.getLong(2);
    }
  }

  /**
   * Writes a closed file anew, but for what opening and settling it make. It is complete and on
   * disk before it takes the place of the old one.
   */
  static void leaveOut(Path file) throws IOException, SQLException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Files.deleteIfExists(part);
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + part);
        Statement statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      PrivateStore.create(connection);
      connection.commit();
      connection.setAutoCommit(true);
      Attached.readOnly(statement, file, "loose");
      connection.setAutoCommit(false);
      for (String table : tables(statement)) {
        statement.execute("insert into %s from loose.%s".formatted(table, table));
      }
      connection.commit();
      connection.setAutoCommit(true);
      statement.execute("detach loose");
      statement.execute("checkpoint");
    }
    CompleteFile.put(part, file);
  }

  private static List<String> tables(Statement statement) throws SQLException {
    List<String> tables = new ArrayList<>();
    try (ResultSet row = statement.executeQuery(TABLES)) {
      while (row.next()) {
        tables.add(row.getString(1));
      }
    }
    return tables;
  }
}
