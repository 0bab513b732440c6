package sealspan.answers.writer;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
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
import sealspan.answers.tables.Tables;

/**
 * The writer's own DuckDB file: the tables, what is needed to keep them right, and the place in
 * every topic, all changed in one transaction. A killed writer goes on from the last checkpoint.
 */
final class PrivateStore implements AutoCloseable {
  /** Name of the database on every connection to the file. */
  static final String DATABASE = "private";

  /**
   * What is taken in between two checkpoints at most, or a little more. Each writes the end of
   * every table anew.
   */
  private static final long CHECKPOINT_BYTES = 512L << 20;

  private final Path file;
  private final DuckDBConnection connection;
  private final Path segmentFolder;
  private final int segmentEvents;
  private final Hand second = new Hand("taking in, second hand");
  private LayerStore layers;
  private RowStore rows;
  private long bundlesSinceSettled;
  private long checkpointBytes = CHECKPOINT_BYTES;
  private long bytesSinceCheckpoint;
  private Map<Integer, Long> expected = Map.of();

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
      store.rows = new RowStore(store.connection, store.layers, store.second);
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
    execute(RowStore.BATCH);
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
      statement.execute(Places.TABLE);
    }
  }

  /** Makes checkpoints after so many bytes from now on; for tests. */
  void checkpointAfter(long bytes) {
    checkpointBytes = bytes;
  }

  Path file() {
    return file;
  }

  /** The next offset to read of every partition that was read before. */
  Map<TopicPartition, Long> places() throws SQLException {
    return Places.all(connection);
  }

  /**
   * Tells how far the histories have come. The next snapshot shows at least this cut, and events
   * before it may move to a segment.
   */
  void expect(Map<Integer, Long> cut) {
    expected = cut;
  }

  /**
   * Takes a batch in. It is committed with the next checkpoint, or when the file is settled or
   * gathered: nothing outlives the process before, and DuckDB writes what is much and committed at
   * once more quickly. Once a batch has failed, the file must be opened anew, and is then as it was
   * when it was last committed.
   */
  void apply(Batch batch) throws SQLException {
    // First, for a statement begins a transaction; an appender alone would commit by itself.
    Places.save(connection, batch.positions());
    bundlesSinceSettled += rows.put(batch.upserts());
    EventStore.append(connection, batch.events(), second);
    bytesSinceCheckpoint += batch.bytes();
    if (bytesSinceCheckpoint > checkpointBytes) {
      takeCut(expected);
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

  /**
   * Writes the cut that the tables now stand for, what a snapshot holds beside them, and everything
   * to the file itself.
   *
   * @return files of layers that the next snapshots do not name any more
   */
  List<Path> settle(Map<Integer, Long> cut, Publication publication) throws SQLException {
    takeCut(cut);
    publication.addTo(connection);
    connection.commit();
    return write();
  }

  /**
   * The same for a file that is not to be published yet, without what a snapshot holds beside the
   * tables.
   *
   * @return files of layers that are not needed any more
   */
  List<Path> gather(Map<Integer, Long> cut) throws SQLException {
    takeCut(cut);
    return write();
  }

  /** Commits with a cut; where that makes many events final, they move to a segment. */
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
    try (DuckDBConnection closing = connection;
        Hand first = second) {
      if (layers != null) {
        layers.close();
      }
    }
  }
}
