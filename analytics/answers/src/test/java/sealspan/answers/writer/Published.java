package sealspan.answers.writer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.kafka.common.TopicPartition;
import sealspan.answers.AnswersFolder;
import sealspan.answers.tables.Publication;
import sealspan.avro.EventCodec;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** Publishes given rows as the writer would, without a log. */
public final class Published {
  private Published() {}

  /** Publishes into a data folder; events are those of partition 0, in order. */
  public static Path in(
      Path dataFolder,
      List<? extends Bundle> bundles,
      List<QuarantinedRow> quarantined,
      List<LedgerEntry> ledger,
      List<LoggedEvent> events)
      throws SQLException, IOException {
    return in(dataFolder, bundles, quarantined, ledger, events, EventStore.SEGMENT_EVENTS);
  }

  /** The same, with the number of events that make a segment. */
  public static Path in(
      Path dataFolder,
      List<? extends Bundle> bundles,
      List<QuarantinedRow> quarantined,
      List<LedgerEntry> ledger,
      List<LoggedEvent> events,
      int segmentEvents)
      throws SQLException, IOException {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    Files.createDirectories(folder.folder());
    layers(folder, bundles.subList(0, (bundles.size() + 1) / 2), segmentEvents);
    Batch batch = new Batch();
    bundles.subList(bundles.size() / 3, bundles.size()).forEach(b -> batch.add(Fleets.packed(b)));
    quarantined.forEach(q -> batch.add(Upsert.of(q)));
    ledger.forEach(l -> batch.add(Upsert.of(l)));
    for (int i = 0; i < events.size(); i++) {
      batch.add(new EventRow(0, i, events.get(i), EventCodec.encode(events.get(i).event())));
      batch.read(new TopicPartition(Topics.EVENTS, 0), i, 0);
    }
    try (PrivateStore store =
        PrivateStore.open(folder, "g1", Set.of(), segmentEvents, LayerStore.BUNDLES)) {
      store.apply(batch);
      store.settle(Map.of(0, (long) events.size()), publication());
      return new SnapshotPublisher(folder).publish(store.file());
    }
  }

  static Publication publication() {
    return new Publication("g1", "test", Instant.now());
  }

  /**
   * Half of the bundles go to layers, and some of them come again, so that all answers show both.
   */
  private static void layers(
      AnswersFolder folder, List<? extends Bundle> bundles, int segmentEvents)
      throws SQLException, IOException {
    try (PrivateStore store = PrivateStore.open(folder, "g1", Set.of(), segmentEvents, 1)) {
      Batch batch = new Batch();
      bundles.forEach(b -> batch.add(Fleets.packed(b)));
      store.apply(batch);
      store.settle(Map.of(), publication());
      store.promote(new SnapshotPublisher(folder).publish(store.file()));
    }
  }
}
