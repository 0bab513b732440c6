package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.LoggedEvent;

/** The log on a broker that is a child process. */
class LocalBrokerLogTest extends KafkaLogContract {
  private static LocalBroker broker;
  @TempDir static Path dataFolder;

  @BeforeAll
  static void start() {
    broker = LocalBroker.start(new BrokerSettings(dataFolder, LocalBrokerTest.JARS));
  }

  @AfterAll
  static void stop() {
    broker.close();
  }

  @Override
  String bootstrapServers() {
    return broker.bootstrapServers();
  }

  @Test
  void aQuestionForTheEndCanBeBrokenOff() {
    try (KafkaEventLog log =
        new KafkaEventLog(new KafkaAddress(bootstrapServers()), dataFolder.resolve("given-up"))) {
      Cut end = log.end();
      log.giveUp();
      assertThrows(LogException.class, log::end);
      assertEquals(end, log.end(), "only one is broken off");
    }
  }

  @Test
  void keepsEverythingAcknowledgedWhenTheBrokerIsKilled() {
    List<LoggedEvent> events = SampleEvents.rounds(0, 20_000);
    try (EventLog log = events(InstantSource.system())) {
      log.append(events);
      restartAfterKill();
      assertEquals(ids(events), ids(log, Cut.START, log.end()));
      log.append(SampleEvents.rounds(20_000, 20_100));
      assertEquals(20_100, ids(log, Cut.START, log.end()).size());
    }
  }

  @Test
  void keepsEverythingAcknowledgedWhenTheBrokerIsKilledInTheMiddle() {
    List<String> acknowledged = new ArrayList<>();
    CompletableFuture<Void> kill = new CompletableFuture<>();
    try (EventLog log = events(InstantSource.system())) {
      for (int at = 0; at < 40_000; at += 1_000) {
        if (at == 15_000) {
          CompletableFuture.runAsync(this::restartAfterKill)
              .whenComplete(
                  (done, e) -> {
                    if (e == null) {
                      kill.complete(done);
                    } else {
                      kill.completeExceptionally(e);
                    }
                  });
        }
        log.append(SampleEvents.rounds(at, at + 1_000))
            .forEach(r -> acknowledged.add(appended(r).entry().id()));
      }
      kill.join();
      Set<String> there = ids(log, Cut.START, log.end());
      assertEquals(40_000, acknowledged.size());
      assertTrue(there.containsAll(acknowledged));
      assertEquals(40_000, there.size());
    }
  }

  @Test
  void saysWhenNobodyAnswers() throws IOException {
    int port = Ports.free(0);
    LogException e =
        assertThrows(
            LogException.class,
            () -> new KafkaEventLog(new KafkaAddress("127.0.0.1:" + port), dataFolder));
    assertTrue(e.getMessage().contains("no answer from Kafka at 127.0.0.1:" + port));
    LogException malformed =
        assertThrows(
            LogException.class, () -> new KafkaEventLog(new KafkaAddress("nonsense"), dataFolder));
    assertTrue(malformed.getMessage().contains("nonsense"), malformed.getMessage());
  }

  private synchronized void restartAfterKill() {
    int port = broker.state().port();
    ProcessHandle process = broker.state().process(dataFolder).orElseThrow();
    process.destroyForcibly();
    process.onExit().join();
    broker.close();
    assertFalse(process.isAlive());
    broker = LocalBroker.start(new BrokerSettings(dataFolder, LocalBrokerTest.JARS).withPort(port));
  }
}
