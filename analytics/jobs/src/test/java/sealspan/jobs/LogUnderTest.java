package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.admin.OffsetSpec;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.KafkaFuture;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.TopicExistsException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import sealspan.avro.EventCodec;
import sealspan.avro.TableCodec;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;
import sealspan.ingest.log.BrokerClassPath;
import sealspan.ingest.log.BrokerSettings;
import sealspan.ingest.log.LocalBroker;
import sealspan.table.Bundle;
import sealspan.table.LedgerEntry;
import sealspan.table.ResultTopics;

/** A real broker with an event log that a test fills as it likes, repetitions included. */
final class LogUnderTest implements AutoCloseable {
  private static final int PARTITIONS = 3;

  private final LocalBroker broker;
  private final Admin admin;

  LogUnderTest(Path folder) {
    broker =
        LocalBroker.start(
            new BrokerSettings(
                folder,
                BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")))));
    admin = Admin.create(Map.of("bootstrap.servers", broker.bootstrapServers()));
    beginAnew();
  }

  String bootstrapServers() {
    return broker.bootstrapServers();
  }

  /**
   * Makes the topics of events and of the ledger, empty. One that was just made or deleted may not
   * be listed, or be listed still, for a moment.
   */
  void beginAnew() {
    Map<String, Integer> partitions = Map.of(Topics.EVENTS, PARTITIONS, Topics.LEDGER, 1);
    partitions.forEach((name, n) -> until(() -> isGone(name)));
    partitions.forEach((name, n) -> until(() -> isMade(new NewTopic(name, n, (short) 1))));
  }

  private boolean isGone(String topic) {
    return refusedBecause(admin.deleteTopics(List.of(topic)).all())
        instanceof UnknownTopicOrPartitionException;
  }

  private boolean isMade(NewTopic topic) {
    Throwable refusal = refusedBecause(admin.createTopics(List.of(topic)).all());
    if (refusal != null && !(refusal instanceof TopicExistsException)) {
      throw new IllegalStateException(refusal);
    }
    return refusal == null;
  }

  /** Null where it was done. */
  private static Throwable refusedBecause(KafkaFuture<Void> asked) {
    try {
      asked.get();
      return null;
    } catch (ExecutionException e) {
      return e.getCause();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  void append(Iterable<LoggedEvent> events) {
    Map<String, Object> settings =
        Map.of("bootstrap.servers", bootstrapServers(), "linger.ms", 20, "batch.size", 262144);
    try (KafkaProducer<byte[], byte[]> producer =
        new KafkaProducer<>(settings, new ByteArraySerializer(), new ByteArraySerializer())) {
      for (LoggedEvent event : events) {
        producer.send(record(event));
      }
    }
  }

  private static ProducerRecord<byte[], byte[]> record(LoggedEvent event) {
    byte[] value = EventCodec.encode(event.event());
    long fingerprint = ByteBuffer.wrap(value).order(ByteOrder.LITTLE_ENDIAN).getLong(2);
    byte[] key = event.event().subject().key().getBytes(UTF_8);
    ProducerRecord<byte[], byte[]> record = new ProducerRecord<>(Topics.EVENTS, key, value);
    EventHeaders.of(event, fingerprint)
        .forEach((name, text) -> record.headers().add(name, text.getBytes(UTF_8)));
    return record;
  }

  void appendRaw(byte[] value) {
    append(Topics.EVENTS, value);
  }

  void append(LedgerEntry entry) {
    append(Topics.LEDGER, TableCodec.encode(entry));
  }

  private void append(String topic, byte[] value) {
    try (KafkaProducer<byte[], byte[]> producer =
        new KafkaProducer<>(
            Map.of("bootstrap.servers", bootstrapServers()),
            new ByteArraySerializer(),
            new ByteArraySerializer())) {
      producer.send(new ProducerRecord<>(topic, value));
    }
  }

  /** The end of the log, in the form of a cut. */
  String end() {
    return ends(Topics.EVENTS).entrySet().stream()
        .map(e -> e.getKey().partition() + ":" + e.getValue())
        .collect(Collectors.joining(","));
  }

  Map<TopicPartition, Long> ends(String topic) {
    try {
      Map<TopicPartition, OffsetSpec> ask =
          IntStream.range(
                  0,
                  admin
                      .describeTopics(List.of(topic))
                      .allTopicNames()
                      .get()
                      .get(topic)
                      .partitions()
                      .size())
              .boxed()
              .collect(
                  Collectors.toMap(p -> new TopicPartition(topic, p), p -> OffsetSpec.latest()));
      Map<TopicPartition, Long> ends =
          new TreeMap<>((a, b) -> Integer.compare(a.partition(), b.partition()));
      admin.listOffsets(ask).all().get().forEach((p, o) -> ends.put(p, o.offset()));
      return ends;
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Waits until the jobs say that the rows of all events are there. */
  void awaitComplete(String generation, FlinkRuntime runtime) {
    awaitComplete(generation, runtime::trouble);
  }

  /** The same for jobs elsewhere, with what tells of their trouble. */
  void awaitComplete(String generation, Supplier<Optional<String>> trouble) {
    Map<TopicPartition, Long> ends = ends(Topics.EVENTS);
    until(
        () -> {
          trouble
              .get()
              .ifPresent(
                  why -> {
                    throw new AssertionError(why);
                  });
          return ends.entrySet().stream()
              .allMatch(e -> committed(generation).getOrDefault(e.getKey(), 0L) >= e.getValue());
        });
  }

  /** The offsets that a checkpoint of the jobs has committed; empty where none has. */
  Map<TopicPartition, Long> committed(String generation) {
    try {
      return admin
          .listConsumerGroupOffsets(ResultTopics.historiesGroup(generation))
          .partitionsToOffsetAndMetadata()
          .get()
          .entrySet()
          .stream()
          .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().offset()));
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** The bundles of a topic as a reader keeps them that ignores older revisions. */
  Map<String, Bundle> bundles(String topic) {
    Map<String, Bundle> newest = new TreeMap<>();
    for (ConsumerRecord<byte[], byte[]> record : records(topic)) {
      Bundle bundle = TableCodec.decode(record.value(), Bundle.class);
      if (!bundle.key().equals(new String(record.key(), UTF_8))) {
        throw new AssertionError("key of " + bundle.key());
      }
      newest.merge(bundle.key(), bundle, (a, b) -> b.revision() >= a.revision() ? b : a);
    }
    return newest;
  }

  List<ConsumerRecord<byte[], byte[]>> records(String topic) {
    Map<TopicPartition, Long> ends = ends(topic);
    List<ConsumerRecord<byte[], byte[]>> records = new java.util.ArrayList<>();
    try (KafkaConsumer<byte[], byte[]> consumer =
        new KafkaConsumer<>(
            Map.of("bootstrap.servers", bootstrapServers()),
            new ByteArrayDeserializer(),
            new ByteArrayDeserializer())) {
      consumer.assign(ends.keySet());
      consumer.seekToBeginning(ends.keySet());
      while (ends.entrySet().stream().anyMatch(e -> consumer.position(e.getKey()) < e.getValue())) {
        consumer.poll(Duration.ofMillis(200)).forEach(records::add);
      }
    }
    return records;
  }

  /** Waits for something; the test's own time limit ends a wait in vain. */
  static void until(BooleanSupplier reached) {
    while (!reached.getAsBoolean()) {
      try {
        TimeUnit.MILLISECONDS.sleep(50);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError("The time limit of the test was reached.", e);
      }
    }
  }

  @Override
  public void close() {
    admin.close();
    broker.close();
  }
}
