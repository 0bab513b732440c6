package sealspan.answers.tables;

import java.sql.SQLException;
import java.util.IdentityHashMap;
import java.util.Map;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.table.Bundle;

/**
 * Appends rows in bulk, each to its own table, within the caller's transaction. Close it before the
 * transaction is committed: only then is everything handed over.
 */
public final class RowLoader implements AutoCloseable {
  private final DuckDBConnection connection;
  // By identity: to hash a table would be to hash all its columns, for every row.
  private final Map<TableDefinition, DuckDBAppender> appenders = new IdentityHashMap<>();

  /** A loader that writes through a connection. */
  public RowLoader(DuckDBConnection connection) {
    this.connection = connection;
  }

  /** Appends all rows of a bundle. */
  public void add(Bundle bundle) throws SQLException {
    for (Record row : Tables.rowsOf(bundle)) {
      add(bundle.key(), row);
    }
  }

  /** Appends one row under the key of its bundle. */
  public void add(String bundleKey, Record row) throws SQLException {
    TableDefinition table = Tables.of(row.getClass());
    DuckDBAppender out = appenders.get(table);
    if (out == null) {
      out = connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, table.name());
      appenders.put(table, out);
    }
    out.beginRow();
    out.append(bundleKey);
    for (Column column : table.columns()) {
      column.append(row, out);
    }
    out.endRow();
  }

  @Override
  public void close() throws SQLException {
    SQLException first = null;
    for (DuckDBAppender appender : appenders.values()) {
      try {
        appender.close();
      } catch (SQLException e) {
        if (first == null) {
          first = e;
        } else {
          first.addSuppressed(e);
        }
      }
    }
    appenders.clear();
    if (first != null) {
      throw first;
    }
  }
}
