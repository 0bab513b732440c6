package sealspan.answers.tables;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Files that hold rows beside those of a model, so that publishing copies only what is new. A layer
 * is written once and never changes; the model lists its layers in {@code own.layer}, and in {@code
 * own.stale} the bundles of each that it has newer rows of, or none any more. Every bundle that
 * counts is in one place only. A model without layers has all rows itself.
 */
public final class Layers {
  private static final String LISTED =
      "select 1 from duckdb_tables() where database_name = current_database()"
          + " and schema_name = 'own' and table_name = 'layer'";

  private static final String TABLES =
      "select unnest(string_split(tables, ',')), number from own.layer order by 1, 2";

  private Layers() {}

  /** Name by which the database of a layer is attached. */
  public static String database(int number) {
    return "layer_" + number;
  }

  /** Attaches one layer, for reading only. */
  public static void attach(Statement statement, int number, Path file) throws SQLException {
    Attached.readOnly(statement, file, database(number));
  }

  /**
   * Makes the tables of an opened model show the rows of all its layers.
   *
   * @param folder the folder that the files of layers are named in
   */
  public static void show(Connection model, Path folder) throws SQLException {
    try (Statement statement = model.createStatement()) {
      Map<Integer, String> files = files(statement);
      if (files.isEmpty()) {
        return;
      }
      for (Map.Entry<Integer, String> layer : files.entrySet()) {
        attach(statement, layer.getKey(), folder.resolve(layer.getValue()));
      }
      String own = '"' + OneValue.text(statement, "select current_database()") + '"';
      String stale = own + ".own.stale";
      Set<Integer> partlyStale = partlyStale(statement, stale);
      for (Map.Entry<String, List<Integer>> table : tables(statement).entrySet()) {
        statement.execute(
            "create temp view \"%s\" as from %s.main.\"%s\" union all %s"
                .formatted(
                    table.getKey(),
                    own,
                    table.getKey(),
                    rows(stale, partlyStale, table.getKey(), table.getValue())));
      }
    }
  }

  /** The files of a model's layers by their numbers; none in a model of an older version. */
  private static Map<Integer, String> files(Statement statement) throws SQLException {
    Map<Integer, String> files = new LinkedHashMap<>();
    try (ResultSet listed = statement.executeQuery(LISTED)) {
      if (!listed.next()) {
        return files;
      }
    }
    try (ResultSet row =
        statement.executeQuery("select number, file from own.layer order by number")) {
      while (row.next()) {
        files.put(row.getInt(1), row.getString(2));
      }
    }
    return files;
  }

  /** The tables of which layers have rows, each with the numbers of these. */
  public static Map<String, List<Integer>> tables(Statement statement) throws SQLException {
    Map<String, List<Integer>> tables = new LinkedHashMap<>();
    try (ResultSet row = statement.executeQuery(TABLES)) {
      while (row.next()) {
        tables.computeIfAbsent(row.getString(1), t -> new ArrayList<>()).add(row.getInt(2));
      }
    }
    return tables;
  }

  /** The layers of which something does not count any more, by a table that lists what is stale. */
  public static Set<Integer> partlyStale(Statement statement, String stale) throws SQLException {
    Set<Integer> layers = new HashSet<>();
    try (ResultSet row = statement.executeQuery("select distinct layer from " + stale)) {
      while (row.next()) {
        layers.add(row.getInt(1));
      }
    }
    return layers;
  }

  /**
   * The rows of a table that count, from some layers.
   *
   * @param stale table that lists what is stale
   * @param partlyStale the layers that stand in it; the others need not look at the key of each row
   * @param layers numbers of the layers; each has the table
   */
  public static String rows(
      String stale, Set<Integer> partlyStale, String table, Collection<Integer> layers) {
    List<String> parts = new ArrayList<>();
    for (int layer : layers) {
      String all = "from %s.main.\"%s\"".formatted(database(layer), table);
      parts.add(
          partlyStale.contains(layer)
              ? "%s where %s not in (%s)"
                  .formatted(all, TableDefinition.BUNDLE_KEY, staleOf(stale, layer))
              : all);
    }
    return String.join(" union all ", parts);
  }

  /** The keys of a layer that do not count any more, from a table that lists what is stale. */
  public static String staleOf(String stale, int layer) {
    return "select key from %s where layer = %d".formatted(stale, layer);
  }
}
