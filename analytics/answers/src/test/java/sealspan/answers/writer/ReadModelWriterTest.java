package sealspan.answers.writer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.Answers;
import sealspan.answers.AnswersFolder;
import sealspan.answers.HandMade;
import sealspan.answers.HandMadeEvents;
import sealspan.answers.OpenSnapshot;
import sealspan.answers.Questions;
import sealspan.event.LoggedEvent;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.QuarantinedRow;
import sealspan.table.ResultTopics;

/** The writer against a real broker and real files. Each test has a generation of its own. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class ReadModelWriterTest {
  private static final Duration OFTEN = Duration.ofMillis(50);

  @TempDir static Path brokerFolder;
  private static TestLog log;

  @TempDir Path folder;

  @BeforeAll
  static void start() throws Exception {
    log = new TestLog(brokerFolder);
    List<LoggedEvent> events = HandMadeEvents.all();
    log.event(events.get(0), 1);
    log.event(events.get(1), 0);
    log.event(events.get(2), 0);
    HandMade.quarantined().forEach(ReadModelWriterTest::quarantine);
    log.ledger(HandMade.ledger().get(0));
  }

  private static void quarantine(QuarantinedRow row) {
    try {
      log.quarantined(row);
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  @AfterAll
  static void stop() {
    log.close();
  }

  /** A writer in its thread, and the snapshots that it publishes. */
  private static final class Running implements AutoCloseable {
    private final BlockingQueue<Path> published = new LinkedBlockingQueue<>();
    private final ReadModelWriter writer;
    private final Thread thread;

    Running(Path folder, String generation) {
      writer =
          new ReadModelWriter(
              new WriterSettings(
                  folder, log.bootstrapServers(), generation, "test", OFTEN, Map.of()),
              published::add);
      thread = new Thread(writer, "writer " + generation);
      thread.start();
    }

    /** Waits for a snapshot of which a query gives a text. */
    void awaitText(String sql, String expected) throws Exception {
      List<String> seen = new ArrayList<>();
      while (true) {
        Path snapshot = published.poll(60, TimeUnit.SECONDS);
        assertTrue(snapshot != null, () -> expected + " was awaited; " + seen + writer.trouble());
        // Only the newest is certain to be there still.
        if (published.isEmpty()) {
          seen.add(text(snapshot, sql));
          if (seen.get(seen.size() - 1).equals(expected)) {
            return;
          }
        }
      }
    }

    /** Checks that no snapshot appears although there is time enough for many. */
    void awaitNothing() throws InterruptedException {
      published.clear();
      assertEquals(null, published.poll(3, TimeUnit.SECONDS));
    }

    String awaitTrouble() throws InterruptedException {
      while (writer.trouble().isEmpty()) {
        TimeUnit.MILLISECONDS.sleep(20);
      }
      return writer.trouble().get();
    }

    @Override
    public void close() throws InterruptedException {
      writer.stop();
      thread.join(30_000);
      assertFalse(thread.isAlive());
    }
  }

  private static String text(Path snapshot, String sql) throws Exception {
    try (Connection connection = OpenSnapshot.readOnly(snapshot);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }

  private static final String CUT =
      "select string_agg(\"partition\" || ':' || next_offset, ',' order by \"partition\") from cut";

  @Test
  void publishesTheCutThatTheHistoriesHaveReached() throws Exception {
    log.makeRowsTopic("cut");
    try (Running running = new Running(folder, "cut")) {
      running.awaitText(CUT, "0:0,1:0");
      log.rows("cut", HandMade.bundles());
      log.commit("cut", 1, 1);
      running.awaitText(CUT, "0:1,1:1");
      try (Answers answers = Answers.open(folder)) {
        assertEquals(
            2, answers.ask(Questions.named("worst-sites"), Map.of()).table().rows().size());
        assertEquals(
            "2 events, the newest recorded 2024-01-05T09:00:00Z (offsets 0:1,1:1)",
            answers.ask(Questions.named("worst-sites"), Map.of()).asOf(),
            "the third event is in the log, but after the cut");
      }
      assertEquals(
          "3",
          text(new AnswersFolder(folder).newestSnapshot(), "select count(*) from own.event"),
          "an event is there before the cut says so: rows of it may be shown");
      log.commit("cut", 2, 1);
      running.awaitText(CUT, "0:2,1:1");
      running.awaitNothing();
    }
    Path snapshot = new AnswersFolder(folder).newestSnapshot();
    assertEquals("3", text(snapshot, "select count(*) from quarantined where puts_right is null"));
    assertEquals("CUT_FITTED", text(snapshot, "select kind from ledger"));
    assertEquals("3", text(snapshot, "select sum(events) from event_sum"));
    assertEquals(
        "cut test", text(snapshot, "select generation || ' ' || code_version from publication"));
    assertEquals(
        "failures a year, drawn towards assemblies like it",
        text(
            snapshot,
            "select comment from duckdb_columns() where table_name = 'rate' and column_name ="
                + " 'shrunk_per_year'"));
  }

  @Test
  void aBundleReplacesTheOneBeforeAndAnOlderOneIsIgnored() throws Exception {
    log.makeRowsTopic("replace");
    log.rows("replace", List.of(HandMade.a1(), HandMade.a2()));
    String marks =
        "select string_agg(event_id || ' ' || phase, ', ' order by event_id) from test"
            + " where assembly_id = 'A1'";
    try (Running running = new Running(folder, "replace")) {
      running.awaitText("select count(*) from test", "7");
      AssemblyRows a1 = HandMade.a1();
      log.rows("replace", List.of(withTests(a1, 8, 1)));
      running.awaitText(marks, "t1 AS_FOUND");
      log.rows("replace", List.of(withTests(a1, 7, 4), withTests(a1, 8, 2)));
      running.awaitText(marks, "t1 AS_FOUND, t2 AS_FOUND");
      log.rows("replace", List.of(withTests(a1, 3, 4), HandMade.a3()));
      running.awaitText("select count(*) from assembly", "3");
      Path snapshot = new AnswersFolder(folder).newestSnapshot();
      assertEquals("t1 AS_FOUND, t2 AS_FOUND", text(snapshot, marks));
      assertEquals("5", text(snapshot, "select count(*) from test"));
    }
  }

  private static AssemblyRows withTests(AssemblyRows rows, long revision, int tests) {
    return new AssemblyRows(
        rows.assemblyId(),
        revision,
        rows.assembly(),
        rows.tests().subList(0, tests),
        rows.readings(),
        rows.exposures(),
        rows.repairs(),
        rows.seals(),
        rows.findings(),
        rows.jobs(),
        rows.occurrences(),
        rows.rate(),
        rows.repairEpisodes(),
        rows.levels(),
        rows.forecast(),
        rows.frozenForecasts());
  }

  @Test
  void goesOnExactlyWhereAKilledWriterStopped() throws Exception {
    log.makeRowsTopic("kill");
    String sums =
        "select count(*) || ' ' || count(distinct bundle_key) || ' ' || sum(events) from assembly";
    Process child = null;
    for (int round = 0; round < 4; round++) {
      log.rows("kill", fleet(200, round));
      child = KilledWriter.start(folder, log.bootstrapServers(), "kill");
      KilledWriter.awaitSnapshots(child, 1);
      log.rows("kill", fleet(200, round + 1));
      TimeUnit.MILLISECONDS.sleep(20L * round);
      child.destroyForcibly().waitFor();
    }
    log.commit("kill", 2, 1);
    try (Running running = new Running(folder, "kill")) {
      running.awaitText(CUT, "0:2,1:1");
    }
    Path snapshot = new AnswersFolder(folder).newestSnapshot();
    assertEquals("200 200 1000", text(snapshot, sums));
    assertEquals("3", text(snapshot, "select count(*) from own.event"));
    assertEquals("3", text(snapshot, "select count(*) from quarantined where puts_right is null"));
  }

  /** Assemblies whose revision and number of events is that of the round. */
  private static List<Bundle> fleet(int size, int round) {
    List<Bundle> bundles = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      bundles.add(Fleets.assembly("B" + i, round + 1, round + 1));
    }
    return bundles;
  }

  @Test
  void anotherGenerationWaitsUntilItHasAllThatWasThere() throws Exception {
    log.makeRowsTopic("old");
    log.rows("old", List.of(HandMade.a1()));
    log.commit("old", 2, 1);
    String generation = "select generation from publication";
    try (Running running = new Running(folder, "old")) {
      running.awaitText(CUT, "0:2,1:1");
    }
    log.makeRowsTopic("new");
    log.commit("new", 1, 0);
    log.rows("new", List.of(HandMade.a1(), HandMade.a2()));
    try (Running running = new Running(folder, "new")) {
      running.awaitNothing();
      assertEquals("old", text(new AnswersFolder(folder).newestSnapshot(), generation));
      log.commit("new", 2, 1);
      running.awaitText(generation, "new");
    }
    assertEquals(
        "2", text(new AnswersFolder(folder).newestSnapshot(), "select count(*) from assembly"));
    try (Running running = new Running(folder, "new")) {
      running.awaitText(generation, "new");
    }
    assertFalse(Files.exists(new AnswersFolder(folder).privateFile("old")));
  }

  @Test
  void aLargeGenerationThatWaitsLiesInLayersAlready() throws Exception {
    log.makeRowsTopic("shown");
    log.rows("shown", List.of(HandMade.a1()));
    log.commit("shown", 2, 1);
    try (Running running = new Running(folder, "shown")) {
      running.awaitText(CUT, "0:2,1:1");
    }
    log.makeRowsTopic("held");
    log.commit("held", 1, 0);
    log.rows("held", fleet(12_000, 1));
    AnswersFolder answers = new AnswersFolder(folder);
    Path first = answers.layers("held").resolve("layer-000001.duckdb");
    try (Running running = new Running(folder, "held")) {
      while (!Files.exists(first)) {
        assertEquals("", running.writer.trouble().orElse(""));
        TimeUnit.MILLISECONDS.sleep(20);
      }
      assertEquals("shown", text(answers.newestSnapshot(), "select generation from publication"));
      log.rows("held", fleet(100, 2));
      log.commit("held", 2, 1);
      running.awaitText(
          "select count(*) || ' ' || sum(events) from assembly", "12000 " + (11_900 * 2 + 100 * 3));
    }
  }

  @Test
  void saysWhatIsWrongAndGoesOnWhenItIsPutRight() throws Exception {
    log.makeRowsTopic("trouble");
    Path answers = Files.createFile(folder.resolve("answers"));
    try (Running running = new Running(folder, "trouble")) {
      String said = running.awaitTrouble();
      assertTrue(said.contains(answers.toString()), said);
      assertTrue(said.contains("Nothing is lost"), said);
      Files.delete(answers);
      log.rows("trouble", List.of(HandMade.a1()));
      running.awaitText("select count(*) from assembly", "1");
      assertTrue(running.writer.trouble().isEmpty());
    }
  }

  @Test
  void namesTheRecordThatCannotBeRead() throws Exception {
    log.makeRowsTopic("damaged");
    log.raw(ResultTopics.rows("damaged"), new byte[] {1, 2, 3});
    try (Running running = new Running(folder, "damaged")) {
      String said = running.awaitTrouble();
      assertTrue(
          said.matches("(?s)The record at offset 0 of sealspan.rows.damaged-[01] cannot.*"), said);
    }
  }

  @Test
  void aSecondWriterLeavesTheFolderAlone() throws Exception {
    log.makeRowsTopic("twice");
    try (Running first = new Running(folder, "twice")) {
      first.awaitText("select count(*) from assembly", "0");
      try (Running second = new Running(folder, "twice")) {
        String said = second.awaitTrouble();
        assertTrue(said.startsWith("Another engine already writes the answers of "), said);
        second.thread.join(30_000);
        assertFalse(second.thread.isAlive());
      }
      assertTrue(first.writer.trouble().isEmpty());
    }
  }

  @Test
  void keepsFewSnapshots() throws Exception {
    log.makeRowsTopic("few");
    try (Running running = new Running(folder, "few")) {
      for (int round = 0; round < 6; round++) {
        log.rows("few", List.of(Fleets.assembly("A", round, round)));
        running.awaitText("select events from assembly", "" + round);
      }
    }
    try (var files = Files.list(new AnswersFolder(folder).folder())) {
      assertEquals(3, files.filter(f -> AnswersFolder.numberOf(f) > 0).count());
    }
  }
}
