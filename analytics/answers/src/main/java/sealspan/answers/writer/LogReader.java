package sealspan.answers.writer;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.stream.Collectors;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.PartitionInfo;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import sealspan.event.Topics;

/** Reads the four topics from given places on, and how far the histories have come. */
final class LogReader implements AutoCloseable {
  /** What one look at the log may give. */
  private static final int RECORDS_AT_ONCE = 10_000;

  /**
   * What one partition may give at once; bundles have about 9 kB. The usual 1 MB makes transactions
   * of a few hundred bundles, and each looks through all tables for rows to replace.
   */
  private static final int PARTITION_BYTES_AT_ONCE = 8 << 20;

  /**
   * So many events of a partition are read ahead of the histories. Rows come before the cut that
   * tells of them, and whoever's rows are shown shall be found among the events.
   */
  private static final long EVENTS_AHEAD = 10_000;

  private final WriterSettings settings;
  private final Map<TopicPartition, Long> places;
  private final KafkaConsumer<byte[], byte[]> consumer;
  private final Admin admin;

  private boolean farBehind;

  /** The newest cut of the histories that was asked for. */
  private Map<Integer, Long> cut = Map.of();

  /**
   * A reader that begins at the places, and at the beginning of every other partition.
   *
   * @param places next offset to read by partition
   */
  LogReader(WriterSettings settings, Map<TopicPartition, Long> places) {
    this.settings = settings;
    this.places = Map.copyOf(places);
    Map<String, Object> properties = new HashMap<>(settings.clientProperties());
    properties.put(ConsumerConfig.BOOTSTRAP_SERVERS_CONFIG, settings.bootstrapServers());
    Map<String, Object> own = new HashMap<>(properties);
    own.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    own.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "none");
    own.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    own.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, RECORDS_AT_ONCE);
    own.put(ConsumerConfig.MAX_PARTITION_FETCH_BYTES_CONFIG, PARTITION_BYTES_AT_ONCE);
    own.put(ConsumerConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, 10_000);
    own.put(ConsumerConfig.REQUEST_TIMEOUT_MS_CONFIG, 8_000);
    properties.put(AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, 10_000);
    properties.put(AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, 8_000);
    consumer = new KafkaConsumer<>(own, new ByteArrayDeserializer(), new ByteArrayDeserializer());
    admin = Admin.create(properties);
  }

  /** Takes up partitions that have come into being since; true where there are new ones. */
  boolean findPartitions() {
    Map<String, List<PartitionInfo>> topics = consumer.listTopics();
    Set<TopicPartition> assigned = consumer.assignment();
    List<TopicPartition> all = new ArrayList<>(assigned);
    List<TopicPartition> added = new ArrayList<>();
    for (String topic :
        List.of(settings.rowsTopic(), Topics.EVENTS, Topics.QUARANTINE, Topics.LEDGER)) {
      for (PartitionInfo info : topics.getOrDefault(topic, List.of())) {
        TopicPartition partition = new TopicPartition(topic, info.partition());
        if (!assigned.contains(partition)) {
          added.add(partition);
        }
      }
    }
    if (added.isEmpty()) {
      return false;
    }
    all.addAll(added);
    consumer.assign(all);
    for (TopicPartition partition : added) {
      consumer.seek(partition, places.getOrDefault(partition, 0L));
    }
    return true;
  }

  /** Whether the topics of events and rows are there. */
  boolean hasEventsAndRows() {
    return !partitions(Topics.EVENTS).isEmpty() && !partitions(settings.rowsTopic()).isEmpty();
  }

  /** Adds what came in to a batch until it is full, waiting at most so long for the first of it. */
  void poll(Duration wait, Batch batch) {
    if (consumer.assignment().isEmpty()) {
      return;
    }
    leaveEventsFarAhead();
    ConsumerRecords<byte[], byte[]> records = consumer.poll(wait);
    while (!records.isEmpty()) {
      RecordReader.read(records, batch);
      leaveEventsFarAhead();
      records = batch.isFull() ? ConsumerRecords.empty() : consumer.poll(Duration.ZERO);
    }
  }

  /**
   * Most events that the histories do not have yet are not needed yet: read all at once they would
   * lie in the private file, and in every copy of it, until the histories have caught up.
   */
  private void leaveEventsFarAhead() {
    for (TopicPartition partition : partitions(Topics.EVENTS)) {
      if (consumer.position(partition) < readAhead(cut, partition)) {
        consumer.resume(Set.of(partition));
      } else {
        consumer.pause(Set.of(partition));
      }
    }
  }

  private static long readAhead(Map<Integer, Long> cut, TopicPartition partition) {
    return cut.getOrDefault(partition.partition(), 0L) + EVENTS_AHEAD;
  }

  /**
   * The cut up to which the histories are complete: offset after the last event of each partition
   * whose rows are all in the rows topic.
   */
  Map<Integer, Long> historiesCut() {
    Map<Integer, Long> now = new HashMap<>();
    partitions(Topics.EVENTS).forEach(p -> now.put(p.partition(), 0L));
    Map<TopicPartition, OffsetAndMetadata> committed;
    try {
      committed =
          admin
              .listConsumerGroupOffsets(settings.historiesGroup())
              .partitionsToOffsetAndMetadata()
              .get();
    } catch (ExecutionException e) {
      throw new KafkaException("The progress of the histories cannot be read", e.getCause());
    } catch (InterruptedException e) {
      throw new org.apache.kafka.common.errors.InterruptException(e);
    }
    committed.forEach(
        (partition, offset) -> {
          if (partition.topic().equals(Topics.EVENTS) && offset != null) {
            now.put(partition.partition(), offset.offset());
          }
        });
    cut = now;
    return now;
  }

  /** Offset after the last event of each partition that is in the log now. */
  Map<Integer, Long> eventsEnd() {
    Map<Integer, Long> ends = new HashMap<>();
    consumer
        .endOffsets(partitions(Topics.EVENTS))
        .forEach((partition, end) -> ends.put(partition.partition(), end));
    return ends;
  }

  /**
   * How far must be read so that a cut is complete in every table: all rows that are there now, and
   * the events before the cut with those that these rows may tell of, but for events far ahead.
   */
  Map<TopicPartition, Long> goal(Map<Integer, Long> cut) {
    Map<TopicPartition, Long> goal =
        new HashMap<>(consumer.endOffsets(partitions(settings.rowsTopic())));
    // After those of the rows, which come of events.
    Map<TopicPartition, Long> ends = consumer.endOffsets(partitions(Topics.EVENTS));
    ends.forEach((events, end) -> goal.put(events, Math.min(end, readAhead(cut, events))));
    farBehind = ends.entrySet().stream().anyMatch(e -> e.getValue() > readAhead(cut, e.getKey()));
    return goal;
  }

  /** Whether at the last goal the histories were so far behind the log that they catch up. */
  boolean isFarBehind() {
    return farBehind;
  }

  /** How many events are still to be read to reach a goal. */
  long eventsLeft(Map<TopicPartition, Long> goal) {
    return partitions(Topics.EVENTS).stream()
        .mapToLong(p -> Math.max(0, goal.getOrDefault(p, 0L) - consumer.position(p)))
        .sum();
  }

  /** Whether everything before a goal was read. */
  boolean reached(Map<TopicPartition, Long> goal) {
    return goal.entrySet().stream().allMatch(g -> consumer.position(g.getKey()) >= g.getValue());
  }

  private Set<TopicPartition> partitions(String topic) {
    return consumer.assignment().stream()
        .filter(p -> p.topic().equals(topic))
        .collect(Collectors.toSet());
  }

  /** Ends a wait from another thread. */
  void wakeUp() {
    consumer.wakeup();
  }

  @Override
  public void close() {
    try (Admin a = admin) {
      consumer.close();
    }
  }
}
