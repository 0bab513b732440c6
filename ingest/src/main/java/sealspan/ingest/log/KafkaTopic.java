package sealspan.ingest.log;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.Config;
import org.apache.kafka.clients.admin.ConfigEntry;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.admin.TopicDescription;
import org.apache.kafka.common.config.ConfigResource;
import org.apache.kafka.common.errors.AuthorizationException;
import org.apache.kafka.common.errors.TopicExistsException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;

/**
 * A topic that is kept for ever: made when missing, refused when its settings would lose entries.
 *
 * @param name of the topic
 * @param identity tells it from every other topic, also from a later one of the same name
 * @param partitions how many it has
 */
record KafkaTopic(String name, String identity, int partitions) {
  /** Largest record. A quarantined row is cut short far below it. */
  static final int RECORD_MAX_BYTES = 8 << 20;

  private static final int MOST_REPLICAS = 3;
  private static final int KNOWN_LIMIT_SECONDS = 30;

  static KafkaTopic open(KafkaAddress address, String name, int partitions) {
    Map<String, Object> properties =
        address.clientProperties(
            Map.of("request.timeout.ms", 5_000, "default.api.timeout.ms", 10_000));
    try (Admin admin = Admin.create(properties)) {
      TopicDescription found = ifKnown(() -> describe(admin, name));
      if (found == null) {
        create(admin, name, partitions);
        found = awaitKnown(name, () -> ifLed(describe(admin, name)));
      }
      requireKept(name, awaitKnown(name, () -> config(admin, name)));
      String cluster = admin.describeCluster().clusterId().get();
      return new KafkaTopic(name, cluster + "/" + found.topicId(), found.partitions().size());
    } catch (ExecutionException | InterruptedException | org.apache.kafka.common.KafkaException e) {
      throw KafkaTrouble.of("opening " + name, address, e);
    }
  }

  /** A question about the topic to a broker, which may not know it yet. */
  private interface Question<R> {
    R ask() throws ExecutionException, InterruptedException;
  }

  private static <R> R ifKnown(Question<R> question)
      throws ExecutionException, InterruptedException {
    try {
      return question.ask();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UnknownTopicOrPartitionException) {
        return null;
      }
      throw e;
    }
  }

  /** The brokers of a cluster learn of a topic one after the other, and any of them may answer. */
  private static <R> R awaitKnown(String name, Question<R> question)
      throws ExecutionException, InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(KNOWN_LIMIT_SECONDS);
    while (System.nanoTime() < deadline) {
      R answer = ifKnown(question);
      if (answer != null) {
        return answer;
      }
      TimeUnit.MILLISECONDS.sleep(20);
    }
    throw new LogException(
        "Kafka has the topic "
            + name
            + ", but after "
            + KNOWN_LIMIT_SECONDS
            + " s not every broker knows it or a part of it has no leader. See to the brokers, then"
            + " start again.");
  }

  private static TopicDescription describe(Admin admin, String name)
      throws ExecutionException, InterruptedException {
    return admin.describeTopics(List.of(name)).allTopicNames().get().get(name);
  }

  private static TopicDescription ifLed(TopicDescription topic) {
    return topic.partitions().stream().allMatch(p -> p.leader() != null) ? topic : null;
  }

  private static void create(Admin admin, String name, int partitions)
      throws ExecutionException, InterruptedException {
    int replicas = Math.min(MOST_REPLICAS, admin.describeCluster().nodes().get().size());
    NewTopic topic = new NewTopic(name, partitions, (short) replicas).configs(settings(replicas));
    try {
      admin.createTopics(List.of(topic)).all().get();
    } catch (ExecutionException e) {
      if (!(e.getCause() instanceof TopicExistsException)) {
        throw e; // Otherwise another process made it at the same moment.
      }
    }
  }

  /**
   * Durable means: on two machines' replicas where there are three, on disk where there is one. A
   * recorded time may lie ahead of the broker's clock, because it never decreases.
   */
  private static Map<String, String> settings(int replicas) {
    Map<String, String> settings = new HashMap<>();
    settings.put("cleanup.policy", "delete");
    settings.put("retention.ms", "-1");
    settings.put("retention.bytes", "-1");
    settings.put("compression.type", "producer");
    settings.put("message.timestamp.type", "CreateTime");
    settings.put("message.timestamp.after.max.ms", Long.toString(Long.MAX_VALUE));
    settings.put("max.message.bytes", Integer.toString(RECORD_MAX_BYTES));
    settings.put("min.insync.replicas", replicas >= MOST_REPLICAS ? "2" : "1");
    settings.put("unclean.leader.election.enable", "false");
    if (replicas == 1) {
      settings.put("flush.messages", "1");
    }
    return settings;
  }

  private static Config config(Admin admin, String name)
      throws ExecutionException, InterruptedException {
    ConfigResource resource = new ConfigResource(ConfigResource.Type.TOPIC, name);
    try {
      return admin.describeConfigs(List.of(resource)).all().get().get(resource);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof AuthorizationException) {
        return new Config(List.of()); // A user who may not look has to trust who made the topic.
      }
      throw e;
    }
  }

  private static void requireKept(String name, Config config) {
    require(name, config, "cleanup.policy", "delete");
    require(name, config, "retention.ms", "-1");
    require(name, config, "retention.bytes", "-1");
    require(name, config, "message.timestamp.type", "CreateTime");
  }

  private static void require(String name, Config config, String setting, String value) {
    ConfigEntry entry = config.get(setting);
    if (entry != null && !value.equals(entry.value())) {
      throw new LogException(
          "The topic "
              + name
              + " would not keep everything for ever: "
              + setting
              + " is "
              + entry.value()
              + ". Set it to "
              + value
              + " and start again.");
    }
  }
}
