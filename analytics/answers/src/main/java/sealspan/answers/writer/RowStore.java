package sealspan.answers.writer;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.RowLoader;
import sealspan.answers.tables.TableDefinition;
import sealspan.answers.tables.Tables;
import sealspan.avro.PackedBundle;

/** The rows of bundles, and single rows, each in the place of what stood under its key before. */
final class RowStore {
  /** A table that a connection needs for it. */
  static final String BATCH = "create temp table batch (key VARCHAR, revision BIGINT)";

  private final DuckDBConnection connection;
  private final LayerStore layers;
  private final Hand second;

  /** Rows of a file and its layers, which are appended with a second hand where there are many. */
  RowStore(DuckDBConnection connection, LayerStore layers, Hand second) {
    this.connection = connection;
    this.layers = layers;
    this.second = second;
  }

  /**
   * Puts in what holds, within the caller's transaction.
   *
   * @param read what was read, by key
   * @return how much of it held
   */
  int put(Map<String, Upsert> read) throws SQLException {
    if (read.isEmpty()) { // To look what is known takes longer than to take in many events.
      return 0;
    }
    Map<String, Upsert> upserts = new LinkedHashMap<>(read);
    dropKnown(upserts);
    second.halve(List.copyOf(upserts.values()), this::append);
    return upserts.size();
  }

  private void append(List<Upsert> upserts) throws SQLException {
    try (RowLoader loader = new RowLoader(connection)) {
      for (Upsert upsert : upserts) {
        if (upsert.content() instanceof PackedBundle bundle) {
          loader.add(bundle);
        } else {
          loader.add(upsert.key(), (Record) upsert.content());
        }
      }
    }
  }

  /** Removes from the map what is older than what stands, and from the tables what it replaces. */
  private void dropKnown(Map<String, Upsert> upserts) throws SQLException {
    fillBatch(upserts.values());
    boolean replacing = false;
    Map<String, Integer> inLayers = new LinkedHashMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet known = statement.executeQuery(layers.known())) {
      while (known.next()) {
        String key = known.getString(1);
        if (!upserts.get(key).replaces(known.getLong(2))) {
          upserts.remove(key);
        } else if (known.getInt(3) == 0) {
          replacing = true;
        } else {
          inLayers.put(key, known.getInt(3));
        }
      }
    }
    layers.replace(inLayers);
    if (replacing) {
      fillBatch(upserts.values());
      execute("delete from own.bundle where key in (select key from batch)");
      for (TableDefinition table : Tables.holding(contents(upserts.values()))) {
        execute(
            "delete from \"%s\" where %s in (select key from batch)"
                .formatted(table.name(), TableDefinition.BUNDLE_KEY));
      }
    }
    try (DuckDBAppender out = connection.createAppender("own", "bundle")) {
      appendKeys(out, upserts.values());
    }
  }

  private static Collection<Class<?>> contents(Collection<Upsert> upserts) {
    Collection<Class<?>> classes = new LinkedHashSet<>();
    upserts.forEach(u -> classes.add(u.type()));
    return classes;
  }

  private void fillBatch(Collection<Upsert> upserts) throws SQLException {
    execute("delete from batch");
    try (DuckDBAppender out = connection.createAppender("temp", "main", "batch")) {
      appendKeys(out, upserts);
    }
  }

  private static void appendKeys(DuckDBAppender out, Collection<Upsert> upserts)
      throws SQLException {
    for (Upsert upsert : upserts) {
      out.beginRow();
      out.append(upsert.key());
      out.append(upsert.revision());
      out.endRow();
    }
  }

  private void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
