package sealspan.answers.writer;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.Layers;
import sealspan.answers.tables.OneValue;
import sealspan.answers.tables.TableDefinition;
import sealspan.answers.tables.Tables;
import sealspan.table.Bundle;

/**
 * The layers of the private file ({@link Layers}). Once the file holds many bundles, they move to a
 * new layer; layers of like size become one, so that there are few, and a row is written again only
 * as often as the record doubles or so. A file that a killed writer left unlisted is removed.
 */
final class LayerStore implements AutoCloseable {
  /** Usual number of bundles that make a layer. */
  static final int BUNDLES = 1_000;

  /** Two layers become one where the larger has at most so many times the bundles of the other. */
  private static final long ALIKE = 3;

  /**
   * So many become one at once while much comes in: the more at once, the less often is a row
   * written again, and the more layers must be looked through meanwhile.
   */
  private static final int AT_ONCE_OF_MUCH = 4;

  /**
   * The same while little comes in: each layer costs every question some hundredths of a second.
   */
  private static final int FEWEST_AT_ONCE = 2;

  private final DuckDBConnection connection;
  private final Path folder;
  private final int bundlesOfLayer;
  private final String own;
  private final String stale;

  /** A layer of which no more than this part counts is written anew. */
  private static final long MOSTLY_STALE = 4;

  /** Bundles of each layer, by its number. */
  private final TreeMap<Integer, Long> all = new TreeMap<>();

  /** Those of them that count. */
  private final TreeMap<Integer, Long> live = new TreeMap<>();

