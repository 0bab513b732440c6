package sealspan.answers.writer;

import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import org.duckdb.DuckDBConnection;
import sealspan.answers.tables.Layers;

/**
 * Makes one layer of several in a thread of its own, for a large one takes a while. Layers do not
 * change, and what became stale meanwhile is stale in the new one too.
 */
final class LayerUnion implements AutoCloseable {
  private final List<LayerFile> layers;
  private final LayerFile made;
  private final DuckDBConnection connection;
  private final Statement statement;
  private final Map<String, String> rows = new LinkedHashMap<>();
  private final CompletableFuture<Long> bundles = new CompletableFuture<>();

  /**
   * Begins.
   *
   * @param connection one that has the layers attached; it is not used itself
   * @param stale table that lists what is stale
   * @param layers the layers
   * @param made what they become
   */
  LayerUnion(DuckDBConnection connection, String stale, List<LayerFile> layers, LayerFile made)
      throws SQLException {
    this.layers = layers;
    this.made = made;
    this.connection = connection.duplicate().unwrap(DuckDBConnection.class);
    this.statement = this.connection.createStatement();
    statement.execute("use " + PrivateStore.DATABASE);
    statement.execute("create temp table was_stale as from " + stale);
    Set<Integer> partlyStale = Layers.partlyStale(statement, "was_stale");
    List<Integer> numbers = layers.stream().map(LayerFile::number).toList();
    for (Map.Entry<String, List<Integer>> table : Layers.tables(statement).entrySet()) {
      List<Integer> having = table.getValue().stream().filter(numbers::contains).toList();
      if (!having.isEmpty()) {
        rows.put(table.getKey(), Layers.rows("was_stale", partlyStale, table.getKey(), having));
      }
    }
    Thread thread = new Thread(this::run, "layers");
    thread.setDaemon(true);
    thread.start();
  }

  private void run() {
    try {
      bundles.complete(made.write(statement, rows, bundles("was_stale", layers)));
    } catch (SQLException | RuntimeException | Error e) {
      bundles.completeExceptionally(e);
    }
  }

  /**
   * The query for the bundles of some layers that count: key and revision.
   *
   * @param stale table that lists what is stale
   */
  static String bundles(String stale, List<LayerFile> layers) {
    return layers.stream()
        .map(
            layer ->
                "select key, revision from %s.own.bundle where %s and key not in (%s)"
                    .formatted(
                        layer.database(), Upsert.MAY_MOVE, Layers.staleOf(stale, layer.number())))
        .collect(Collectors.joining(" union all "));
  }

  List<LayerFile> layers() {
    return layers;
  }

  LayerFile made() {
    return made;
  }

  /** Names of the tables of the new layer. */
  List<String> tables() {
    return List.copyOf(rows.keySet());
  }

  boolean isDone() {
    return bundles.isDone();
  }

  /** Number of bundles of the new layer; waits for it. */
  long bundles() throws SQLException {
    try {
      return bundles.get();
    } catch (ExecutionException e) {
      throw new SQLException("Layers cannot be made one: " + e.getCause().getMessage(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new SQLException("Interrupted while layers were made one", e);
    }
  }

  /** Ends it, done or not. */
  @Override
  public void close() throws SQLException {
    while (!isDone()) {
      statement.cancel(); // Ends the query that is under way; there may be others after it.
      LockSupport.parkNanos(10_000_000);
    }
    connection.close();
  }
}
