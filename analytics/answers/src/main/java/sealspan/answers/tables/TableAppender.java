package sealspan.answers.tables;

import java.sql.SQLException;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;

/**
 * Appends rows to a table, within the caller's transaction. Each thread may have one of its own for
 * the same connection: values are laid into columns side by side, and handed over in turn. Close it
 * before the transaction is committed: only then is everything handed over.
 */
public final class TableAppender implements AutoCloseable {
  /**
   * So many rows are handed over at a time: a few less than the 2,048 after which DuckDB's appender
   * would hand them over by itself, which breaks off what another one of the connection hands over.
   */
  private static final int ROWS_AT_ONCE = 2_000;

  private final DuckDBConnection connection;
  private final DuckDBAppender out;
  private int rows;

  /** An appender to a table of the database that a connection uses. */
  public TableAppender(DuckDBConnection connection, String schema, String table)
      throws SQLException {
    this.connection = connection;
    synchronized (connection) {
      out = connection.createAppender(schema, table);
    }
  }

  /** Begins a row; its values are to be appended to what this gives back. */
  public DuckDBAppender beginRow() throws SQLException {
    return out.beginRow();
  }

  /** Ends the row. */
  public void endRow() throws SQLException {
    out.endRow();
    rows++;
    if (rows == ROWS_AT_ONCE) {
      rows = 0;
      synchronized (connection) {
        out.flush();
      }
    }
  }

  @Override
  public void close() throws SQLException {
    synchronized (connection) {
      out.close();
    }
  }
}
