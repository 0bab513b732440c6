package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.avro.EventCodec;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;

/** What a log kept by Kafka promises, on whatever broker. */
abstract class KafkaLogContract extends LogContract {
  private static final InstantSource CLOCK = InstantSource.system();

  @TempDir Path indexFolder;

  abstract String bootstrapServers();

  KafkaAddress address() {
    return new KafkaAddress(bootstrapServers());
  }

  @Override
  EventLog events(InstantSource clock) {
    return new KafkaEventLog(address(), indexFolder, clock);
  }

  @Override
  Quarantine quarantine(InstantSource clock) {
    return new KafkaQuarantine(address(), indexFolder, clock);
  }

  @Override
  Ledger ledger(InstantSource clock) {
    return new KafkaLedger(address(), indexFolder, clock);
  }

  @AfterEach
  void dropTopics() throws Exception {
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", bootstrapServers()))) {
      Set<String> ours = new TreeSet<>(admin.listTopics().names().get());
      ours.removeIf(name -> !name.startsWith("sealspan."));
      admin.deleteTopics(ours).all().get();
      while (admin.listTopics().names().get().stream().anyMatch(n -> n.startsWith("sealspan."))) {
        Thread.sleep(20);
      }
    }
  }

  @Test
  void writesCloudEventsInBinaryMode() {
    LoggedEvent event = SampleEvents.round(7, "passed");
    try (EventLog log = events(CLOCK)) {
      Recorded<LoggedEvent> recorded = appended(log.append(List.of(event)).get(0));
      ConsumerRecord<byte[], byte[]> raw = raw(recorded.place());

      assertEquals("assembly/A-000007", new String(raw.key(), StandardCharsets.UTF_8));
      assertEquals("1.0", header(raw, "ce_specversion"));
      assertEquals(event.id(), header(raw, "ce_id"));
      assertEquals("sealspan.event.TestPerformed", header(raw, "ce_type"));
      assertEquals("assembly/A-000007", header(raw, "ce_subject"));
      assertEquals("application/avro", header(raw, "content-type"));
      assertEquals(recorded.recordedAt(), Instant.parse(header(raw, "ce_recordedtime")));
      assertEquals(recorded.recordedAt().toEpochMilli(), raw.timestamp());
      assertEquals(event.event(), EventCodec.decode(raw.value()));
    }
  }

  @Test
  void knowsAfterReopeningWhatIsThere() throws IOException {
    List<LoggedEvent> events = SampleEvents.rounds(0, 12_000);
    Path index = indexFolder.resolve(Topics.EVENTS + ".ids");
    Instant ahead = Instant.parse("2100-01-01T00:00:00Z");
    try (EventLog log = events(InstantSource.fixed(ahead))) {
      log.append(events);
    }
    assertTrue(Files.size(index) > 12_000 * 24);
    assertKnown(events, ahead);
    Files.write(index, new byte[100]);
    assertKnown(events, ahead);
    Files.delete(index);
    assertKnown(events, ahead);
  }

  /** The last of the events is new each time, so that its recorded time can be seen. */
  private void assertKnown(List<LoggedEvent> events, Instant recordedAt) {
    try (EventLog log = events(CLOCK)) {
      Cut end = log.end();
      for (Receipt<LoggedEvent> r : log.append(events)) {
        assertInstanceOf(Receipt.Duplicate.class, r);
      }
      assertInstanceOf(
          Receipt.Conflict.class, log.append(List.of(SampleEvents.round(3, "edited"))).get(0));
      assertEquals(end, log.end());
      int next = 20_000 + (int) end.offsets().stream().mapToLong(o -> o).sum();
      Receipt<LoggedEvent> added = log.append(SampleEvents.rounds(next, next + 1)).get(0);
      assertEquals(recordedAt, appended(added).recordedAt(), "time goes on from the log's last");
    }
  }

  @Test
  void namesEveryConflictOfAnEditedFile() {
    List<LoggedEvent> edited = new ArrayList<>();
    for (int i = 0; i < 9_000; i += 3) {
      edited.add(SampleEvents.round(i, "edited"));
    }
    try (EventLog log = events(CLOCK)) {
      log.append(SampleEvents.rounds(0, 9_000));
      List<Receipt<LoggedEvent>> receipts = log.append(edited);
      for (int i = 0; i < edited.size(); i++) {
        if (receipts.get(i) instanceof Receipt.Conflict<LoggedEvent> c) {
          assertEquals(edited.get(i).id(), c.there().entry().id());
        } else {
          throw new AssertionError(receipts.get(i));
        }
      }
    }
  }

  @Test
  void seesWhatAnotherClientAppended() {
    try (EventLog one = events(CLOCK);
        EventLog other = new KafkaEventLog(address(), indexFolder.resolve("other"))) {
      one.append(SampleEvents.rounds(0, 200));
      List<Receipt<LoggedEvent>> receipts = other.append(SampleEvents.rounds(100, 300));
      assertInstanceOf(Receipt.Duplicate.class, receipts.get(99));
      assertInstanceOf(Receipt.Appended.class, receipts.get(100));
      assertEquals(ids(SampleEvents.rounds(0, 300)), ids(one, Cut.START, one.end()));
      assertInstanceOf(Receipt.Duplicate.class, one.append(SampleEvents.rounds(250, 251)).get(0));
    }
  }

  @Test
  void seesWhatAnotherClientAppendsWhileItsOwnAreOnTheirWay() {
    try (EventLog one = events(CLOCK);
        EventLog other = new KafkaEventLog(address(), indexFolder.resolve("other"))) {
      one.append(SampleEvents.rounds(0, 400));
      AppendLog.Sending<LoggedEvent> before = sent(one, 400, 800);
      before.receipts();
      before = sent(one, 800, 1_200);
      other.append(SampleEvents.rounds(5_000, 5_400));
      AppendLog.Sending<LoggedEvent> after = sent(one, 1_200, 1_600);
      before.receipts();
      AppendLog.Sending<LoggedEvent> next = sent(one, 1_600, 2_000);
      after.receipts();
      AppendLog.Sending<LoggedEvent> known = sent(one, 5_000, 5_400);
      next.receipts();

      known.receipts().forEach(r -> assertInstanceOf(Receipt.Duplicate.class, r));
      Set<String> all = ids(SampleEvents.rounds(0, 2_000));
      all.addAll(ids(SampleEvents.rounds(5_000, 5_400)));
      assertEquals(all, ids(one, Cut.START, one.end()));
    }
  }

  private static AppendLog.Sending<LoggedEvent> sent(EventLog log, int from, int to) {
    return log.send(SampleEvents.rounds(from, to).stream().map(log::ready).toList());
  }

  @Test
  void whatNobodyWaitedForIsThereWhenTheLogIsClosed() {
    List<LoggedEvent> events = SampleEvents.rounds(0, 3_000);
    try (EventLog log = events(CLOCK)) {
      for (int i = 0; i < events.size(); i += 500) {
        log.send(events.subList(i, i + 500).stream().map(log::ready).toList());
      }
    }
    try (EventLog log = events(CLOCK)) {
      assertEquals(ids(events), ids(log, Cut.START, log.end()));
    }
  }

  @Test
  void losesNothingWhenTwoClientsAppendAtOnce() {
    try (EventLog one = events(CLOCK);
        EventLog other = new KafkaEventLog(address(), indexFolder.resolve("other"))) {
      CompletableFuture<Void> byOne = CompletableFuture.runAsync(() -> inPieces(one, 0, 6_000));
      CompletableFuture<Void> byOther =
          CompletableFuture.runAsync(() -> inPieces(other, 4_000, 10_000));
      byOne.join();
      byOther.join();

      Set<String> seen = new HashSet<>();
      one.read(Cut.START, one.end(), r -> seen.add(r.entry().id()));
      assertEquals(ids(SampleEvents.rounds(0, 10_000)), seen);
      for (Receipt<LoggedEvent> r : one.append(SampleEvents.rounds(0, 10_000))) {
        assertInstanceOf(Receipt.Duplicate.class, r);
      }
    }
  }

  private static void inPieces(EventLog log, int from, int to) {
    for (int at = from; at < to; at += 250) {
      log.append(SampleEvents.rounds(at, at + 250));
    }
  }

  @Test
  void refusesATopicThatWouldForget() throws Exception {
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", bootstrapServers()))) {
      NewTopic topic = new NewTopic(Topics.EVENTS, 1, (short) 1);
      topic.configs(Map.of("retention.ms", "86400000"));
      admin.createTopics(List.of(topic)).all().get();
    }
    LogException e = assertThrows(LogException.class, () -> events(CLOCK));
    assertTrue(e.getMessage().contains("retention.ms is 86400000. Set it to -1"), e.getMessage());
  }

  @Test
  void takesATopicOfAnotherNumberOfPartitions() throws Exception {
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", bootstrapServers()))) {
      NewTopic topic = new NewTopic(Topics.EVENTS, 7, (short) 1);
      topic.configs(Map.of("retention.ms", "-1"));
      admin.createTopics(List.of(topic)).all().get();
    }
    try (EventLog log = events(CLOCK)) {
      log.append(SampleEvents.rounds(0, 200));
      assertEquals(7, log.end().offsets().size());
      assertEquals(ids(SampleEvents.rounds(0, 200)), ids(log, Cut.START, log.end()));
    }
  }

  private ConsumerRecord<byte[], byte[]> raw(Place place) {
    try (KafkaConsumer<byte[], byte[]> consumer =
        new KafkaConsumer<>(
            Map.of("bootstrap.servers", bootstrapServers()),
            new ByteArrayDeserializer(),
            new ByteArrayDeserializer())) {
      TopicPartition partition = new TopicPartition(Topics.EVENTS, place.partition());
      consumer.assign(List.of(partition));
      consumer.seek(partition, place.offset());
      while (true) {
        for (ConsumerRecord<byte[], byte[]> r : consumer.poll(Duration.ofSeconds(1))) {
          return r;
        }
      }
    }
  }

  private static String header(ConsumerRecord<byte[], byte[]> r, String name) {
    return new String(r.headers().lastHeader(name).value(), StandardCharsets.UTF_8);
  }
}
