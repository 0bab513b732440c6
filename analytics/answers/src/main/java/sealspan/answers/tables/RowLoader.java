package sealspan.answers.tables;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.sql.SQLException;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.avro.generic.GenericDatumReader;
import org.apache.avro.io.Decoder;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.avro.PackedBundle;
import sealspan.avro.SingleObjectCodec;
import sealspan.table.Bundle;

/** Appends rows in bulk, each to its own table, as {@link TableAppender} does. */
public final class RowLoader implements AutoCloseable {
  private final DuckDBConnection connection;
  // By identity: to hash a table would be to hash all its columns, for every row.
  private final Map<TableDefinition, TableAppender> appenders = new IdentityHashMap<>();

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
    append(bundleKey.getBytes(UTF_8), row.getClass(), (column, out) -> column.append(row, out));
  }

  /**
   * Appends all rows of a bundle as they are packed.
   *
   * @throws SingleObjectCodec.DamagedBytes where the bytes are damaged; a part of the rows may have
   *     been appended
   */
  public void add(PackedBundle bundle) throws SQLException {
    Decoder packed = bundle.values();
    byte[] key = bundle.key().getBytes(UTF_8);
    try {
      for (BundlePart part : Tables.partsOf(bundle.type())) {
        if (part.rowClass() == null) {
          GenericDatumReader.skip(part.schema(), packed);
        } else if (part.list()) {
          for (long rows = packed.readArrayStart(); rows != 0; rows = packed.arrayNext()) {
            for (long i = 0; i < rows; i++) {
              append(key, part.rowClass(), (column, out) -> column.append(packed, out));
            }
          }
        } else if (packed.readIndex() != 0) {
          append(key, part.rowClass(), (column, out) -> column.append(packed, out));
        }
      }
    } catch (IOException | RuntimeException e) { // Bytes of chance fail in any way that there is.
      throw new SingleObjectCodec.DamagedBytes(
          "The rows of %s are damaged.".formatted(bundle.key()), e);
    }
  }

  /** Gives the values of a row, one for each call, in the order of the columns. */
  private interface Values<E extends Exception> {
    void append(Column column, DuckDBAppender out) throws E, SQLException;
  }

  private <E extends Exception> void append(
      byte[] bundleKey, Class<? extends Record> rowClass, Values<E> values) throws E, SQLException {
    TableDefinition table = Tables.of(rowClass);
    TableAppender appender = appender(table);
    DuckDBAppender out = appender.beginRow();
    out.append(bundleKey);
    for (Column column : table.columns()) {
      values.append(column, out);
    }
    appender.endRow();
  }

  private TableAppender appender(TableDefinition table) throws SQLException {
    TableAppender appender = appenders.get(table);
    if (appender == null) {
      appender = new TableAppender(connection, DuckDBConnection.DEFAULT_SCHEMA, table.name());
      appenders.put(table, appender);
    }
    return appender;
  }

  @Override
  public void close() throws SQLException {
    SQLException first = null;
    for (TableAppender appender : appenders.values()) {
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
