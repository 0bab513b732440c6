package sealspan.jobs;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Properties;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.KafkaFuture;
import org.apache.kafka.common.TopicPartition;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Commits offsets of a group, one commit after the other. One that fails is logged, and made good
 * by the next.
 */
final class OffsetCommits implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(OffsetCommits.class);
  private static final Duration CLOSE_LIMIT = Duration.ofSeconds(2);

  private final Admin admin;
  private final String group;
  private final Map<TopicPartition, OffsetAndMetadata> committed = new HashMap<>();
  private Map<TopicPartition, OffsetAndMetadata> underWay = Map.of();
  private KafkaFuture<Void> answer = KafkaFuture.completedFuture(null);

  OffsetCommits(Properties clients, String group) {
    this.admin = Admin.create(clients);
    this.group = group;
  }

  /** Commits those offsets that have changed, unless a commit is still under way. */
  void commit(Map<TopicPartition, OffsetAndMetadata> offsets) {
    if (!answer.isDone()) {
      return;
    }
    if (!answer.isCompletedExceptionally()) {
      committed.putAll(underWay);
    }
    Map<TopicPartition, OffsetAndMetadata> changed = new HashMap<>(offsets);
    changed.entrySet().removeAll(committed.entrySet());
    underWay = changed;
    if (changed.isEmpty()) {
      answer = KafkaFuture.completedFuture(null);
      return;
    }
    answer = admin.alterConsumerGroupOffsets(group, changed).all();
    answer.whenComplete(
        (done, failure) -> {
          if (failure != null) {
            LOG.warn("The offsets {} of group {} were not committed.", changed, group, failure);
          }
        });
  }

  @Override
  public void close() {
    admin.close(CLOSE_LIMIT);
  }
}
