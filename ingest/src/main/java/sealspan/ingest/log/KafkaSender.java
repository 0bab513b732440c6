package sealspan.ingest.log;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.producer.Callback;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.header.Header;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/**
 * Writes entries to one topic, many in flight at a time, each once and in order, and waits until
 * every replica that has to has it.
 *
 * @param <T> the kind of entries
 */
final class KafkaSender<T> implements AutoCloseable {
  private final KafkaAddress address;
  private final EntryForm<T> form;
  private KafkaProducer<byte[], byte[]> producer;

  KafkaSender(KafkaAddress address, EntryForm<T> form) {
    this.address = address;
    this.form = form;
    this.producer = producer(address);
  }

  /** Where each entry went, null where it failed, and the first failure, null for none. */
  record Sent(List<Place> places, Exception failure) {}

  /** Sends entries and waits for all of them. */
  Sent send(List<Prepared<T>> entries, Instant recordedAt) {
    Place[] places = new Place[entries.size()];
    Exception[] failures = new Exception[entries.size()];
    Exception stopped = null;
    try {
      List<Header> recorded = new ArrayList<>();
      form.headersOf(recordedAt, (name, text) -> recorded.add(Prepared.header(name, text)));
      for (int i = 0; i < places.length; i++) {
        producer.send(record(entries.get(i), recordedAt, recorded), outcome(i, places, failures));
      }
      producer.flush();
    } catch (KafkaException e) {
      stopped = e;
    }
    for (int i = 0; i < places.length && stopped == null; i++) {
      stopped = failures[i];
    }
    if (stopped != null) {
      startAfresh();
    }
    return new Sent(Arrays.asList(places), stopped);
  }

  private static Callback outcome(int at, Place[] places, Exception[] failures) {
    return (RecordMetadata m, Exception e) -> {
      if (e == null) {
        places[at] = new Place(m.partition(), m.offset());
      } else {
        failures[at] = e;
      }
    };
  }

  private ProducerRecord<byte[], byte[]> record(
      Prepared<T> entry, Instant recordedAt, List<Header> recorded) {
    byte[] value = form.value(entry.named(), entry.content(), recordedAt);
    long at = recordedAt.toEpochMilli();
    ProducerRecord<byte[], byte[]> record =
        new ProducerRecord<>(form.topic(), null, at, entry.key(), value, entry.headers());
    recorded.forEach(record.headers()::add);
    return record;
  }

  /** A producer that failed may have given up some entries and hold others: leave it behind. */
  private void startAfresh() {
    producer.close(Duration.ZERO);
    producer = producer(address);
  }

  /** A producer that writes each record once, in order, and has it on every replica that counts. */
  static KafkaProducer<byte[], byte[]> producer(KafkaAddress address) {
    Map<String, Object> ours =
        Map.ofEntries(
            Map.entry("acks", "all"),
            Map.entry("enable.idempotence", true),
            Map.entry("compression.type", "lz4"),
            Map.entry("linger.ms", 1_000),
            Map.entry("batch.size", 512 << 10),
            Map.entry("buffer.memory", 64L << 20),
            Map.entry("max.request.size", KafkaTopic.RECORD_MAX_BYTES),
            Map.entry("request.timeout.ms", 15_000),
            Map.entry("delivery.timeout.ms", 60_000),
            Map.entry("max.block.ms", 30_000L));
    try {
      return new KafkaProducer<>(
          address.clientProperties(ours), new ByteArraySerializer(), new ByteArraySerializer());
    } catch (KafkaException e) {
      throw KafkaTrouble.of("connecting", address, e);
    }
  }

  @Override
  public void close() {
    producer.close();
  }
}
