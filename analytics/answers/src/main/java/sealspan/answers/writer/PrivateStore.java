package sealspan.answers.writer;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import org.apache.kafka.common.TopicPartition;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import sealspan.answers.AnswersFolder;
import sealspan.answers.PublishedQuestions;
import sealspan.answers.tables.Attached;
import sealspan.answers.tables.EventTables;
import sealspan.answers.tables.OneValue;
import sealspan.answers.tables.Publication;
import sealspan.answers.tables.RowLoader;
import sealspan.answers.tables.TableDefinition;
import sealspan.answers.tables.Tables;
import sealspan.table.Bundle;

/**
 * The writer's own DuckDB file: the tables, what is needed to keep them right, and the place in
 * every topic, all changed in one transaction. A killed writer goes on from the last checkpoint.
 */
final class PrivateStore implements AutoCloseable {
  /** Name of the database on every connection to the file. */
  static final String DATABASE = "private";

  /** What is taken in between two checkpoints at most, or a little more. */
  private static final long CHECKPOINT_BYTES = 256L << 20;

  private final Path file;
  private final DuckDBConnection connection;
  private final Path segmentFolder;
  private final int segmentEvents;
  private LayerStore layers;
  private long bundlesSinceSettled;
  private long bytesSinceCheckpoint;

  private PrivateStore(
      Path file, DuckDBConnection connection, Path segmentFolder, int segmentEvents) {
    this.file = file;
    this.connection = connection;
    this.segmentFolder = segmentFolder;
    this.segmentEvents = segmentEvents;
  }

  /**
   * Opens the file of a generation, and makes it where it is missing.
   *
   * @param stillNamed files of layers that the newest snapshot names
   */
  static PrivateStore open(AnswersFolder folder, String generation, Set<String> stillNamed)
      throws SQLException {
    return open(folder, generation, stillNamed, EventStore.SEGMENT_EVENTS, LayerStore.BUNDLES);
  }

  /**
   * The same with sizes of its own.
   *
   * @param segmentEvents number of events that make a segment
   * @param bundlesOfLayer number of bundles that make a layer
   */
  static PrivateStore open(
      AnswersFolder folder,
      String generation,
      Set<String> stillNamed,
      int segmentEvents,
      int bundlesOfLayer)
      throws SQLException {
    Path file = folder.privateFile(generation);
    Properties settings = new Properties();
    settings.setProperty("memory_limit", "1GB");
    settings.setProperty("threads", "2");
    settings.setProperty("temp_directory", file + ".tmp");
    // DuckDB's own checkpoints, after 16 MB, took as long as everything else together.
    settings.setProperty("checkpoint_threshold", "1TB");
    DuckDBConnection connection =
        DriverManager.getConnection("jdbc:duckdb:", settings).unwrap(DuckDBConnection.class);
    PrivateStore store =
        new PrivateStore(file, connection, folder.segments(generation), segmentEvents);
    try {
      try (Statement statement = connection.createStatement()) {
        Attached.untilCheckpoint(statement, file, DATABASE);
        statement.execute("use " + DATABASE);
      }
      store.prepare();
      connection.setAutoCommit(true);
      store.layers =
          new LayerStore(connection, folder.layers(generation), bundlesOfLayer, stillNamed);
      connection.setAutoCommit(false);
      return store;
    } catch (SQLException | RuntimeException e) {
      store.close();
      throw e;
    }
  }

  private void prepare() throws SQLException {
    connection.setAutoCommit(false);
    boolean made = count("select count(*) from duckdb_tables() where schema_name = 'own'") > 0;
    if (!made) {
      create(connection);
    }
    if (count("select count(*) from duckdb_tables() where table_name = 'standing_question'") == 0) {
      PublishedQuestions.addTo(connection);
    }
    execute("create temp table batch (key VARCHAR, revision BIGINT)");
    connection.commit();
  }

  /**
   * Makes all tables of a private file, empty, but for those that opening it and {@link #settle}
   * make.
   */
  static void create(Connection connection) throws SQLException {
    Tables.create(connection);
    EventTables.create(connection);
    try (Statement statement = connection.createStatement()) {
      statement.execute("create table own.bundle (key VARCHAR, revision BIGINT)");
      statement.execute(
          "create table own.place (topic VARCHAR, \"partition\" INTEGER, next_offset BIGINT)");
    }
  }

  Path file() {
    return file;
  }

