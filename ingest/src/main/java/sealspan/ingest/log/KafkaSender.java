package sealspan.ingest.log;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.apache.kafka.clients.producer.Callback;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.errors.InterruptException;
import org.apache.kafka.common.header.Header;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/**
 * Writes entries to one topic, many in flight at a time, each once and in order, and tells when
 * every replica that has to has it.
 *
 * @param <T> the kind of entries
 */
final class KafkaSender<T> implements AutoCloseable {
  private final KafkaAddress address;
  private final EntryForm<T> form;
  private KafkaProducer<byte[], byte[]> producer;
  private Flight newest;

  KafkaSender(KafkaAddress address, EntryForm<T> form) {
    this.address = address;
    this.form = form;
    this.producer = producer(address);
  }

  /**
   * Sends entries on their way. They leave when enough of them have gathered, a little time later,
   * or when somebody waits for them.
   */
  Flight send(List<Prepared<T>> entries, Instant recordedAt) {
    List<Header> recorded = new ArrayList<>();
    form.headersOf(recordedAt, (name, text) -> recorded.add(Prepared.header(name, text)));
    Flight flight = new Flight(entries.size());
    newest = flight;
    try {
      for (int i = 0; i < entries.size(); i++) {
        producer.send(record(entries.get(i), recordedAt, recorded), flight.outcome(i));
      }
    } catch (KafkaException e) {
      flight.stopped = e;
    }
    return flight;
  }

  /** Where each entry went, null where it failed, and the first failure, null for none. */
  record Landed(List<Place> places, Exception failure) {}

  /** Entries that were sent together. */
  final class Flight {
    private final KafkaProducer<byte[], byte[]> by = producer;
    private final Place[] places;
    private final Exception[] failures;
    private final CountDownLatch undecided;
    private Exception stopped;

    private Flight(int entries) {
      places = new Place[entries];
      failures = new Exception[entries];
      undecided = new CountDownLatch(entries);
    }

    private Callback outcome(int at) {
      return (RecordMetadata m, Exception e) -> {
        if (e == null) {
          places[at] = new Place(m.partition(), m.offset());
        } else {
          failures[at] = e;
        }
        undecided.countDown();
      };
    }

    /** Waits until it is decided what becomes of each. */
    Landed land() {
      try {
        if (stopped == null && newest == this) {
          by.flush();
        }
        if (stopped == null) {
          undecided.await();
        }
      } catch (InterruptedException e) {
        stopped = new InterruptException(e);
      } catch (KafkaException e) {
        stopped = e;
      }
      for (int i = 0; i < places.length && stopped == null; i++) {
        stopped = failures[i];
      }
      if (stopped != null && by == producer) {
        startAfresh();
      }
      return new Landed(Arrays.asList(places.clone()), stopped);
    }
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
            Map.entry("linger.ms", 20),
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
