package sealspan.answers.writer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.Layers;
import sealspan.answers.tables.TableDefinition;
import sealspan.answers.tables.Tables;
import sealspan.table.Bundle;

/**
 * The layers of the private file ({@link Layers}). Once the file holds many bundles, they move to a
 * new layer; layers of like size become one, so that there are few, and a row is written again only
 * as often as the record doubles or so. A file that a killed writer left unlisted is removed.
 */
final class LayerStore {
  /** Usual number of bundles that make a layer. */
  static final int BUNDLES = 1_000;

  /** Two layers become one where the larger has at most so many times the bundles of the other. */
  private static final long ALIKE = 3;

  private static final String WRITING = "writing";

  private final DuckDBConnection connection;
  private final Path folder;
  private final int bundlesOfLayer;
  private final String own;

  /** Bundles of each layer that count, by its number. */
  private final TreeMap<Integer, Long> live = new TreeMap<>();

  private int last;

  /**
   * The layers that an opened private file lists.
   *
   * @param folder where their files lie, a folder beside snapshots
   * @param stillNamed files that the newest snapshot names
   */
  LayerStore(DuckDBConnection connection, Path folder, int bundlesOfLayer, Set<String> stillNamed)
      throws SQLException {
    this.connection = connection;
    this.folder = folder;
    this.bundlesOfLayer = bundlesOfLayer;
    try (Statement statement = connection.createStatement()) {
      own = text(statement, "select current_database()");
      Set<String> named = new HashSet<>(stillNamed);
      try (ResultSet row =
          statement.executeQuery(
              "select number, file, bundles - (select count(*) from own.stale where layer = number)"
                  + " from own.layer")) {
        while (row.next()) {
          live.put(row.getInt(1), row.getLong(3));
          named.add(row.getString(2));
        }
      }
      for (int number : live.keySet()) {
        Layers.attach(statement, number, file(number));
        last = number;
      }
      removeUnnamed(named);
    }
  }

  private void removeUnnamed(Set<String> named) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        if (!named.contains(nameOf(file))) {
          Files.delete(file);
        }
        // A killed writer's number is not used again while a snapshot may still name its file.
        String digits = file.getFileName().toString().replaceAll("\\D", "");
        last = Math.max(last, digits.isEmpty() ? 0 : Integer.parseInt(digits));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Path file(int number) {
    return folder.resolve("layer-%06d.duckdb".formatted(number));
  }

  /** A file's name as the model lists it. */
  private static String nameOf(Path file) {
    return file.getParent().getFileName() + "/" + file.getFileName();
  }

  /** The known bundles among those of the table {@code batch}: key, revision and layer. */
  String known() {
    StringBuilder sql =
        new StringBuilder("select key, revision, 0 from own.bundle semi join batch using (key)");
    for (int number : live.keySet()) {
      String database = Layers.database(number);
      sql.append(
          " union all select key, revision, %d from %s.own.bundle semi join batch using (key)"
              .formatted(number, database));
      sql.append(" where key not in (%s)".formatted(Layers.stale(own, database)));
    }
    return sql.toString();
  }

  /**
   * Notes within a transaction that bundles of layers do not count any more.
   *
   * @param layers the layer of each by its key
   */
  void replace(Map<String, Integer> layers) throws SQLException {
    if (layers.isEmpty()) {
      return;
    }
    try (DuckDBAppender out = connection.createAppender("own", "stale")) {
      for (Map.Entry<String, Integer> bundle : layers.entrySet()) {
        out.beginRow();
        out.append(bundle.getValue().intValue());
        out.append(bundle.getKey());
        out.endRow();
        live.merge(bundle.getValue(), -1L, Long::sum);
      }
    }
  }

  /**
   * Moves the bundles of the private file to a new layer where there are as many as make one, and
   * makes one layer of those of like size. To be called between transactions.
   *
   * @return files that the next snapshots do not name any more
   */
  List<Path> settle() throws SQLException {
    List<Path> retired = new ArrayList<>();
    try (Statement statement = connection.createStatement()) {
      if (number(statement, "select count(*) from own.bundle where " + Upsert.MAY_MOVE)
          >= bundlesOfLayer) {
        move(statement);
        List<Integer> alike = alike();
        if (!alike.isEmpty()) {
          unite(statement, alike);
          alike.forEach(layer -> retired.add(file(layer)));
        }
      }
    }
    return retired;
  }

  private void move(Statement statement) throws SQLException {
    int number = last + 1;
    long bundles =
        write(
            statement,
            number,
            filled(statement),
            "from \"%s\".own.bundle where %s".formatted(own, Upsert.MAY_MOVE));
    connection.setAutoCommit(false);
    for (String table : tables()) {
      statement.execute("delete from \"" + table + "\"");
    }
    statement.execute("delete from own.bundle where " + Upsert.MAY_MOVE);
    list(statement, number, bundles);
  }

