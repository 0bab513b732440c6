package sealspan.jobs;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.common.KafkaFuture;
import org.apache.kafka.common.errors.GroupIdNotFoundException;
import org.apache.kafka.common.errors.TopicExistsException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import sealspan.event.Topics;
import sealspan.table.ResultTopics;

/** Makes the topics that a job writes to, since the sink makes none, and takes them away again. */
final class TopicSetup {
  private static final Map<String, String> NEWEST_PER_KEY =
      Map.of(
          "cleanup.policy", "compact",
          "max.message.bytes", String.valueOf(LogConnections.LARGEST_RECORD_BYTES),
          "segment.bytes", String.valueOf(256 << 20));

  private TopicSetup() {}

  /**
   * Makes the result topics of the generation where they are missing.
   *
   * @throws JobException when the log does not answer or refuses
   */
  static void make(JobSettings job) {
    try (Admin admin = Admin.create(job.clients())) {
      int partitions =
          admin
              .describeTopics(List.of(Topics.EVENTS))
              .allTopicNames()
              .get()
              .get(Topics.EVENTS)
              .partitions()
              .size();
      make(admin, ResultTopics.rows(job.generation()), partitions);
      make(admin, ResultTopics.fits(job.generation()), 1);
    } catch (ExecutionException e) {
      throw cannotUse(job, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new JobException("Stopped while the topics were being made.", e);
    }
  }

  /**
   * Whether the log has results under the name of the generation.
   *
   * @throws JobException when the log does not answer or refuses
   */
  static boolean isThere(JobSettings job) {
    try (Admin admin = Admin.create(job.clients())) {
      return admin.listTopics().names().get().contains(ResultTopics.rows(job.generation()));
    } catch (ExecutionException e) {
      throw cannotUse(job, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new JobException("Stopped while the topics were being looked at.", e);
    }
  }

  /**
   * Deletes the result topics of a generation that is out of use, and its consumer group.
   *
   * @throws JobException when the log does not answer or refuses
   */
  static void delete(JobSettings job) {
    String generation = job.generation();
    List<String> topics = List.of(ResultTopics.rows(generation), ResultTopics.fits(generation));
    try (Admin admin = Admin.create(job.clients())) {
      for (String topic : topics) {
        unlessMissing(admin.deleteTopics(List.of(topic)).all());
      }
      unlessMissing(
          admin.deleteConsumerGroups(List.of(ResultTopics.historiesGroup(generation))).all());
    } catch (ExecutionException e) {
      throw cannotUse(job, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new JobException("Stopped while topics were being deleted.", e);
    }
  }

  private static void unlessMissing(KafkaFuture<Void> deleted)
      throws ExecutionException, InterruptedException {
    try {
      deleted.get();
    } catch (ExecutionException e) {
      if (!(e.getCause() instanceof UnknownTopicOrPartitionException
          || e.getCause() instanceof GroupIdNotFoundException)) {
        throw e;
      }
    }
  }

  private static JobException cannotUse(JobSettings job, ExecutionException e) {
    return new JobException(
        "The log at %s cannot be used: %s"
            .formatted(job.bootstrapServers(), e.getCause().getMessage()),
        e);
  }

  private static void make(Admin admin, String name, int partitions)
      throws ExecutionException, InterruptedException {
    NewTopic topic =
        new NewTopic(name, Optional.of(partitions), Optional.empty()).configs(NEWEST_PER_KEY);
    try {
      admin.createTopics(List.of(topic)).all().get();
    } catch (ExecutionException e) {
      if (!(e.getCause() instanceof TopicExistsException)) {
        throw e;
      }
    }
  }
}