  private int last;
  private LayerUnion union;

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
      own = '"' + OneValue.text(statement, "select current_database()") + '"';
      stale = own + ".own.stale";
      Set<String> named = new HashSet<>(stillNamed);
      try (ResultSet row =
          statement.executeQuery(
              "select number, file, bundles,"
                  + " bundles - (select count(*) from own.stale where layer = number)"
                  + " from own.layer")) {
        while (row.next()) {
          named.add(row.getString(2));
          all.put(row.getInt(1), row.getLong(3));
          live.put(row.getInt(1), row.getLong(4));
        }
      }
      for (int number : live.keySet()) {
        Layers.attach(statement, number, file(number).path());
        last = Math.max(last, number);
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
        if (!named.contains(folder.getFileName() + "/" + file.getFileName())) {
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

  private LayerFile file(int number) {
    return new LayerFile(folder, number);
  }

  /**
   * Whether {@link #settle} has something to do although nothing came in, were it to say why layers
   * could not be united.
   */
  boolean isUnsettled() {
    return union != null
        ? union.isDone()
        : live.containsValue(0L) || !alike(FEWEST_AT_ONCE).isEmpty();
  }

  /** Whether so many new bundles are much. */
  boolean isMuch(long bundles) {
    return bundles >= 2L * bundlesOfLayer;
  }

  /** The known bundles among those of the table {@code batch}: key, revision and layer. */
  String known() {
    StringBuilder sql =
        new StringBuilder("select key, revision, 0 from own.bundle semi join batch using (key)");
    for (int number : live.keySet()) {
      sql.append(
          " union all select key, revision, %d from %s.own.bundle semi join batch using (key)"
              .formatted(number, Layers.database(number)));
      sql.append(
          " where %s and key not in (%s)"
              .formatted(Upsert.MAY_MOVE, Layers.staleOf(stale, number)));
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
   * Takes in the layer that was made of several, and begins to make one of those of like size. To
   * be called between transactions.
   *
   * @param much whether much comes in
   * @return files that the next snapshots do not name any more
   */
  List<Path> settle(boolean much) throws SQLException {
    List<Path> retired = new ArrayList<>();
    if (union != null && union.isDone()) {
      retired.addAll(takeIn());
    }
    if (union == null) {
      retired.addAll(dropEmpty());
    }
    List<Integer> alike =
        union == null ? alike(much ? AT_ONCE_OF_MUCH : FEWEST_AT_ONCE) : List.of();
    if (!alike.isEmpty()) {
      last++;
      union =
          new LayerUnion(connection, stale, alike.stream().map(this::file).toList(), file(last));
    }
    return retired;
  }

  /**
   * Where the private file holds as many bundles as make a layer, the snapshot that was just made
   * of it becomes that layer, and the private file lets them go. To be called between transactions.
   *
   * @return whether it did
   */
  boolean promote(Path snapshot) throws IOException, SQLException {
    try (Statement statement = connection.createStatement()) {
      long bundles =
          OneValue.number(statement, "select count(*) from own.bundle where " + Upsert.MAY_MOVE);
      if (bundles < bundlesOfLayer) {
        return false;
      }
      last++;
      LayerFile layer = file(last);
      layer.of(snapshot);
      List<String> filled = new ArrayList<>();
      connection.setAutoCommit(false);
      for (TableDefinition table : Tables.holding(List.of(Bundle.class.getPermittedSubclasses()))) {
        if (statement.executeUpdate("delete from \"" + table.name() + "\"") > 0) {
          filled.add(table.name());
        }
      }
      statement.execute("delete from own.bundle where " + Upsert.MAY_MOVE);
      list(statement, layer, filled, bundles, bundles);
      Layers.attach(statement, layer.number(), layer.path());
      return true;
    }
  }

  /**
   * Layers that should become one: the smallest of like size where they are enough, and all that
   * are mostly stale.
   */
  private List<Integer> alike(int enough) {
    List<Integer> loose =
        all.keySet().stream().filter(n -> MOSTLY_STALE * live.get(n) <= all.get(n)).toList();
    List<Integer> bySize = new ArrayList<>(live.keySet());
    bySize.removeAll(loose);
    bySize.sort(Comparator.comparing(live::get));
    List<Integer> alike = new ArrayList<>();
    long bundles = 0;
    for (int layer : bySize) {
      if (live.get(layer) <= ALIKE * bundles) {
        alike.add(layer);
        bundles += live.get(layer);
      } else if (alike.size() < enough) {
        alike = new ArrayList<>(List.of(layer));
        bundles = live.get(layer);
      }
    }
    if (alike.size() < enough) {
      return loose;
    }
    alike.addAll(loose);
    return alike;
  }

  /** Lets go of layers of which nothing counts. */
  private List<Path> dropEmpty() throws SQLException {
    List<Path> retired = new ArrayList<>();
    for (int number : List.copyOf(live.keySet())) {
      if (live.get(number) == 0) {
        try (Statement statement = connection.createStatement()) {
          connection.setAutoCommit(false);
          unlist(statement, file(number));
          connection.commit();
          connection.setAutoCommit(true);
          letGo(statement, file(number));
        }
        retired.add(file(number).path());
      }
    }
    return retired;
  }

  /** Puts the layer that was made in the place of those that it was made of. */
  private List<Path> takeIn() throws SQLException {
    try (LayerUnion done = union;
        Statement statement = connection.createStatement()) {
      union = null;
      LayerFile made = done.made();
      long bundles = done.bundles();
      Layers.attach(statement, made.number(), made.path());
      connection.setAutoCommit(false);
      long stillCount = bundles - noteStaleSince(statement, done);
      List<Path> retired = new ArrayList<>();
      for (LayerFile layer : done.layers()) {
        unlist(statement, layer);
        retired.add(layer.path());
      }
      list(statement, made, done.tables(), bundles, stillCount);
      for (LayerFile layer : done.layers()) {
        letGo(statement, layer);
      }
      return retired;
    }
  }

  /** What became stale in the layers while one was made of them is stale in the new one. */
  private long noteStaleSince(Statement statement, LayerUnion done) throws SQLException {
    return statement.executeUpdate(
        ("insert into own.stale select %d, key from %s.own.bundle"
                + " where key not in (select key from (%s))")
            .formatted(
                done.made().number(),
                done.made().database(),
                LayerUnion.bundles(stale, done.layers())));
  }

  private static void unlist(Statement statement, LayerFile layer) throws SQLException {
    statement.execute("delete from own.stale where layer = " + layer.number());
    statement.execute("delete from own.layer where number = " + layer.number());
  }

  /** Detaches a layer that is not listed any more. */
  private void letGo(Statement statement, LayerFile layer) throws SQLException {
    statement.execute("detach " + layer.database());
    all.remove(layer.number());
    live.remove(layer.number());
  }

  /** Ends the transaction that takes a layer in. */
  private void list(
      Statement statement, LayerFile layer, List<String> tables, long bundles, long stillCount)
      throws SQLException {
    statement.execute(
        "insert into own.layer values (%d, '%s', '%s', %d)"
            .formatted(layer.number(), layer.name(), String.join(",", tables), bundles));
    connection.commit();
    connection.setAutoCommit(true);
    all.put(layer.number(), bundles);
    live.put(layer.number(), stillCount);
  }

  @Override
  public void close() throws SQLException {
    if (union != null) {
      union.close();
    }
  }
}