  /** Smallest layers first, those of like size, and all without a bundle that counts. */
  private List<Integer> alike() {
    List<Integer> empty = live.keySet().stream().filter(n -> live.get(n) == 0).toList();
    List<Integer> bySize = new ArrayList<>(live.keySet());
    bySize.removeAll(empty);
    bySize.sort(Comparator.comparing(live::get));
    List<Integer> alike = new ArrayList<>();
    long bundles = 0;
    for (int layer : bySize) {
      if (live.get(layer) <= ALIKE * bundles) {
        alike.add(layer);
        bundles += live.get(layer);
      } else if (alike.size() <= 1) {
        alike = new ArrayList<>(List.of(layer));
        bundles = live.get(layer);
      }
    }
    if (alike.size() <= 1) {
      return empty;
    }
    alike.addAll(empty);
    return alike;
  }

  private void unite(Statement statement, List<Integer> layers) throws SQLException {
    List<String> databases = layers.stream().map(Layers::database).toList();
    int number = last + 1;
    long bundles = 0;
    if (layers.stream().anyMatch(layer -> live.get(layer) > 0)) {
      List<String> keys =
          databases.stream()
              .map(
                  d ->
                      "from %s.own.bundle where key not in (%s)".formatted(d, Layers.stale(own, d)))
              .toList();
      bundles =
          write(
              statement, number, liveRows(statement, databases), String.join(" union all ", keys));
    }
    connection.setAutoCommit(false);
    for (int layer : layers) {
      statement.execute("delete from own.layer where number = " + layer);
      statement.execute("delete from own.stale where layer = " + layer);
      live.remove(layer);
    }
    list(statement, number, bundles);
    for (String database : databases) {
      statement.execute("detach " + database);
    }
  }

  /** Ends the transaction that takes a layer in; without bundles there is none. */
  private void list(Statement statement, int number, long bundles) throws SQLException {
    if (bundles > 0) {
      statement.execute(
          "insert into own.layer values (%d, '%s', %d)"
              .formatted(number, nameOf(file(number)), bundles));
    }
    connection.commit();
    connection.setAutoCommit(true);
    if (bundles > 0) {
      Layers.attach(statement, number, file(number));
      live.put(number, bundles);
      last = number;
    }
  }

  /** Writes a layer; it is complete and on disk before its name appears. Gives its bundles. */
  private long write(Statement statement, int number, Map<String, String> rows, String bundles)
      throws SQLException {
    Path part = folder.resolve("part.duckdb");
    try {
      Files.createDirectories(folder);
      Files.deleteIfExists(part);
      statement.execute("attach '%s' as %s".formatted(part.toString().replace("'", "''"), WRITING));
      statement.execute("create schema %s.own".formatted(WRITING));
      statement.execute("create table %s.own.bundle as %s".formatted(WRITING, bundles));
      for (Map.Entry<String, String> table : rows.entrySet()) {
        statement.execute(
            "create table %s.main.\"%s\" as %s"
                .formatted(WRITING, table.getKey(), table.getValue()));
      }
      long count = number(statement, "select count(*) from %s.own.bundle".formatted(WRITING));
      statement.execute("checkpoint " + WRITING);
      statement.execute("detach " + WRITING);
      try (FileChannel written = FileChannel.open(part, StandardOpenOption.WRITE)) {
        written.force(true);
      }
      Files.move(part, file(number), StandardCopyOption.ATOMIC_MOVE);
      return count;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The tables of the private file that have rows to move, each with the query for them. */
  private Map<String, String> filled(Statement statement) throws SQLException {
    Map<String, String> filled = new LinkedHashMap<>();
    for (String table : tables()) {
      String rows = "from \"%s\".main.\"%s\"".formatted(own, table);
      if (number(statement, "select count(*) " + rows) > 0) {
        filled.put(table, rows);
      }
    }
    return filled;
  }

  /** The tables of some layers, each with the query for the rows that count. */
  private Map<String, String> liveRows(Statement statement, List<String> databases)
      throws SQLException {
    Map<String, String> rows = new LinkedHashMap<>();
    for (Map.Entry<String, List<String>> table : Layers.tables(statement).entrySet()) {
      List<String> having = table.getValue().stream().filter(databases::contains).toList();
      if (!having.isEmpty()) {
        rows.put(table.getKey(), Layers.rows(own, table.getKey(), having));
      }
    }
    return rows;
  }

  private static List<String> tables() {
    return Tables.holding(List.of(Bundle.class.getPermittedSubclasses())).stream()
        .map(TableDefinition::name)
        .toList();
  }

  private static long number(Statement statement, String sql) throws SQLException {
    try (ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }

  private static String text(Statement statement, String sql) throws SQLException {
    try (ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }
}
