package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.github.dockerjava.api.DockerClient;
import com.github.dockerjava.api.exception.InternalServerErrorException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.kafka.clients.admin.Admin;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.testcontainers.containers.Network;
import org.testcontainers.kafka.KafkaContainer;
import org.testcontainers.lifecycle.Startables;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;

/**
 * A cluster of three brokers in containers. While events go in, a leader is paused, comes back, and
 * another leader is killed: every event that was acknowledged is there.
 */
@BrokerImage.Needed
@Timeout(value = 4, unit = TimeUnit.MINUTES)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ThreeBrokersTest {
  private static final int BATCHES = 60;
  private static final int BATCH = 100;

  private static Network network;
  private static List<KafkaContainer> brokers;
  private static DockerClient docker;

  @TempDir Path index;
  private final Set<String> acknowledged = ConcurrentHashMap.newKeySet();

  @BeforeAll
  static void start() {
    // The engine's own address to bind to holds for its default network only.
    Map<String, String> loopback =
        Map.of("com.docker.network.bridge.host_binding_ipv4", "127.0.0.1");
    network = Network.builder().createNetworkCmdModifier(c -> c.withOptions(loopback)).build();
    String voters =
        IntStream.rangeClosed(1, 3)
            .mapToObj(i -> i + "@broker-" + i + ":9094")
            .collect(Collectors.joining(","));
    brokers = IntStream.rangeClosed(1, 3).mapToObj(i -> broker(i, voters)).toList();
    Startables.deepStart(brokers).join();
    docker = brokers.get(0).getDockerClient();
  }

  private static KafkaContainer broker(int number, String voters) {
    return BrokerImage.container()
        .withNetwork(network)
        .withNetworkAliases("broker-" + number)
        .withEnv("CLUSTER_ID", "4L6g3nShT-eMCtK--X86sw")
        .withEnv("KAFKA_NODE_ID", "" + number)
        .withEnv("KAFKA_CONTROLLER_QUORUM_VOTERS", voters)
        .withEnv("KAFKA_OFFSETS_TOPIC_REPLICATION_FACTOR", "3")
        .withEnv("KAFKA_BROKER_SESSION_TIMEOUT_MS", "6000")
        .withEnv("KAFKA_REPLICA_LAG_TIME_MAX_MS", "6000")
        .withStartupTimeout(Duration.ofSeconds(120));
  }

  @AfterAll
  static void stop() {
    brokers.forEach(KafkaContainer::stop);
    network.close();
  }

  @Test
  @Order(2) // a broker is lost to it
  void everyAcknowledgedEventIsThere() throws Exception {
    CompletableFuture<Void> importing = CompletableFuture.runAsync(this::appendAll);
    awaitBatches(10, importing);
    KafkaContainer paused = leader();
    freeze(paused);
    awaitBatches(batches() + 5, importing);
    docker.unpauseContainerCmd(paused.getContainerId()).exec();
    awaitBatches(batches() + 5, importing);
    KafkaContainer killed = leader();
    docker.killContainerCmd(killed.getContainerId()).exec();
    awaitBatches(batches() + 5, importing);
    importing.get(2, TimeUnit.MINUTES);

    assertEquals(BATCHES * BATCH, acknowledged.size());
    Set<String> read = new HashSet<>();
    try (EventLog log = new KafkaEventLog(address(killed), index.resolve("fresh"))) {
      // A leader that has just come back may not know yet how far its log goes: look again.
      for (int look = 0; look < 60 && !read.containsAll(acknowledged); look++) {
        log.read(Cut.START, log.end(), r -> read.add(r.entry().id()));
        TimeUnit.MILLISECONDS.sleep(500);
      }
    }
    Set<String> lost = new HashSet<>(acknowledged);
    lost.removeAll(read);
    assertEquals(Set.of(), lost);
  }

  /** One broker describes a topic that another has not heard of: both are asked. */
  @Test
  @Order(1)
  void aTopicThatWasJustMadeOpens() {
    Set<String> identities = new HashSet<>();
    for (int i = 0; i < 40; i++) {
      identities.add(KafkaTopic.open(address(null), "just-made-" + i, 4).identity());
    }
    assertEquals(40, identities.size());
  }

  /** As an import does that people start again: what failed is appended again. */
  private void appendAll() {
    try (EventLog log = new KafkaEventLog(address(null), index.resolve("import"))) {
      for (int batch = 0; batch < BATCHES; batch++) {
        List<LoggedEvent> events = SampleEvents.rounds(batch * BATCH, (batch + 1) * BATCH);
        while (!went(log, events)) {
          pause();
        }
        events.forEach(e -> acknowledged.add(e.id()));
        pause();
      }
    }
  }

  private static boolean went(EventLog log, List<LoggedEvent> events) {
    try {
      log.append(events);
      return true;
    } catch (LogException e) {
      assertTrue(e.getMessage().startsWith("Trouble while "), e.getMessage());
      return false;
    }
  }

  private int batches() {
    return acknowledged.size() / BATCH;
  }

  private void awaitBatches(int count, CompletableFuture<Void> importing) {
    while (batches() < Math.min(count, BATCHES) && !importing.isDone()) {
      pause();
    }
    if (importing.isCompletedExceptionally()) {
      importing.join(); // tells what it failed of
    }
    assertTrue(batches() >= Math.min(count, BATCHES), "the import failed");
  }

  /** A busy machine may not get all threads of a container to stand still at the first try. */
  private static void freeze(KafkaContainer broker) {
    for (int tries = 1; ; tries++) {
      try {
        docker.pauseContainerCmd(broker.getContainerId()).exec();
        return;
      } catch (InternalServerErrorException e) {
        if (tries == 20) {
          throw e;
        }
        pause();
      }
    }
  }

  private static KafkaContainer leader() throws Exception {
    try (Admin admin =
        Admin.create(Map.of("bootstrap.servers", address(null).bootstrapServers()))) {
      int id =
          admin
              .describeTopics(List.of(Topics.EVENTS))
              .allTopicNames()
              .get()
              .get(Topics.EVENTS)
              .partitions()
              .get(0)
              .leader()
              .id();
      return brokers.get(id - 1);
    }
  }

  private static KafkaAddress address(KafkaContainer without) {
    return new KafkaAddress(
        brokers.stream()
            .filter(b -> b != without)
            .map(KafkaContainer::getBootstrapServers)
            .collect(Collectors.joining(",")));
  }

  private static void pause() {
    try {
      TimeUnit.MILLISECONDS.sleep(100);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
