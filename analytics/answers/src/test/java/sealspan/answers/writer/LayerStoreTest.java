package sealspan.answers.writer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.AnswersFolder;
import sealspan.answers.HandMade;
import sealspan.answers.OpenSnapshot;

/** Layers against one plain map of what was applied last. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class LayerStoreTest {
  private static final int BUNDLES_OF_LAYER = 5;
  private static final String LAYERS = "select count(*) from own.layer";

  @TempDir Path data;

  private AnswersFolder folder;
  private SnapshotPublisher publisher;
  private final Map<String, Integer> tests = new TreeMap<>();
  private long revision;

  @BeforeEach
  void makeFolder() throws IOException {
    folder = new AnswersFolder(data);
    Files.createDirectories(folder.folder());
    publisher = new SnapshotPublisher(folder);
  }

  @Test
  void showEachBundleOnceAndAsItWasAppliedLast() throws Exception {
    Random random = new Random(7);
    long most = 0;
    for (int run = 0; run < 2; run++) {
      if (run > 0) {
        LoosePages.leaveOut(folder.privateFile("g1"));
      }
      try (PrivateStore store = open(publisher.layersOfNewest())) {
        for (int round = 0; round < 8; round++) {
          store.apply(batch(random, 1 + random.nextInt(12)));
          Path snapshot = publish(store);
          assertEquals(tests, counted(snapshot, "test"));
          assertEquals(tests, counted(snapshot, "main.test"));
          most = Math.max(most, number(snapshot, LAYERS));
        }
        // Layers become one beside the writer.
        while (number(publish(store), LAYERS) > 4) {
          Thread.sleep(10);
        }
      }
    }
    assertTrue(most > 1, "most layers: " + most);
    // Three snapshots stay, and with them what they name.
    long files;
    try (Stream<Path> all = Files.list(folder.layers("g1"))) {
      files = all.count();
    }
    assertTrue(files <= 4 * most, "files of layers: " + files);
  }

  /** As after a fit, when every assembly is scored anew. */
  @Test
  void layersOfWhichLittleCountsAreWrittenAnewOrLetGo() throws Exception {
    try (PrivateStore store = open(Set.of())) {
      Path snapshot = null;
      for (int round = 0; round < 6; round++) {
        for (int part = 0; part < 2; part++) {
          Batch batch = new Batch();
          for (int i = 30 * part; i < 30 * part + 30; i++) {
            batch.add(Fleets.packed(Fleets.assembly("B" + i, ++revision, 1 + round % 3)));
            tests.put("B" + i, 1 + round % 3);
          }
          store.apply(batch);
          snapshot = publish(store);
          assertEquals(tests, counted(snapshot, "test"));
        }
      }
      while (number(snapshot, "select sum(bundles) from own.layer") > 4 * 60) {
        Thread.sleep(10);
        snapshot = publish(store);
      }
      assertEquals(tests, counted(snapshot, "test"));
    }
  }

  @Test
  void layersOfAFloodAreUnitedWhenItIsOver() throws Exception {
    try (PrivateStore store = open(Set.of())) {
      Path snapshot = null;
      for (int round = 0; round < 3; round++) {
        Batch batch = new Batch();
        for (int i = 0; i < 2 * BUNDLES_OF_LAYER; i++) {
          String id = "B" + round + "-" + i;
          batch.add(Fleets.packed(Fleets.assembly(id, ++revision, 1)));
          tests.put(id, 1);
        }
        store.apply(batch);
        assertTrue(store.takesMuch());
        snapshot = publish(store);
        assertFalse(store.takesMuch());
      }
      // The third is the snapshot itself.
      assertEquals(2, number(snapshot, LAYERS));
      assertTrue(store.isUnsettled());
      while (number(publish(store), LAYERS) > 1) {
        Thread.sleep(10);
      }
      assertFalse(store.isUnsettled());
      assertEquals(tests, counted(publish(store), "test"));
    }
  }

  /** A snapshot that becomes a layer has them too, but they stay where they are. */
  @Test
  void whatIsRejectedOrDecidedStandsOnceHoweverOftenItComes() throws Exception {
    try (PrivateStore store = open(Set.of())) {
      Path snapshot = null;
      for (int round = 0; round < 3; round++) {
        Batch batch = batch(new Random(round), 40);
        HandMade.quarantined().forEach(row -> batch.add(Upsert.of(row)));
        HandMade.ledger().forEach(entry -> batch.add(Upsert.of(entry)));
        store.apply(batch);
        snapshot = publish(store);
      }
      assertEquals(
          HandMade.quarantined().size(), number(snapshot, "select count(*) from quarantined"));
      assertEquals(HandMade.ledger().size(), number(snapshot, "select count(*) from ledger"));
      assertEquals(tests, counted(snapshot, "test"));
    }
  }

  @Test
  void anOlderRevisionDoesNotReplaceWhatLiesInALayer() throws Exception {
    try (PrivateStore store = open(Set.of())) {
      revision = 9;
      store.apply(batch(new Random(1), 40));
      publish(store);
      Batch older = new Batch();
      String key = tests.keySet().iterator().next();
      older.add(Fleets.packed(Fleets.assembly(key, 2, 30)));
      store.apply(older);
      Path snapshot = publish(store);
      assertEquals(1, number(snapshot, LAYERS));
      assertEquals(tests, counted(snapshot, "test"));
    }
  }

  @Test
  void whatAKilledWriterLeftIsRemovedAndALostLayerIsSaid() throws Exception {
    Path snapshot;
    try (PrivateStore store = open(Set.of())) {
      store.apply(batch(new Random(2), 40));
      publish(store);
      snapshot = publish(store);
    }
    Path part = Files.createFile(folder.layers("g1").resolve("part.duckdb"));
    Path unlisted = Files.createFile(folder.layers("g1").resolve("layer-000009.duckdb"));
    try (PrivateStore store = open(publisher.layersOfNewest())) {
      assertFalse(Files.exists(part) || Files.exists(unlisted));
      store.apply(batch(new Random(3), 40));
      publish(store);
      assertTrue(Files.exists(folder.layers("g1").resolve("layer-000010.duckdb")));
      assertEquals(tests, counted(publish(store), "test"));
    }
    try (Stream<Path> layers = Files.list(folder.layers("g1"))) {
      for (Path layer : layers.toList()) {
        Files.delete(layer);
      }
    }
    assertThrows(SQLException.class, () -> number(snapshot, "select count(*) from test"));
  }

  private PrivateStore open(Set<String> named) throws SQLException {
    return PrivateStore.open(folder, "g1", named, 1_000, BUNDLES_OF_LAYER);
  }

  /** What the writer does with what was applied. */
  private Path publish(PrivateStore store) throws Exception {
    publisher.retire(store.settle(Map.of(), Published.publication()));
    Path snapshot = publisher.publish(store.file());
    store.promote(snapshot);
    return snapshot;
  }

  private Batch batch(Random random, int bundles) {
    Batch batch = new Batch();
    for (int i = 0; i < bundles; i++) {
      String id = "B" + random.nextInt(60);
      int count = 1 + random.nextInt(4);
      batch.add(Fleets.packed(Fleets.assembly(id, ++revision, count)));
      tests.put(id, count);
    }
    return batch;
  }

  private static Map<String, Integer> counted(Path snapshot, String table) throws SQLException {
    Map<String, Integer> counted = new TreeMap<>();
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("select assembly_id, count(*) from " + table + " group by 1")) {
      while (row.next()) {
        counted.put(row.getString(1), row.getInt(2));
      }
    }
    return counted;
  }

  private static long number(Path snapshot, String sql) throws SQLException {
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }
}
