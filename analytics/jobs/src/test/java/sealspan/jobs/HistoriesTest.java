package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.jobs.SameTables.assertSame;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import sealspan.event.LoggedEvent;
import sealspan.event.SiteDescribed;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.study.IssuedForecast;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FitRows;
import sealspan.table.FoulingRows;
import sealspan.table.LedgerEntry;
import sealspan.table.ResultTopics;

/** The jobs on a real broker and a real cluster, held equal to the tables made without a stream. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class HistoriesTest extends OnRealBroker {
  @Test
  void equalsBatchInAnyOrderWithOneTask() {
    equalsBatch("one", 1, StateKept.HEAP, SomeEvents.of(11, 60));
  }

  @Test
  void equalsBatchInAnyOrderWithTwoTasksOnRocksDb() {
    equalsBatch("two", 2, StateKept.ROCKSDB, SomeEvents.of(12, 60));
  }

  private void equalsBatch(String name, int tasks, StateKept kept, List<LoggedEvent> events) {
    log.append(events);
    try (FlinkRuntime runtime = runtime(tasks)) {
      runtime.startHistories(job(name, tasks), checkpoints(kept));
      log.awaitComplete(name, runtime);
      assertSame(BatchTables.of(events, List.of(), CRITERIA, null), rows(name));
    }
  }

  @Test
  void theEndOfTheLogMovesWithEveryEventAndEntry() {
    try (LogEnd end = new LogEnd(job("end", 1))) {
      end.note();
      assertFalse(end.hasMoved());
      log.append(SomeEvents.of(14, 1));
      assertTrue(end.hasMoved());
      end.note();
      assertFalse(end.hasMoved());
      log.append(new LedgerEntry("l1", "TEST", "{}", Instant.EPOCH, "test"));
      assertTrue(end.hasMoved());
    }
  }

  @Test
  void resumesInTheMiddleAndSendsNothingTwice() {
    List<LoggedEvent> events = SomeEvents.of(13, 40);
    int half = events.size() / 2;
    JobSettings job = job("resumed", 2);
    log.append(events.subList(0, half));
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job, checkpoints(StateKept.HEAP));
      log.awaitComplete("resumed", runtime);
    }
    var before = log.ends(ResultTopics.rows("resumed"));
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job, checkpoints(StateKept.HEAP));
      assertEquals(before, log.ends(ResultTopics.rows("resumed")), "it began from the first event");
      log.append(events.subList(half, events.size()));
      log.awaitComplete("resumed", runtime);
      assertSame(BatchTables.of(events, List.of(), CRITERIA, null), rows("resumed"));
    }
  }

  @Test
  void aLateSiteReachesAllItsAssemblies() {
    List<LoggedEvent> events = SomeEvents.inOrder(14, 30);
    List<LoggedEvent> sites =
        events.stream().filter(e -> e.event() instanceof SiteDescribed).toList();
    List<LoggedEvent> others = new ArrayList<>(events);
    others.removeAll(sites);
    log.append(others);
    try (FlinkRuntime runtime = runtime(1)) {
      runtime.startHistories(job("sites", 1), checkpoints(StateKept.HEAP));
      log.awaitComplete("sites", runtime);
      assertTrue(labels(rows("sites")).isEmpty());
      log.append(sites);
      log.awaitComplete("sites", runtime);
      assertFalse(labels(rows("sites")).isEmpty());
      assertSame(BatchTables.of(events, List.of(), CRITERIA, null), rows("sites"));
    }
  }

  @Test
  void theFirstCheckpointHasReadNothing() {
    List<LoggedEvent> events = SomeEvents.of(19, 60);
    log.append(events);
    CheckpointSettings onlyOne =
        new CheckpointSettings(
            checkpoints(StateKept.HEAP).folder(), Duration.ofHours(1), StateKept.HEAP);
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("first", 2), onlyOne);
      LogUnderTest.until(
          () -> runtime.progress().filter(p -> p.eventsRead() == events.size()).isPresent());
      assertEquals(Map.of(), log.committed("first"), "what was read at the first checkpoint");
    }
  }

  @Test
  void tellsHowFarItIsWithALongLog() {
    List<LoggedEvent> events = SomeEvents.of(17, 60);
    log.append(events);
    try (FlinkRuntime runtime = runtime(2)) {
      assertEquals(Optional.empty(), runtime.progress());
      runtime.startHistories(job("long", 2), checkpoints(StateKept.HEAP), events.size());
      log.awaitComplete("long", runtime);
      LogUnderTest.until(
          () ->
              runtime
                  .progress()
                  .filter(p -> p.eventsRead() == events.size())
                  .filter(p -> p.historiesChanged() == p.historiesSent())
                  .isPresent());
      Map<String, Bundle> rows = rows("long");
      assertTrue(runtime.progress().orElseThrow().historiesSent() >= rows.size());
      assertSame(BatchTables.of(events, List.of(), CRITERIA, null), rows);
    }
  }

  @Test
  void aLogThatIsShorterThanWasSaidIsNotWaitedForInVain() {
    List<LoggedEvent> events = SomeEvents.of(18, 20);
    log.append(events);
    try (FlinkRuntime runtime = runtime(1)) {
      runtime.startHistories(job("short", 1), checkpoints(StateKept.HEAP), events.size() + 1L);
      log.awaitComplete("short", runtime);
      assertSame(BatchTables.of(events, List.of(), CRITERIA, null), rows("short"));
    }
  }

  private static List<String> labels(Map<String, Bundle> rows) {
    return rows.values().stream()
        .filter(b -> b instanceof AssemblyRows)
        .map(b -> ((AssemblyRows) b).assembly().siteLabel())
        .filter(label -> label != null)
        .toList();
  }

  @Test
  void aFitScoresAllAssembliesAnewAndTheLastOneWins() {
    List<LoggedEvent> events = SomeEvents.of(15, 50);
    int half = events.size() / 2;
    JobSettings job = job("fits", 2);
    log.append(events.subList(0, half));
    FitCut first = cut(1);
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job, checkpoints(StateKept.HEAP));
      log.append(events.subList(half, events.size()));
      FitCut second = cut(2);
      runtime.fit(job, second);
      runtime.fit(job, first);
      List<Bundle> expected = BatchTables.of(events, events, CRITERIA, second);
      LogUnderTest.until(
          () -> SameTables.bytes(expected).equals(SameTables.bytes(rows("fits").values())));
      log.awaitComplete("fits", runtime);
      assertSame(expected, rows("fits"));
    }
    try (FlinkRuntime runtime = runtime(1)) {
      JobSettings again = job("fits-again", 1);
      TopicSetup.make(again);
      runtime.fit(again, first);
      assertSame(
          BatchTables.of(events.subList(0, half), events.subList(0, half), CRITERIA, first).stream()
              .filter(b -> b instanceof FitRows || b instanceof FoulingRows)
              .toList(),
          rows("fits-again"));
    }
  }

  /** I8 on the stream: forecasts of the ledger reach their assemblies, and nothing changes them. */
  @Test
  void forecastsStayAsTheyWereIssuedWhateverComesLater() {
    List<LoggedEvent> events = SomeEvents.of(16, 30);
    int half = events.size() / 2;
    List<IssuedForecast> issued = new ArrayList<>();
    for (Bundle bundle : BatchTables.of(events, List.of(), CRITERIA, null)) {
      if (bundle instanceof AssemblyRows rows) {
        issued.add(forecast(rows.assemblyId(), "first", LocalDate.of(2017, 1, 1)));
        issued.add(forecast(rows.assemblyId(), "second", LocalDate.of(2019, 1, 1)));
      }
    }
    issued.add(forecast("no-such-assembly", "first", LocalDate.of(2017, 1, 1)));
    for (int from = 0; from < issued.size(); from += 7) {
      List<IssuedForecast> batch = issued.subList(from, Math.min(issued.size(), from + 7));
      log.append(entry(batch));
      log.append(entry(batch));
    }
    List<IssuedForecast> known = issued.stream().map(f -> entered(f, issued)).toList();
    log.append(events.subList(0, half));
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("forecasts", 2), checkpoints(StateKept.HEAP));
      awaitSame(runtime, BatchTables.of(events.subList(0, half), List.of(), CRITERIA, null, known));
      log.append(events.subList(half, events.size()));
      awaitSame(runtime, BatchTables.of(events, List.of(), CRITERIA, null, known));
    }
  }

  private void awaitSame(FlinkRuntime runtime, List<Bundle> expected) {
    log.awaitComplete("forecasts", runtime);
    LogUnderTest.until(
        () -> SameTables.bytes(expected).equals(SameTables.bytes(rows("forecasts").values())));
    assertSame(expected, rows("forecasts"));
  }

  private static LedgerEntry entry(List<IssuedForecast> batch) {
    return new LedgerEntry(
        "entry-" + batch.get(0).assemblyId() + batch.get(0).basisEventId(),
        IssuedForecast.KIND,
        IssuedForecast.content(batch),
        Instant.parse("2020-01-01T00:00:00Z"),
        "engine");
  }

  /** The forecast as it is read back from its batch of seven. */
  private static IssuedForecast entered(IssuedForecast forecast, List<IssuedForecast> all) {
    int from = all.indexOf(forecast) / 7 * 7;
    LedgerEntry entry = entry(all.subList(from, Math.min(all.size(), from + 7)));
    return IssuedForecast.of(entry).get(all.indexOf(forecast) - from);
  }

  private static IssuedForecast forecast(String assembly, String basis, LocalDate day) {
    double p = (assembly.hashCode() & 0xff) / 512.0;
    return new IssuedForecast(
        assembly, null, null, "0:9", "3", basis, day, p / 8, p / 2, p, p, .1, p / 2, p / 2,
        "check1", "DC");
  }

  @Test
  void namesARecordThatIsNoEvent() {
    log.appendRaw(new byte[] {1, 2, 3});
    try (FlinkRuntime runtime = runtime(1)) {
      AtomicReference<String> trouble = new AtomicReference<>();
      try {
        runtime.startHistories(job("damaged", 1), checkpoints(StateKept.HEAP));
        LogUnderTest.until(
            () -> {
              runtime.trouble().ifPresent(trouble::set);
              return trouble.get() != null;
            });
      } catch (JobException e) {
        trouble.set(e.getMessage());
      }
      assertTrue(trouble.get().contains("offset 0 is no event of this program"), trouble.get());
    }
  }

  private static FitCut cut(long revision) {
    return new FitCut("cut-" + revision, log.end(), Instant.EPOCH, revision);
  }

  private FlinkRuntime runtime(int parallelism) {
    return FlinkRuntime.start(new RuntimeSettings(folder.resolve("work"), parallelism));
  }

  private JobSettings job(String generation, int parallelism) {
    return new JobSettings(
        log.bootstrapServers(), Map.of(), generation, "test", CRITERIA, parallelism);
  }

  private CheckpointSettings checkpoints(StateKept kept) {
    return CheckpointSettings.everySecond(folder.resolve("checkpoints"), kept);
  }

  private static Map<String, Bundle> rows(String generation) {
    return log.bundles(ResultTopics.rows(generation));
  }
}
