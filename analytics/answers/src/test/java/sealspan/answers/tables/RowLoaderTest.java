package sealspan.answers.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.duckdb.DuckDBConnection;
import org.junit.jupiter.api.Test;
import sealspan.answers.HandMade;
import sealspan.avro.PackedBundle;
import sealspan.avro.TableCodec;
import sealspan.table.Bundle;

class RowLoaderTest {
  /** So often that the rows of a table are handed over several times. */
  private static final int TIMES = 300;

  @Test
  void packedRowsMakeTheTablesThatTheirRecordsMake() throws Exception {
    try (DuckDBConnection records = empty();
        DuckDBConnection packed = empty()) {
      try (RowLoader ofRecords = new RowLoader(records);
          RowLoader ofPacked = new RowLoader(packed)) {
        for (int i = 0; i < TIMES; i++) {
          for (Bundle bundle : HandMade.bundles()) {
            ofRecords.add(bundle);
            ofPacked.add(new PackedBundle(TableCodec.encode(bundle)));
          }
        }
      }
      int filled = 0;
      for (TableDefinition table : Tables.all()) {
        List<String> rows = rows(records, table);
        filled += rows.isEmpty() ? 0 : 1;
        assertEquals(rows, rows(packed, table), table.name());
      }
      assertTrue(filled > 30, "only " + filled + " tables have rows to compare");
    }
  }

  private static DuckDBConnection empty() throws SQLException {
    DuckDBConnection connection =
        DriverManager.getConnection("jdbc:duckdb:").unwrap(DuckDBConnection.class);
    Tables.create(connection);
    return connection;
  }

  /** All rows as texts that tell null and empty apart, in the order in which they came. */
  private static List<String> rows(Connection connection, TableDefinition table)
      throws SQLException {
    List<String> rows = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet all =
            statement.executeQuery("select t::VARCHAR from \"%s\" t".formatted(table.name()))) {
      while (all.next()) {
        rows.add(all.getString(1));
      }
    }
    return rows;
  }
}
