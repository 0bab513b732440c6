package sealspan.jobs;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.ListOffsetsResult.ListOffsetsResultInfo;
import org.apache.kafka.clients.admin.OffsetSpec;
import org.apache.kafka.clients.admin.TopicDescription;
import org.apache.kafka.common.TopicPartition;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sealspan.event.Topics;

/** Whether events or entries of the ledger have come since it was last noted where they end. */
final class LogEnd implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(LogEnd.class);
  private static final Duration CLOSE_LIMIT = Duration.ofSeconds(2);

  private final Admin admin;
  private Map<TopicPartition, OffsetSpec> partitions = Map.of();
  private Map<TopicPartition, Long> noted = Map.of();
  private long events;

  LogEnd(JobSettings job) {
    this.admin = Admin.create(job.clients());
  }

  /** Notes where the log ends now; tells how many events it has, or had where it does not say. */
  long note() {
    noted = now();
    if (!noted.isEmpty()) {
      events =
          noted.entrySet().stream()
              .filter(end -> end.getKey().topic().equals(Topics.EVENTS))
              .mapToLong(Map.Entry::getValue)
              .sum();
    }
    return events;
  }

  /** Whether it ends elsewhere now; false also where it does not say. */
  boolean hasMoved() {
    Map<TopicPartition, Long> now = now();
    return !now.isEmpty() && !now.equals(noted);
  }

  /** Offset after the last record by partition; empty where the log does not answer. */
  private Map<TopicPartition, Long> now() {
    try {
      if (partitions.isEmpty()) {
        partitions = partitions();
      }
      Map<TopicPartition, Long> ends = new HashMap<>();
      for (Map.Entry<TopicPartition, ListOffsetsResultInfo> end :
          admin.listOffsets(partitions).all().get().entrySet()) {
        ends.put(end.getKey(), end.getValue().offset());
      }
      return ends;
    } catch (ExecutionException e) {
      LOG.debug("The log does not say where it ends.", e);
      return Map.of();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Map.of();
    }
  }

  private Map<TopicPartition, OffsetSpec> partitions()
      throws ExecutionException, InterruptedException {
    Map<TopicPartition, OffsetSpec> found = new HashMap<>();
    for (TopicDescription topic :
        admin
            .describeTopics(List.of(Topics.EVENTS, Topics.LEDGER))
            .allTopicNames()
            .get()
            .values()) {
      topic
          .partitions()
          .forEach(
              p -> found.put(new TopicPartition(topic.name(), p.partition()), OffsetSpec.latest()));
    }
    return found;
  }

  @Override
  public void close() {
    admin.close(CLOSE_LIMIT);
  }
}
