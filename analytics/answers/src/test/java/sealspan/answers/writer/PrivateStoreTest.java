package sealspan.answers.writer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.kafka.common.TopicPartition;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.AnswersFolder;
import sealspan.answers.HandMadeEvents;
import sealspan.avro.EventCodec;
import sealspan.avro.PackedBundle;
import sealspan.avro.SingleObjectCodec.DamagedBytes;
import sealspan.avro.TableCodec;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;

/** What is in the private file after a checkpoint, and after a process that ended without one. */
class PrivateStoreTest {
  private static final TopicPartition EVENTS = new TopicPartition(Topics.EVENTS, 0);
  private static final TopicPartition ROWS = new TopicPartition("rows", 0);
  private static final int SEGMENT_EVENTS = 3;

  @TempDir Path data;
  private AnswersFolder folder;

  @BeforeEach
  void makeFolder() throws Exception {
    folder = new AnswersFolder(data);
    Files.createDirectories(folder.folder());
  }

  @Test
  void whatCameAfterTheLastCheckpointIsReadAgain() throws Exception {
    try (PrivateStore store = open()) {
      store.checkpointAfter(1);
      store.apply(batch(0));
      store.checkpointAfter(Long.MAX_VALUE);
      store.apply(batch(1));
      store.apply(batch(2));
    }
    assertEquals(List.of(1L, 4L), List.of(number("bundle"), number("event")));
    try (PrivateStore store = open()) {
      assertEquals(Map.of(ROWS, 1L, EVENTS, 4L), store.places());
      store.apply(batch(1));
      store.checkpointAfter(1);
      store.apply(batch(2));
    }
    assertEquals(List.of(3L, 12L), List.of(number("bundle"), number("event")));
  }

  @Test
  void eventsBeforeTheExpectedCutMoveToASegmentBeforeTheyAreWritten() throws Exception {
    try (PrivateStore store = open()) {
      store.checkpointAfter(1);
      store.expect(Map.of(0, 6L));
      store.apply(batch(0));
      store.apply(batch(1));
    }
    // The second cut found but two more before it, which make no segment.
    assertEquals(List.of(4L, 4L), List.of(number("event"), sum("events", "segment")));
    try (Stream<Path> segments = Files.list(folder.segments("g1"))) {
      assertEquals(1, segments.count());
    }
  }

  @Test
  void aBatchThatFailsLeavesNothingOfItsOwn() throws Exception {
    try (PrivateStore store = open()) {
      store.checkpointAfter(1);
      store.apply(batch(0));
      Batch bad = batch(1);
      byte[] whole = TableCodec.encode(Fleets.assembly("C1", 1, 2));
      bad.add(Upsert.of(new PackedBundle(Arrays.copyOf(whole, whole.length - 1))));
      DamagedBytes damaged = assertThrows(DamagedBytes.class, () -> store.apply(bad));
      assertEquals("The rows of assembly/C1 are damaged.", damaged.getMessage());
    }
    assertEquals(List.of(1L, 4L), List.of(number("bundle"), number("event")));
  }

  private PrivateStore open() throws Exception {
    return PrivateStore.open(folder, "g1", Set.of(), SEGMENT_EVENTS, 1_000);
  }

  /** A bundle and four events, each after those of the batch before. */
  private static Batch batch(int number) {
    Batch batch = new Batch();
    batch.add(Fleets.packed(Fleets.assembly("B" + number, 1, 2)));
    batch.read(ROWS, number, 100);
    LoggedEvent event = HandMadeEvents.all().get(0);
    for (int i = 4 * number; i < 4 * number + 4; i++) {
      batch.add(new EventRow(0, i, event, EventCodec.encode(event.event())));
      batch.read(EVENTS, i, 100);
    }
    return batch;
  }

  private long number(String table) throws Exception {
    return asked("select count(*) from own." + table);
  }

  private long sum(String column, String table) throws Exception {
    return asked("select sum(" + column + ") from own." + table);
  }

  private long asked(String sql) throws Exception {
    try (Connection connection =
            DriverManager.getConnection("jdbc:duckdb:" + folder.privateFile("g1"));
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }
}
