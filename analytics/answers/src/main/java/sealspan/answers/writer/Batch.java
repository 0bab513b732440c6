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
   * What makes one transaction at most, or a little more. Each looks once through all tables for
   * rows to replace, and two of them may be in memory.
   */
  static final int MOST_RECORDS = 10_000;

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

  /** Whether it is as large as a transaction should be. */
  boolean isFull() {
    return records >= MOST_RECORDS || bytes >= MOST_BYTES;
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
