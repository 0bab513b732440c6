package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.Config;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.common.config.ConfigResource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(value = 5, unit = TimeUnit.MINUTES)
class LocalBrokerTest {
  static final BrokerClassPath JARS =
      BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")));

  @TempDir Path folder;

  @Test
  void servesOnLoopbackFlushesEveryAppendAndKeepsEverything() throws Exception {
    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS));
        Admin admin = admin(broker)) {
      ConfigResource node = new ConfigResource(ConfigResource.Type.BROKER, "1");
      Config config = admin.describeConfigs(List.of(node)).all().get().get(node);

      assertEquals("1", config.get("log.flush.interval.messages").value());
      assertEquals("-1", config.get("log.retention.ms").value());
      assertEquals("-1", config.get("log.retention.bytes").value());
      assertTrue(config.get("listeners").value().startsWith("PLAINTEXT://127.0.0.1:"));
      assertEquals(Optional.empty(), broker.trouble());
      assertEquals(Optional.of(broker.state()), BrokerState.read(folder));
      assertTrue(broker.state().process(folder).isPresent());
    }
  }

  @Test
  void keepsPortAndTopicsOverACleanStop() throws Exception {
    int port;
    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS));
        Admin admin = admin(broker)) {
      port = broker.state().port();
      admin.createTopics(List.of(new NewTopic("kept", 2, (short) 1))).all().get();
    }
    assertEquals(Optional.empty(), BrokerState.read(folder), "a stopped broker leaves no state");

    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS).withPort(port));
        Admin admin = admin(broker)) {
      assertEquals(port, broker.state().port());
      assertTrue(admin.listTopics().names().get().contains("kept"));
    }
  }

  @Test
  void refusesASecondBrokerOnTheSameFolder() {
    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS))) {
      LogException e =
          assertThrows(
              LogException.class, () -> LocalBroker.start(new BrokerSettings(folder, JARS)));
      assertTrue(e.getMessage().contains("already runs the broker of"), e.getMessage());
      assertEquals(Optional.empty(), broker.trouble());
    }
  }

  @Test
  void endsTheBrokerThatAKilledParentLeftBehind() throws Exception {
    Process parent =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dsealspan.broker.lib=" + System.getProperty("sealspan.broker.lib"),
                "-cp",
                System.getProperty("java.class.path"),
                Parent.class.getName(),
                folder.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("parent.out").toFile())
            .start();
    ProcessHandle orphan = awaitReady(parent);
    parent.destroyForcibly().waitFor();
    assertTrue(orphan.isAlive(), "the broker outlives its parent");

    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS))) {
      assertFalse(orphan.isAlive());
      assertNotEquals(orphan.pid(), broker.state().pid());
    }
  }

  @Test
  void leavesAStrangerWithTheSameProcessNumberAlone() throws IOException {
    ProcessHandle self = ProcessHandle.current();
    BrokerFolder f = new BrokerFolder(folder);
    Files.createDirectories(f.folder());
    new BrokerState(self.pid(), self.info().startInstant().orElseThrow().minusSeconds(60), 1, 2)
        .write(f);

    assertEquals(Optional.empty(), BrokerState.read(folder).orElseThrow().process(folder));
  }

  @Test
  void saysWhyItIsGoneWhenKilled() {
    try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS))) {
      ProcessHandle process = broker.state().process(folder).orElseThrow();
      CompletableFuture<String> told = new CompletableFuture<>();
      broker.whenGone(told::complete);
      assertFalse(told.isDone());
      process.destroyForcibly();
      assertEquals(told.join(), broker.trouble().orElseThrow());
      assertTrue(broker.trouble().orElseThrow().contains("stopped by itself"));
    }
  }

  @Test
  void namesATakenPort() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      BrokerSettings settings = new BrokerSettings(folder, JARS).withPort(taken.getLocalPort());
      LogException e = assertThrows(LogException.class, () -> LocalBroker.start(settings));
      assertTrue(e.getMessage().startsWith("Port " + taken.getLocalPort() + " on 127.0.0.1 is in"));
    }
  }

  @Test
  void namesAFolderThatCannotBeWritten() throws IOException {
    Path file = Files.createFile(folder.resolve("a-file"));
    BrokerSettings settings = new BrokerSettings(file.resolve("data"), JARS);
    LogException e = assertThrows(LogException.class, () -> LocalBroker.start(settings));
    assertTrue(e.getMessage().contains("cannot be made or written"), e.getMessage());
    assertTrue(e.getMessage().contains("Choose another data folder"), e.getMessage());
  }

  @Test
  void showsTheLastLinesOfABrokerThatDiedAtStart() {
    BrokerSettings settings =
        new BrokerSettings(
            folder,
            new BrokerClassPath(List.of(Path.of("/nowhere/kafka_2.13-0.jar"))),
            OptionalInt.empty(),
            256,
            Duration.ofMinutes(1));
    LogException e = assertThrows(LogException.class, () -> LocalBroker.start(settings));
    assertTrue(e.getMessage().contains("A jar of the broker is missing"), e.getMessage());
    assertTrue(e.getMessage().contains("Its last lines:\n  "), e.getMessage());
  }

  @Test
  void namesMissingJars() {
    LogException e = assertThrows(LogException.class, () -> BrokerClassPath.ofFolder(folder));
    assertTrue(e.getMessage().startsWith("The jars of the Kafka broker are missing"));
    assertTrue(e.getMessage().contains(folder.toString()));
  }

  private ProcessHandle awaitReady(Process parent) throws Exception {
    while (!Files.exists(folder.resolve("ready"))) {
      assertTrue(parent.isAlive(), () -> String.join("\n", lines(folder.resolve("parent.out"))));
      TimeUnit.MILLISECONDS.sleep(50);
    }
    return BrokerState.read(folder).flatMap(s -> s.process(folder)).orElseThrow();
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException e) {
      return List.of(e.toString());
    }
  }

  private static Admin admin(LocalBroker broker) {
    return Admin.create(Map.of("bootstrap.servers", broker.bootstrapServers()));
  }

  /** A program that starts a broker and then waits to be killed. */
  static final class Parent {
    private Parent() {}

    public static void main(String[] args) throws Exception {
      Path folder = Path.of(args[0]);
      try (LocalBroker broker = LocalBroker.start(new BrokerSettings(folder, JARS))) {
        Files.createFile(folder.resolve("ready"));
        TimeUnit.MINUTES.sleep(5);
        assertTrue(broker.trouble().isEmpty());
      }
    }
  }
}
