package sealspan.app.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.app.engine.DataFolder;
import sealspan.app.engine.EngineDoor;
import sealspan.ingest.log.BrokerClassPath;

/**
 * A Kafka that asks for a user and a password: what the properties file says reaches the clients of
 * the log, of the jobs and of the writer, for each of them is needed until a question is answered.
 */
@Timeout(value = 8, unit = TimeUnit.MINUTES)
class OwnKafkaWithPasswordTest {
  private static final Path HOME = Path.of(System.getProperty("sealspan.home"));

  @TempDir Path data;
  @TempDir Path elsewhere;

  @Test
  void isUsedWithTheCredentialsOfTheFileAndWithNoOther() throws Exception {
    BrokerClassPath jars =
        BrokerClassPath.ofFolder(Path.of(System.getProperty("sealspan.broker.lib")));
    try (PasswordBroker theirs = PasswordBroker.start(elsewhere, jars)) {
      Typed started = start(theirs, PasswordBroker.PASSWORD);
      assertEquals(ExitCode.DONE, started.code(), started.toString());
      Typed imported =
          Typed.at(
              data, "import", HOME.resolve("sample-events").resolve("events.jsonl").toString());
      assertEquals(ExitCode.DONE, imported.code(), imported.toString());
      assertTrue(
          Typed.at(data, "ask", "history", "--assembly", "NH-01").out().contains("installed"));
      assertEquals(ExitCode.DONE, Typed.at(data, "stop").code());

      Typed refused = start(theirs, "wrong");
      assertEquals(ExitCode.FAILED, refused.code());
      assertTrue(
          refused
              .err()
              .contains(
                  "Kafka at "
                      + theirs.address()
                      + " did not accept the credentials. Check the client properties."),
          refused.toString());
      assertFalse(new EngineDoor(new DataFolder(data)).running().isPresent());
    } finally {
      Typed.at(data, "stop");
    }
  }

  private Typed start(PasswordBroker theirs, String password) throws IOException {
    Path file =
        Files.writeString(elsewhere.resolve("client.properties"), theirs.clientSettings(password));
    return Typed.at(data, "start", "--kafka-properties", file.toString());
  }
}
