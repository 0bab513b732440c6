package sealspan.ingest.archive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.avro.Schema;
import org.apache.avro.file.DataFileReader;
import org.apache.avro.generic.GenericDatumReader;
import org.apache.avro.generic.GenericRecord;
import org.apache.avro.io.DecoderFactory;
import org.apache.kafka.clients.admin.Admin;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.avro.ArchivedRecord;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.ServiceStateChanged;
import sealspan.event.Topics;
import sealspan.ingest.log.BrokerClassPath;
import sealspan.ingest.log.BrokerSettings;
import sealspan.ingest.log.KafkaAddress;
import sealspan.ingest.log.KafkaEventLog;
import sealspan.ingest.log.KafkaLedger;
import sealspan.ingest.log.KafkaQuarantine;
import sealspan.ingest.log.LocalBroker;
import sealspan.ingest.log.LogException;
import sealspan.ingest.log.RawTopic;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/** A log written to files and put back, on real brokers; and files that are not as written. */
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class ArchiveTest {
  private static final BrokerClassPath JARS =
      BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")));
  private static final int EVENTS = 1_000;
  private static final int PER_FILE = 100;

  @TempDir static Path folder;
  private static LocalBroker broker;
  private static LocalBroker other;
  private static KafkaAddress there;
  private static Path export;
  private static Map<String, List<ArchivedRecord>> original;

  @TempDir Path work;
  private Path copy;

  @BeforeAll
  static void exportALog() {
    broker = broker(folder.resolve("first"));
    other = broker(folder.resolve("other"));
    there = new KafkaAddress(other.bootstrapServers());
    KafkaAddress first = new KafkaAddress(broker.bootstrapServers());
    Path index = folder.resolve("index");
    try (KafkaEventLog events = new KafkaEventLog(first, index);
        KafkaQuarantine quarantine = new KafkaQuarantine(first, index);
        KafkaLedger ledger = new KafkaLedger(first, index)) {
      events.append(IntStream.range(0, EVENTS).mapToObj(ArchiveTest::event).toList());
      quarantine.append(
          List.of(new QuarantinedRow(null, "s", "f", 7L, "x", "k", "why", "a;b", null, null)));
      ledger.append(List.of(new LedgerEntry(null, "CUT_FITTED", "0:3", Instant.EPOCH, "engine")));
    }
    original = records(first);
    export = folder.resolve("export");
    new Exporting(first, "abc", PER_FILE, (file, done, all) -> {}).to(export, "0.1.0");
  }

  @AfterAll
  static void stop() {
    broker.close();
    other.close();
  }

  @BeforeEach
  void copyTheExport() throws Exception {
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", other.bootstrapServers()))) {
      admin.deleteTopics(admin.listTopics().names().get()).all().get();
      while (!admin.listTopics().names().get().isEmpty()) {
        TimeUnit.MILLISECONDS.sleep(20);
      }
    }
    copy = work.resolve("copy");
    try (Stream<Path> tree = Files.walk(export)) {
      for (Path path : tree.toList()) {
        Files.copy(path, copy.resolve(export.relativize(path)));
      }
    }
  }

  @Test
  void putsEveryRecordBackByteForByte() {
    Archive archive = Archive.open(export);
    assertEquals(List.of(), archive.flaws());
    assertEquals(EVENTS + 2, archive.manifest().records());
    assertTrue(archive.manifest().topics().stream().anyMatch(t -> t.files().size() > 8));

    Restoring.Outcome outcome = new Restoring(there, (f, d, a) -> {}).from(archive);

    assertEquals(new Restoring.Outcome(EVENTS + 2, List.of(), true), outcome);
    assertEquals(original, records(there));
  }

  @Test
  void goesOnWithARestoreThatWasBrokenOffAndRefusesAnotherLog() {
    Archive archive = Archive.open(export);
    List<ArchivedRecord> events = original.get(Topics.EVENTS);
    List<ArchivedRecord> ofOne = events.stream().filter(r -> r.partition() == 1).toList();
    try (RawTopic topic = new RawTopic(there, Topics.EVENTS, 4)) {
      topic.append(ofOne.subList(0, 150));
    }
    Restoring restoring = new Restoring(there, (f, d, a) -> {});
    assertThrows(LogException.class, () -> restoring.requireEmpty(archive));
    restoring.from(archive);
    assertEquals(original, records(there));

    try (RawTopic topic = new RawTopic(there, Topics.EVENTS, 4)) {
      topic.append(ofOne.subList(0, 1));
    }
    LogException e =
        assertThrows(LogException.class, () -> new Restoring(there, (f, d, a) -> {}).from(archive));
    assertTrue(e.getMessage().contains("already holds something else"), e.getMessage());
  }

  @Test
  void namesADamagedAndAMissingFileAndRestoresTheSoundOnes() throws IOException {
    Path damaged = copy.resolve(Topics.EVENTS + "-0-000000000100.avro");
    byte[] bytes = Files.readAllBytes(damaged);
    bytes[bytes.length / 2] ^= 1;
    Files.write(damaged, bytes);
    Path missing = copy.resolve(Topics.EVENTS + "-2-000000000000.avro");
    Files.delete(missing);

    Archive archive = Archive.open(copy);

    assertEquals(
        List.of(damaged.getFileName().toString(), missing.getFileName().toString()),
        archive.flaws().stream().map(Archive.Flaw::file).toList());
    assertTrue(archive.flawsInWords().contains("do not have the digest"), archive.flawsInWords());
    assertTrue(archive.flawsInWords().contains("is missing"), archive.flawsInWords());
    Restoring.Outcome outcome = new Restoring(there, (f, d, a) -> {}).from(archive);
    assertEquals(EVENTS + 2 - 2 * PER_FILE, outcome.records());
    assertFalse(outcome.keptPlaces());
    assertEquals(outcome.records(), records(there).values().stream().mapToInt(List::size).sum());
  }

  @Test
  void takesNothingWithoutASoundManifest() throws IOException {
    Path manifest = copy.resolve("manifest.json");
    String text = Files.readString(manifest);
    Files.writeString(manifest, text.replace("\"records\" : 100", "\"records\" : 101"));
    LogException changed = assertThrows(LogException.class, () -> Archive.open(copy));
    assertTrue(changed.getMessage().contains("manifest.json is damaged"), changed.getMessage());
    Files.delete(manifest);
    LogException missing = assertThrows(LogException.class, () -> Archive.open(copy));
    assertTrue(missing.getMessage().contains("is no whole export"), missing.getMessage());
  }

  @Test
  void neverWritesOverAFolderAndLeavesNothingBehind() throws IOException {
    Exporting exporting = new Exporting(there, "abc", (file, done, all) -> {});
    LogException e = assertThrows(LogException.class, () -> exporting.to(copy, "0.1.0"));
    assertTrue(e.getMessage().contains("is there already"), e.getMessage());
    LogException nowhere =
        assertThrows(LogException.class, () -> exporting.to(work.resolve("no/export"), "0.1.0"));
    assertTrue(nowhere.getMessage().contains("There is no folder"), nowhere.getMessage());
    try (Stream<Path> left = Files.list(work)) {
      assertEquals(List.of(copy), left.toList());
    }
  }

  /** Avro 1.12 specification: container files and single objects are read by its own library. */
  @Test
  void isReadWithoutThisProgram() throws IOException {
    Path file = export.resolve(Topics.LEDGER + "-0-000000000000.avro");
    try (DataFileReader<GenericRecord> reader =
        new DataFileReader<>(file.toFile(), new GenericDatumReader<>())) {
      java.nio.ByteBuffer value = (java.nio.ByteBuffer) reader.next().get("value");
      long fingerprint = value.order(java.nio.ByteOrder.LITTLE_ENDIAN).getLong(2);
      Schema schema =
          new Schema.Parser()
              .parse(
                  export
                      .resolve("schemas")
                      .resolve("LedgerEntry-%016x.avsc".formatted(fingerprint))
                      .toFile());
      GenericRecord entry =
          new GenericDatumReader<GenericRecord>(schema)
              .read(
                  null,
                  DecoderFactory.get()
                      .binaryDecoder(value.array(), 10, value.remaining() - 10, null));
      assertEquals("0:3", entry.get("content").toString());
    }
  }

  private static LocalBroker broker(Path place) {
    return LocalBroker.start(new BrokerSettings(place, JARS));
  }

  private static LoggedEvent event(int number) {
    Moment when = new Moment(java.time.LocalDate.of(2020, 1, 1).plusDays(number), null, "UTC");
    return new LoggedEvent(
        "e-" + number,
        "invented",
        new ServiceStateChanged(
            "A-" + number % 97, when, ServiceStateChanged.State.values()[0], null),
        Instant.parse("2024-05-02T00:00:00Z"),
        LoggedEvent.ReportedOrigin.GIVEN,
        null,
        LoggedEvent.Arrival.IMPORTED);
  }

  private static Map<String, List<ArchivedRecord>> records(KafkaAddress there) {
    Map<String, List<ArchivedRecord>> all = new TreeMap<>();
    for (String name : RawTopic.NAMES) {
      List<ArchivedRecord> records = new ArrayList<>();
      try (RawTopic topic = new RawTopic(there, name, 0)) {
        for (int p = 0; p < topic.partitions(); p++) {
          topic.read(p, 0, topic.end().offset(p), records::add);
        }
      }
      all.put(name, records);
    }
    return all;
  }
}
