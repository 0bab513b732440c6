package sealspan.answers.writer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.common.TopicPartition;

/** What was read since the last transaction; of several with one key, only the one that holds. */
final class Batch {
  /**
   * So many bundles and rows are taken in together at most, or a few more. Each time all tables are
   * looked through for what they replace, and two batches may be in memory.
   */
  private static final int MOST_UPSERTS = 10_000;

  /** The same of events, which replace nothing and are small. */
  private static final int MOST_EVENTS = 30_000;

  private static final long MOST_BYTES = 64L << 20;

  private final Map<String, Upsert> upserts = new LinkedHashMap<>();
  private final List<EventRow> events = new ArrayList<>();
  private final Map<TopicPartition, Long> positions = new HashMap<>();
  private int records;
  private long bytes;
  private int upsertsRead;

  void add(Upsert upsert) {
    upsertsRead++;
    Upsert earlier = upserts.get(upsert.key());
    if (earlier == null || upsert.replaces(earlier.revision())) {
      upserts.put(upsert.key(), upsert);
    }
  }

  void add(EventRow event) {
    events.add(event);
  }

  /** Notes that a record was read: the next one to read is after it. */
  void read(TopicPartition partition, long offset, int recordBytes) {
    positions.put(partition, offset + 1);
    records++;
    bytes += recordBytes;
  }

  /** Whether it is as large as it should be. */
  boolean isFull() {
    return upsertsRead >= MOST_UPSERTS || events.size() >= MOST_EVENTS || bytes >= MOST_BYTES;
  }

  Map<String, Upsert> upserts() {
    return upserts;
  }

  /** Number of bundles and rows read, those that do not hold among them. */
  int upsertsRead() {
    return upsertsRead;
  }

  List<EventRow> events() {
    return events;
  }

  Map<TopicPartition, Long> positions() {
    return positions;
  }

  /** Bytes of the records read. */
  long bytes() {
    return bytes;
  }

  /** Number of records read. */
  int records() {
    return records;
  }
}