  /** The next offset to read of every partition that was read before. */
  Map<TopicPartition, Long> places() throws SQLException {
    Map<TopicPartition, Long> places = new HashMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("select topic, \"partition\", next_offset from own.place")) {
      while (rows.next()) {
        places.put(new TopicPartition(rows.getString(1), rows.getInt(2)), rows.getLong(3));
      }
    }
    return places;
  }

  /** Takes a batch in, wholly or not at all. */
  void apply(Batch batch) throws SQLException {
    Map<String, Upsert> upserts = new LinkedHashMap<>(batch.upserts());
    wholly(
        () -> {
          dropKnown(upserts);
          try (RowLoader loader = new RowLoader(connection)) {
            for (Upsert upsert : upserts.values()) {
              if (upsert.content() instanceof Bundle bundle) {
                loader.add(bundle);
              } else {
                loader.add(upsert.key(), (Record) upsert.content());
              }
            }
          }
          EventStore.append(connection, batch.events());
          savePlaces(batch.positions());
        });
    bundlesSinceSettled += upserts.size();
    bytesSinceCheckpoint += batch.bytes();
    if (bytesSinceCheckpoint > CHECKPOINT_BYTES) {
      connection.setAutoCommit(true);
      checkpoint();
      connection.setAutoCommit(false);
    }
  }

  private void checkpoint() throws SQLException {
    execute("checkpoint");
    bytesSinceCheckpoint = 0;
  }

  /** Whether so much came in since it was last settled that the record is being caught up with. */
  boolean takesMuch() {
    return layers.isMuch(bundlesSinceSettled);
  }

  /** Whether a further snapshot would be quicker to read, although nothing came in. */
  boolean isUnsettled() {
    return layers.isUnsettled();
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
    upserts.forEach(u -> classes.add(u.content().getClass()));
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

  private void savePlaces(Map<TopicPartition, Long> positions) throws SQLException {
    try (PreparedStatement delete =
            connection.prepareStatement(
                "delete from own.place where topic = ? and \"partition\" = ?");
        PreparedStatement insert =
            connection.prepareStatement("insert into own.place values (?, ?, ?)")) {
      for (Map.Entry<TopicPartition, Long> position : positions.entrySet()) {
        delete.setString(1, position.getKey().topic());
        delete.setInt(2, position.getKey().partition());
        delete.execute();
        insert.setString(1, position.getKey().topic());
        insert.setInt(2, position.getKey().partition());
        insert.setLong(3, position.getValue());
        insert.execute();
      }
    }
  }

  /**
   * Writes the cut that the tables now stand for, what a snapshot holds beside them, and everything
   * to the file itself.
   *
   * @return files of layers that the next snapshots do not name any more
   */
  List<Path> settle(Map<Integer, Long> cut, Publication publication) throws SQLException {
    wholly(
        () -> {
          takeCut(cut);
          publication.addTo(connection);
        });
    return write();
  }

  /**
   * The same for a file that is not to be published yet, without what a snapshot holds beside the
   * tables.
   *
   * @return files of layers that are not needed any more
   */
  List<Path> gather(Map<Integer, Long> cut) throws SQLException {
    wholly(() -> takeCut(cut));
    return write();
  }

  private void takeCut(Map<Integer, Long> cut) throws SQLException {
    execute("delete from cut");
    try (DuckDBAppender out = connection.createAppender("main", "cut")) {
      for (Integer partition : new TreeSet<>(cut.keySet())) {
        out.beginRow();
        out.append(partition.intValue());
        out.append(cut.get(partition).longValue());
        out.appendNull();
        out.endRow();
      }
    }
    execute(EventStore.NEWEST_OF_CUT);
    connection.commit();
    EventStore.cutSegment(connection, segmentFolder, segmentEvents);
  }

  /**
   * Writes everything to the file itself. How best to compress is looked for where much came in,
   * which becomes a layer; of the little that changes every second it would take half of all
   * publishing. A union of layers that is under way may get some of its rows uncompressed too.
   */
  private List<Path> write() throws SQLException {
    connection.setAutoCommit(true);
    boolean much = takesMuch();
    List<Path> retired = layers.settle(much);
    bundlesSinceSettled = 0;
    if (!much) {
      execute("set force_compression = 'uncompressed'");
    }
    try {
      checkpoint();
    } finally {
      execute("set force_compression = 'auto'");
    }
    connection.setAutoCommit(false);
    return retired;
  }

  /**
   * Lets go of what a copy holds that was just made of the file, where it is much.
   *
   * @return whether the file should be closed and written anew ({@link LoosePages})
   */
  boolean promote(Path copy) throws IOException, SQLException {
    connection.setAutoCommit(true);
    boolean loose = false;
    if (layers.promote(copy)) {
      checkpoint();
      loose = LoosePages.areMany(connection);
    }
    connection.setAutoCommit(false);
    return loose;
  }

  /** What changes the tables. */
  private interface Change {
    void make() throws SQLException;
  }

  /** Makes a change and commits it, or takes back what was not committed. */
  private void wholly(Change change) throws SQLException {
    try {
      change.make();
      connection.commit();
    } catch (SQLException e) {
      rollBack(e);
      throw e;
    }
  }

  private void rollBack(SQLException cause) {
    try {
      connection.rollback();
    } catch (SQLException e) {
      cause.addSuppressed(e);
    }
  }

  private void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private long count(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      return OneValue.number(statement, sql);
    }
  }

  @Override
  public void close() throws SQLException {
    try (DuckDBConnection closing = connection) {
      if (layers != null) {
        layers.close();
      }
    }
  }
}
