package sealspan.ingest.log;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.TimeoutException;
import org.apache.kafka.common.header.Header;
import sealspan.avro.ArchivedRecord;

/**
 * A topic that is kept for ever, with its records as they stand and nothing read out of them: to
 * carry a log from one place to another. For one thread at a time.
 */
public final class RawTopic implements AutoCloseable {
  /** The topics that are kept for ever, those first that tell of places in the others. */
  public static final List<String> NAMES =
      Stream.of(new LedgerForm(), new QuarantineForm(), new EventForm())
          .map(EntryForm::topic)
          .toList();

  private static final Duration POLL = Duration.ofMillis(500);
  private static final Duration STILL_LIMIT = Duration.ofSeconds(60);

  private final KafkaAddress address;
  private final KafkaTopic topic;
  private final KafkaConsumer<byte[], byte[]> consumer;
  private KafkaProducer<byte[], byte[]> producer;

  /**
   * Opens a topic; it is made when missing.
   *
   * @param partitions of a topic that has to be made; 0 for as many as it usually has
   * @throws LogException when Kafka cannot be reached, or the topic would not be kept for ever
   */
  public RawTopic(KafkaAddress address, String name, int partitions) {
    this.address = address;
    this.topic = KafkaTopic.open(address, name, partitions > 0 ? partitions : usual(name));
    try {
      consumer = address.reader();
    } catch (KafkaException e) {
      throw trouble("reading", e);
    }
  }

  private static int usual(String name) {
    return Stream.of(new LedgerForm(), new QuarantineForm(), new EventForm())
        .filter(form -> form.topic().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("No topic kept for ever: " + name))
        .partitions();
  }

  public int partitions() {
    return topic.partitions();
  }

  /** Before the first record that is there, in each partition. */
  public Cut beginning() {
    try {
      Map<TopicPartition, Long> offsets = consumer.beginningOffsets(all());
      return Cut.of(all().stream().mapToLong(offsets::get).toArray());
    } catch (KafkaException e) {
      throw trouble("reading", e);
    }
  }

  /** Behind the last record that is there, in each partition. */
  public Cut end() {
    try {
      Map<TopicPartition, Long> offsets = consumer.endOffsets(all());
      return Cut.of(all().stream().mapToLong(offsets::get).toArray());
    } catch (KafkaException e) {
      throw trouble("reading", e);
    }
  }

  private List<TopicPartition> all() {
    return IntStream.range(0, topic.partitions())
        .mapToObj(p -> new TopicPartition(topic.name(), p))
        .toList();
  }

  /**
   * Reads the records of a partition.
   *
   * @param from first offset
   * @param to offset after the last; everything before it has to be there
   */
  public void read(int partition, long from, long to, Consumer<ArchivedRecord> each) {
    TopicPartition at = new TopicPartition(topic.name(), partition);
    long deadline = System.nanoTime() + STILL_LIMIT.toNanos();
    try {
      consumer.assign(List.of(at));
      consumer.seek(at, from);
      while (consumer.position(at) < to) {
        ConsumerRecords<byte[], byte[]> some = consumer.poll(POLL);
        if (!some.isEmpty()) {
          deadline = System.nanoTime() + STILL_LIMIT.toNanos();
        } else if (System.nanoTime() > deadline) {
          throw new TimeoutException("nothing came for " + STILL_LIMIT.toSeconds() + " s");
        }
        for (ConsumerRecord<byte[], byte[]> r : some) {
          if (r.offset() < to) {
            each.accept(archived(r));
          }
        }
      }
    } catch (KafkaException e) {
      throw trouble("reading", e);
    }
  }

  private static ArchivedRecord archived(ConsumerRecord<byte[], byte[]> r) {
    List<ArchivedRecord.Header> headers = new ArrayList<>();
    for (Header h : r.headers()) {
      headers.add(new ArchivedRecord.Header(h.key(), h.value()));
    }
    return new ArchivedRecord(
        r.partition(), r.offset(), r.timestamp(), r.key(), r.value(), headers);
  }

  /**
   * Appends records to the partitions that they name, in order and with their recorded times, and
   * returns when all are durable. Their offsets follow from what is there already.
   */
  public void append(List<ArchivedRecord> records) {
    try {
      if (producer == null) {
        producer = KafkaSender.producer(address);
      }
      List<Future<RecordMetadata>> sent = new ArrayList<>(records.size());
      for (ArchivedRecord r : records) {
        ProducerRecord<byte[], byte[]> record =
            new ProducerRecord<>(
                topic.name(), r.partition(), r.timestampMillis(), r.key(), r.value());
        r.headers().forEach(h -> record.headers().add(h.name(), h.value()));
        sent.add(producer.send(record));
      }
      producer.flush();
      for (Future<RecordMetadata> one : sent) {
        one.get();
      }
    } catch (KafkaException | ExecutionException | InterruptedException e) {
      throw trouble("appending to", e);
    }
  }

  private LogException trouble(String doing, Exception e) {
    return KafkaTrouble.of(doing + " " + topic.name(), address, e);
  }

  @Override
  public void close() {
    consumer.close();
    if (producer != null) {
      producer.close();
    }
  }
}
