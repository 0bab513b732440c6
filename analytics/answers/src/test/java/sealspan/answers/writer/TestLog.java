package sealspan.answers.writer;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.apache.kafka.common.header.Headers;
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
import sealspan.table.QuarantinedRow;
import sealspan.table.ResultTopics;

/** A real broker with the topics, and what the log and the jobs would write to them. */
final class TestLog implements AutoCloseable {
  static final int PARTITIONS = 2;

  private final LocalBroker broker;
  private final Admin admin;
  private final KafkaProducer<byte[], byte[]> producer;

  private final Path brokerLog;

  TestLog(Path folder) throws Exception {
    brokerLog = folder.resolve("broker").resolve("broker.log");
    broker =
        LocalBroker.start(
            new BrokerSettings(
                folder,
                BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")))));
    Properties properties = new Properties();
    properties.put("bootstrap.servers", broker.bootstrapServers());
    admin = Admin.create(properties);
    producer =
        new KafkaProducer<>(properties, new ByteArraySerializer(), new ByteArraySerializer());
    make(Topics.EVENTS, PARTITIONS);
    make(Topics.QUARANTINE, 1);
    make(Topics.LEDGER, 1);
  }

  /** Makes a topic, and waits until each of its partitions has a leader, as the program does. */
  private void make(String topic, int partitions) throws Exception {
    admin.createTopics(List.of(new NewTopic(topic, partitions, (short) 1))).all().get();
    while (!isLed(topic)) {
      Thread.sleep(20);
    }
  }

  private boolean isLed(String topic) throws Exception {
    try {
      return admin
          .describeTopics(List.of(topic))
          .allTopicNames()
          .get()
          .get(topic)
          .partitions()
          .stream()
          .allMatch(partition -> partition.leader() != null);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UnknownTopicOrPartitionException) {
        return false;
      }
      throw e;
    }
  }

  String bootstrapServers() {
    return broker.bootstrapServers();
  }

  void makeRowsTopic(String generation) throws Exception {
    make(ResultTopics.rows(generation), PARTITIONS);
  }

  void event(LoggedEvent event, int partition) throws Exception {
    ProducerRecord<byte[], byte[]> record =
        new ProducerRecord<>(
            Topics.EVENTS,
            partition,
            bytes(event.event().subject().key()),
            EventCodec.encode(event.event()));
    Headers headers = record.headers();
    EventHeaders.of(event, 0).forEach((name, value) -> headers.add(name, bytes(value)));
    producer.send(record).get();
  }

  void rows(String generation, List<? extends Bundle> bundles) throws Exception {
    List<Future<?>> sent = new ArrayList<>();
    for (Bundle bundle : bundles) {
      sent.add(
          producer.send(
              new ProducerRecord<>(
                  ResultTopics.rows(generation), bytes(bundle.key()), TableCodec.encode(bundle))));
    }
    await(sent);
  }

  void quarantined(QuarantinedRow row) throws Exception {
    producer
        .send(new ProducerRecord<>(Topics.QUARANTINE, bytes(row.id()), TableCodec.encode(row)))
        .get();
  }

  void ledger(LedgerEntry entry) throws Exception {
    producer
        .send(new ProducerRecord<>(Topics.LEDGER, bytes(entry.id()), TableCodec.encode(entry)))
        .get();
  }

  void raw(String topic, byte[] value) throws Exception {
    producer.send(new ProducerRecord<>(topic, bytes("raw"), value)).get();
  }

  /** What the jobs do after a checkpoint. */
  void commit(String generation, long... nextOffsets) throws Exception {
    Map<TopicPartition, OffsetAndMetadata> offsets = new HashMap<>();
    for (int p = 0; p < nextOffsets.length; p++) {
      offsets.put(new TopicPartition(Topics.EVENTS, p), new OffsetAndMetadata(nextOffsets[p]));
    }
    admin.alterConsumerGroupOffsets(ResultTopics.historiesGroup(generation), offsets).all().get();
  }

  private void await(List<Future<?>> sent) throws Exception {
    for (int i = 0; i < sent.size(); i++) {
      try {
        sent.get(i).get();
      } catch (ExecutionException e) {
        String told = Files.exists(brokerLog) ? Files.readString(brokerLog) : "nothing";
        throw new AssertionError("Record " + i + " failed; the broker wrote: " + told, e);
      }
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public void close() {
    producer.close();
    admin.close();
    broker.close();
  }
}
