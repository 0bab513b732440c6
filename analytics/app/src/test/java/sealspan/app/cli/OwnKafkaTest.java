package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.ingest.log.BrokerClassPath;
import sealspan.ingest.log.BrokerSettings;
import sealspan.ingest.log.BrokerState;
import sealspan.ingest.log.LocalBroker;
import sealspan.table.ResultTopics;

/** A record that is kept on a Kafka of the user's own: here another broker on this machine. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class OwnKafkaTest {
  private static final Path HOME = Path.of(System.getProperty("sealspan.home"));

  @TempDir Path data;
  @TempDir Path another;
  @TempDir Path elsewhere;

  @Test
  void isUsedInsteadOfABrokerOfOurs() throws Exception {
    BrokerClassPath jars =
        BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")));
    try (LocalBroker theirs = LocalBroker.start(new BrokerSettings(elsewhere, jars))) {
      Typed started = Typed.at(data, "start", "--kafka", theirs.bootstrapServers());
      assertEquals(ExitCode.DONE, started.code(), started.toString());
      assertTrue(started.out().contains("log at " + theirs.bootstrapServers()));
      assertEquals(Optional.empty(), BrokerState.read(data));
      assertEquals(
          "rw-------",
          PosixFilePermissions.toString(
              Files.getPosixFilePermissions(data.resolve("kafka.properties"))));

      assertAnswers(data, "generation 1");
      assertEquals(ExitCode.DONE, Typed.at(data, "stop").code());
      assertTrue(theirs.trouble().isEmpty(), "the user's broker goes on");

      Typed second = Typed.at(another, "start", "--kafka", theirs.bootstrapServers());
      assertEquals(ExitCode.DONE, second.code(), second.toString());
      assertAnswers(another, "generation 2"); // The first is another folder's, in the same log.
      assertEquals(ExitCode.DONE, Typed.at(another, "stop").code());

      assertEquals(ExitCode.DONE, Typed.at(data, "start").code());
      Typed rebuilt = Typed.at(data, "rebuild");
      assertEquals(ExitCode.DONE, rebuilt.code(), rebuilt.toString());
      assertAnswers(data, "generation 3");
      Set<String> topics = topics(theirs.bootstrapServers());
      assertTrue(topics.contains(ResultTopics.rows("g2")), "another folder's stay: " + topics);
      assertFalse(topics.contains(ResultTopics.rows("g1")), "its own old ones go: " + topics);
    } finally {
      Typed.at(data, "stop");
      Typed.at(another, "stop");
    }
  }

  private static Set<String> topics(String bootstrapServers) throws Exception {
    try (Admin admin = Admin.create(Map.of("bootstrap.servers", bootstrapServers))) {
      return admin.listTopics().names().get();
    }
  }

  private static void assertAnswers(Path folder, String generation) {
    String events = HOME.resolve("sample-events").resolve("events.jsonl").toString();
    Typed imported = Typed.at(folder, "import", events);
    assertEquals(ExitCode.DONE, imported.code(), imported.toString());
    assertTrue(
        Typed.at(folder, "ask", "history", "--assembly", "NH-01").out().contains("installed"));
    Typed status = Typed.at(folder, "status");
    assertTrue(status.out().contains(generation + ","), status.toString());
  }

  @Test
  void thatDoesNotAnswerIsNamed() {
    Typed started = Typed.at(data, "start", "--kafka", "127.0.0.1:1");
    assertEquals(ExitCode.FAILED, started.code());
    assertTrue(started.err().contains("127.0.0.1:1"), started.toString());
    assertFalse(new EngineDoor(new DataFolder(data)).running().isPresent());
    Typed nonsense = Typed.at(data, "start", "--kafka", "nonsense");
    assertTrue(nonsense.err().contains("'nonsense' is no address of a Kafka broker: HOST:PORT."));
  }

  @Test
  void settingsOfTheFileReachTheClients() throws IOException {
    Path file =
        Files.writeString(
            data.resolve("settings"),
            "bootstrap.servers=127.0.0.1:1\nsecurity.protocol=NO_SUCH_PROTOCOL\n");
    Typed started = Typed.at(data, "start", "--kafka-properties", file.toString());
    assertEquals(ExitCode.FAILED, started.code());
    assertTrue(started.err().contains("NO_SUCH_PROTOCOL"), started.toString());
    assertTrue(started.err().contains("Check the address and the client properties."));
  }
}
