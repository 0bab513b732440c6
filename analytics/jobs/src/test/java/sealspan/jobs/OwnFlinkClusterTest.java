package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.jobs.SameTables.assertSame;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.table.ResultTopics;

/** The same jobs on a stand-alone cluster, one of whose two task managers is killed. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class OwnFlinkClusterTest {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  @TempDir Path folder;

  @Test
  void givesTheSameTablesWhenATaskManagerIsKilledInTheMiddle() throws Exception {
    Path jar = folder.resolve("sealspan-job.jar");
    JobJar.write(jar, System.getProperty("java.class.path"));
    List<LoggedEvent> events = SomeEvents.of(41, 60);
    int third = events.size() / 3;
    try (LogUnderTest log = new LogUnderTest(folder.resolve("log"));
        OwnFlinkCluster flink = new OwnFlinkCluster(folder.resolve("flink"), 2, 4)) {
      log.append(events.subList(0, third));
      Path properties =
          Files.writeString(
              folder.resolve("kafka.properties"), "client.dns.lookup=use_all_dns_ips\n");
      List<String> common =
          List.of(
              "--kafka",
              log.bootstrapServers(),
              "--kafka-properties",
              properties.toString(),
              "--generation",
              "own",
              "--parallelism",
              "2");
      List<String> histories =
          new ArrayList<>(List.of("-d", "-c", HistoriesMain.class.getName(), jar.toString()));
      histories.addAll(common);
      histories.addAll(List.of("--checkpoints", folder.resolve("checkpoints").toUri().toString()));
      flink.run(histories.toArray(String[]::new));
      log.awaitComplete("own", Optional::empty);
      assertSame(batch(events.subList(0, third)), log.bundles(ResultTopics.rows("own")));

      log.append(events.subList(third, 2 * third));
      flink.killTaskManager(0);
      log.append(events.subList(2 * third, events.size()));
      log.awaitComplete("own", Optional::empty);
      assertSame(batch(events), log.bundles(ResultTopics.rows("own")));

      FitCut cut = new FitCut(log.end(), log.end(), Instant.EPOCH, 1);
      List<String> fitting =
          new ArrayList<>(List.of("-c", FittingMain.class.getName(), jar.toString()));
      fitting.addAll(common);
      fitting.addAll(
          List.of("--cut", cut.offsets(), "--newest-recorded-at", "1970-01-01T00:00:00Z"));
      flink.run(fitting.toArray(String[]::new));
      log.awaitComplete("own", Optional::empty);
      List<sealspan.table.Bundle> expected = BatchTables.of(events, events, CRITERIA, cut);
      LogUnderTest.until(
          () ->
              SameTables.bytes(expected)
                  .equals(SameTables.bytes(log.bundles(ResultTopics.rows("own")).values())));
      assertSame(expected, log.bundles(ResultTopics.rows("own")));
    }
  }

  private static List<sealspan.table.Bundle> batch(List<LoggedEvent> events) {
    return BatchTables.of(events, List.of(), CRITERIA, null);
  }

  @Test
  void namesWhatIsWrongWithAnArgument() {
    assertTrue(said("--kafak", "x").contains("knows no argument --kafak"));
    assertTrue(said("--kafka").contains("--kafka needs a value"));
    assertTrue(said("--generation", "g1").contains("Where is the log?"));
    assertTrue(said("--kafka", "a:1").contains("--generation is missing"));
    assertTrue(
        said("--kafka", "a:1", "--kafka-properties", "/no/file").contains("no file /no/file"));
    assertTrue(
        said("--kafka", "a:1", "--generation", "g1", "--parallelism", "two")
            .contains("--parallelism is a whole number from 1, not 'two'"));
  }

  private static String said(String... arguments) {
    return assertThrows(JobException.class, () -> HistoriesMain.main(arguments)).getMessage();
  }

  @Test
  void givesEveryClientTheSettingsOfTheFile() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("kafka.properties"),
            "bootstrap.servers=a:1\nsecurity.protocol=SASL_SSL\nssl.truststore.type=PEM\n");
    String[] arguments = {"--kafka-properties", file.toString(), "--generation", "g1"};
    JobSettings job = new JobArguments(arguments, java.util.Set.of()).settings();
    assertEquals("a:1", job.bootstrapServers());
    assertEquals(
        Map.of(
            "bootstrap.servers", "a:1",
            "security.protocol", "SASL_SSL",
            "ssl.truststore.type", "PEM"),
        job.clients());
  }
}
