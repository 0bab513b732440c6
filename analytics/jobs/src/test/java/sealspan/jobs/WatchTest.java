package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.jobs.SameTables.assertSame;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.watch.WatchModel;
import sealspan.study.watch.WatchSite;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FoulingCoefficientRow;
import sealspan.table.LedgerEntry;
import sealspan.table.ResultTopics;
import sealspan.table.WatchAlarmRow;
import sealspan.table.WatchRows;

/**
 * I9: a replay of the log raises the same alarms, whatever order its events come in and wherever
 * the job was broken off; both runs, byte for byte as the batch has them.
 */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class WatchTest extends OnRealBroker {
  @Test
  void aReplayOfTheLogRaisesTheSameAlarms() {
    List<LoggedEvent> events = SomeEvents.live(4, 40);
    List<LedgerEntry> models = models(events);
    List<Bundle> expected = batch(events, models);
    WatchRows watch = watch(expected);
    List<String> asKnown = ids(watch, "AS_KNOWN");
    assertTrue(asKnown.size() >= 2, "alarms " + asKnown);
    assertTrue(watch.states().get(0).tests() > watch.states().get(1).tests(), "some were voided");

    models.forEach(log::append);
    int half = events.size() / 2;
    log.append(events.subList(0, half));
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("first", 2), checkpoints());
      awaitSame("first", runtime, batch(events.subList(0, half), models));
    }
    log.append(events.subList(half, events.size()));
    try (FlinkRuntime runtime = runtime(3)) {
      runtime.startHistories(job("first", 3), checkpoints());
      awaitSame("first", runtime, expected);
    }
    try (FlinkRuntime runtime = runtime(1)) {
      runtime.startHistories(job("again", 1), checkpoints());
      awaitSame("again", runtime, expected);
    }
    assertEquals(asKnown, ids((WatchRows) rows("again").get(WatchRows.KEY), "AS_KNOWN"));
  }

  @Test
  void anyOrderOfArrivalRaisesTheSameAlarms() {
    List<LoggedEvent> events = SomeEvents.live(5, 40);
    List<LedgerEntry> models = models(events);
    List<LoggedEvent> shuffled = new ArrayList<>(events);
    shuffled.addAll(events.subList(0, 50));
    Collections.shuffle(shuffled, new Random(1));
    log.append(shuffled.subList(0, 100));
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("shuffled", 2), checkpoints());
      log.awaitComplete("shuffled", runtime);
      models.forEach(log::append);
      models.forEach(log::append);
      log.append(shuffled.subList(100, shuffled.size()));
      awaitSame("shuffled", runtime, batch(events, models));
    }
  }

  /** Two models, one early and one in the middle, with probabilities that are far too low. */
  private static List<LedgerEntry> models(List<LoggedEvent> events) {
    Map<String, WatchSite> sites = new TreeMap<>();
    for (Bundle bundle : BatchTables.of(events, List.of(), CRITERIA, null)) {
      if (bundle instanceof AssemblyRows rows && rows.assembly().siteId() != null) {
        sites.put(
            rows.assembly().siteId(),
            new WatchSite(
                rows.assembly().siteId(),
                rows.assembly().zoneId(),
                rows.assembly().latitude(),
                rows.assembly().longitude()));
      }
    }
    Instant early = events.get(events.size() / 4).recordedAt();
    Instant middle = events.get(events.size() / 2).recordedAt();
    return List.of(
        model("early", -6, early, List.copyOf(sites.values()).subList(0, sites.size() / 2)),
        model("middle", -5, middle, List.copyOf(sites.values())));
  }

  private static LedgerEntry model(
      String cut, double constant, Instant frozenAt, List<WatchSite> sites) {
    List<FoulingCoefficientRow> coefficients =
        List.of(
            new FoulingCoefficientRow("constant", constant, null, null),
            new FoulingCoefficientRow("log exposure years", 1, null, null));
    WatchModel model = new WatchModel(null, null, cut, "1", 9, 100, 100, coefficients, sites);
    String content = model.contents().get(0);
    return new LedgerEntry("model " + cut, WatchModel.KIND, content, frozenAt, "engine");
  }

  private static List<Bundle> batch(List<LoggedEvent> events, List<LedgerEntry> models) {
    return BatchTables.of(events, List.of(), CRITERIA, null, List.of(), models);
  }

  private static WatchRows watch(List<Bundle> bundles) {
    return (WatchRows)
        bundles.stream().filter(b -> b instanceof WatchRows).findFirst().orElseThrow();
  }

  private static List<String> ids(WatchRows watch, String run) {
    return watch.alarms().stream()
        .filter(alarm -> alarm.run().equals(run))
        .map(WatchAlarmRow::alarmId)
        .toList();
  }

  private void awaitSame(String name, FlinkRuntime runtime, List<Bundle> expected) {
    log.awaitComplete(name, runtime);
    LogUnderTest.until(
        () -> SameTables.bytes(expected).equals(SameTables.bytes(rows(name).values())));
    assertSame(expected, rows(name));
  }

  private FlinkRuntime runtime(int parallelism) {
    return FlinkRuntime.start(new RuntimeSettings(folder.resolve("work"), parallelism));
  }

  private static JobSettings job(String generation, int parallelism) {
    return new JobSettings(
        log.bootstrapServers(), Map.of(), generation, "test", CRITERIA, parallelism);
  }

  private CheckpointSettings checkpoints() {
    return new CheckpointSettings(
        folder.resolve("checkpoints").toUri().toString(), Duration.ofMillis(200), StateKept.HEAP);
  }

  private static Map<String, Bundle> rows(String generation) {
    return log.bundles(ResultTopics.rows(generation));
  }
}
