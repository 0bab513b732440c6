package sealspan.ingest.log;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.producer.Callback;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/**
 * Writes entries to one topic, many in flight at a time, each once and in order, and waits until
 * every replica that has to has it.
 *
 * @param <T> the kind of entries
 */
final class KafkaSender<T> implements AutoCloseable {
  private static final int PIECE = 1_000;

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
      for (int from = 0; from < places.length; from += PIECE) {
        List<Prepared<T>> piece = entries.subList(from, Math.min(from + PIECE, places.length));
        int at = from;
        for (ProducerRecord<byte[], byte[]> record : formed(piece, recordedAt)) {
          producer.send(record, outcome(at++, places, failures));
        }
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
    List<Place> list = new ArrayList<>(places.length);
    for (Place p : places) {
      list.add(p);
    }
    return new Sent(list, stopped);
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

  /** A piece is formed on all cores while the one before it is on its way. */
  private List<ProducerRecord<byte[], byte[]>> formed(List<Prepared<T>> piece, Instant recordedAt) {
    return piece.parallelStream().map(entry -> form(entry, recordedAt)).toList();
  }

  private ProducerRecord<byte[], byte[]> form(Prepared<T> entry, Instant recordedAt) {
    byte[] key = form.key(entry.stored()).getBytes(StandardCharsets.UTF_8);
    ProducerRecord<byte[], byte[]> r =
        new ProducerRecord<>(form.topic(), null, recordedAt.toEpochMilli(), key, entry.value());
    form.headers(entry.stored(), entry.value(), recordedAt)
        .forEach((name, text) -> r.headers().add(name, text.getBytes(StandardCharsets.UTF_8)));
    return r;
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
