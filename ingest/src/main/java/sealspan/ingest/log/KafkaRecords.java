package sealspan.ingest.log;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.TimeoutException;
import org.apache.kafka.common.header.Header;

/**
 * Reads the records of one topic. For one thread at a time.
 *
 * @param <T> the kind of entries
 */
final class KafkaRecords<T> implements AutoCloseable {
  private static final Duration POLL = Duration.ofMillis(500);
  private static final Duration STILL_LIMIT = Duration.ofSeconds(60);

  /** A gap of fewer records is read over, because a seek costs a round trip. */
  private static final long SEEK_WORTHWHILE = 2_000;

  private final KafkaAddress address;
  private final EntryForm<T> form;
  private final List<TopicPartition> partitions;
  private final KafkaConsumer<byte[], byte[]> consumer;

  KafkaRecords(KafkaAddress address, KafkaTopic topic, EntryForm<T> form) {
    this.address = address;
    this.form = form;
    this.partitions =
        IntStream.range(0, topic.partitions())
            .mapToObj(p -> new TopicPartition(topic.name(), p))
            .toList();
    try {
      this.consumer = address.reader();
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  /** Breaks off the question that is under way, or the next one; for any thread. */
  void giveUp() {
    consumer.wakeup();
  }

  /** End of each partition: everything before it is durable. */
  long[] end() {
    try {
      Map<TopicPartition, Long> end = consumer.endOffsets(partitions);
      return partitions.stream().mapToLong(end::get).toArray();
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  /** Goes to a cut, to read on from there. */
  void seek(long[] from) {
    try {
      consumer.assign(partitions);
      for (int p = 0; p < from.length; p++) {
        consumer.seek(partitions.get(p), from[p]);
      }
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  List<Recorded<T>> poll(Duration limit) {
    return poll(limit, form::read);
  }

  /** How a record's value and headers are read. */
  private interface Decoding<R> {
    R read(byte[] value, UnaryOperator<String> header);
  }

  private <R> List<Recorded<R>> poll(Duration limit, Decoding<R> decoding) {
    try {
      List<Recorded<R>> list = new ArrayList<>();
      consumer.poll(limit).forEach(r -> list.add(decoded(r, decoding)));
      return list;
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  long[] position() {
    try {
      return partitions.stream().mapToLong(consumer::position).toArray();
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  /** Reads what tells every entry between two cuts apart. */
  void readMarks(long[] from, long[] to, Consumer<Recorded<EntryForm.Mark>> each) {
    seek(from);
    Patience patience = new Patience();
    while (!reached(to)) {
      List<Recorded<EntryForm.Mark>> some = poll(POLL, form::mark);
      patience.next(!some.isEmpty());
      for (Recorded<EntryForm.Mark> r : some) {
        if (r.place().offset() < to[r.place().partition()]) {
          each.accept(r);
        }
      }
    }
  }

  /** A consumer waits for ever for a broker that is gone; what is known to be there cannot. */
  private final class Patience {
    private long deadline = System.nanoTime() + STILL_LIMIT.toNanos();

    void next(boolean progress) {
      if (progress) {
        deadline = System.nanoTime() + STILL_LIMIT.toNanos();
      } else if (System.nanoTime() > deadline) {
        throw trouble(new TimeoutException("nothing came for " + STILL_LIMIT.toSeconds() + " s"));
      }
    }
  }

  private boolean reached(long[] to) {
    long[] at = position();
    return IntStream.range(0, to.length).allMatch(p -> at[p] >= to[p]);
  }

  /** The entries at some places. */
  Map<Place, Recorded<T>> at(List<Place> places) {
    Map<Integer, long[]> byPartition = new TreeMap<>();
    places.stream()
        .mapToInt(Place::partition)
        .distinct()
        .forEach(
            p ->
                byPartition.put(
                    p,
                    places.stream()
                        .filter(place -> place.partition() == p)
                        .mapToLong(Place::offset)
                        .sorted()
                        .distinct()
                        .toArray()));
    Map<Place, Recorded<T>> found = new HashMap<>();
    byPartition.forEach((p, offsets) -> readAt(partitions.get(p), offsets, found));
    return found;
  }

  private void readAt(TopicPartition partition, long[] offsets, Map<Place, Recorded<T>> found) {
    try {
      consumer.assign(List.of(partition));
      consumer.seek(partition, offsets[0]);
      int next = 0;
      Patience patience = new Patience();
      while (next < offsets.length) {
        ConsumerRecords<byte[], byte[]> some = consumer.poll(POLL);
        patience.next(!some.isEmpty());
        for (ConsumerRecord<byte[], byte[]> r : some) {
          if (next < offsets.length && r.offset() == offsets[next]) {
            Recorded<T> recorded = decoded(r, form::read);
            found.put(recorded.place(), recorded);
            next++;
          }
        }
        if (next < offsets.length
            && offsets[next] - consumer.position(partition) > SEEK_WORTHWHILE) {
          consumer.seek(partition, offsets[next]);
        }
      }
    } catch (KafkaException e) {
      throw trouble(e);
    }
  }

  private <R> Recorded<R> decoded(ConsumerRecord<byte[], byte[]> r, Decoding<R> decoding) {
    try {
      UnaryOperator<String> header = name -> text(r.headers().lastHeader(name));
      return new Recorded<>(
          new Place(r.partition(), r.offset()),
          Instant.ofEpochMilli(r.timestamp()),
          decoding.read(r.value(), header));
    } catch (RuntimeException e) {
      throw new LogException(
          "The entry at offset "
              + r.offset()
              + " of "
              + r.topic()
              + " partition "
              + r.partition()
              + " cannot be read: "
              + e.getMessage(),
          e);
    }
  }

  private static String text(Header header) {
    return header == null || header.value() == null
        ? null
        : new String(header.value(), StandardCharsets.UTF_8);
  }

  private LogException trouble(KafkaException e) {
    return KafkaTrouble.of("reading " + form.topic(), address, e);
  }

  @Override
  public void close() {
    consumer.close();
  }

  static long[] padded(Cut cut, int partitions) {
    long[] offsets = new long[partitions];
    Arrays.setAll(offsets, cut::offset);
    return offsets;
  }
}
