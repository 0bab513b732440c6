package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.jobs.SameTables.assertSame;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.study.BatchTables;
import sealspan.study.FitCut;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FitRows;
import sealspan.table.FoulingRows;
import sealspan.table.ResultTopics;

/**
 * What must not change a table: the order in which events come, how often and in what pieces, where
 * the job was broken off, and how many tasks it has. On a real broker and a real cluster, with an
 * invented fleet that has late reports, corrections and voids, and more of each by chance.
 */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class InvariantsTest extends OnRealBroker {
  private static final int POSITIONS = 40;
  private static final long SEED = 31;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 7})
  void everyPieceOfAnyOrderGivesTheTablesOfAllBeforeIt(int tasks) {
    List<LoggedEvent> events = arranged(tasks);
    String name = "prefixes-" + tasks;
    try (FlinkRuntime runtime = runtime(tasks)) {
      runtime.startHistories(job(name, tasks), checkpoints());
      int done = 0;
      for (int end : ends(events.size(), 4, new Random(tasks))) {
        log.append(events.subList(done, end));
        done = end;
        log.awaitComplete(name, runtime);
        assertSame(batch(events.subList(0, end)), rows(name));
      }
    }
    assertSame(batch(SomeEvents.of(SEED, POSITIONS)), rows(name));
  }

  @Test
  void aJobBrokenOffAtAnyMomentAndGivenOtherTasksGoesOnAsIfNothingHadHappened() {
    List<LoggedEvent> events = arranged(5);
    Random random = new Random(SEED);
    int[] tasks = {2, 1, 7, 2, 1};
    List<Integer> ends = ends(events.size(), tasks.length, random);
    int done = 0;
    for (int i = 0; i < tasks.length; i++) {
      try (FlinkRuntime runtime = runtime(tasks[i])) {
        runtime.startHistories(job("broken", tasks[i]), checkpoints());
        log.append(events.subList(done, ends.get(i)));
        done = ends.get(i);
        pause(random.nextInt(400));
      }
    }
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("broken", 2), checkpoints());
      log.awaitComplete("broken", runtime);
    }
    assertSame(batch(events), rows("broken"));
  }

  @Test
  void voidedEventsLeaveNoTrace() {
    List<LoggedEvent> events = SomeEvents.of(SEED, POSITIONS);
    Set<String> voided = new HashSet<>();
    for (LoggedEvent e : events) {
      if (e.event() instanceof EventVoided v) {
        voided.add(v.targetEventId());
      }
    }
    assertTrue(voided.size() > 20, "enough to see: " + voided.size());
    List<LoggedEvent> without = events.stream().filter(e -> !isVoidedOrAbout(e, voided)).toList();
    log.append(events);
    try (FlinkRuntime runtime = runtime(1)) {
      runtime.startHistories(job("voids", 1), checkpoints());
      log.awaitComplete("voids", runtime);
    }
    assertSame(batch(without), rows("voids"));
  }

  private static boolean isVoidedOrAbout(LoggedEvent e, Set<String> voided) {
    return voided.contains(e.id())
        || e.event() instanceof EventVoided
        || e.event() instanceof EventCorrected c && voided.contains(c.targetEventId());
  }

  @Test
  void whatWasRecordedUpToATimeGivesTheTablesOfThatTime() {
    List<LoggedEvent> events = SomeEvents.of(SEED, POSITIONS);
    Instant[] times = events.stream().map(LoggedEvent::recordedAt).sorted().toArray(Instant[]::new);
    Instant then = times[times.length / 2];
    List<LoggedEvent> early = events.stream().filter(e -> !e.recordedAt().isAfter(then)).toList();
    log.append(early);
    try (FlinkRuntime runtime = runtime(2)) {
      runtime.startHistories(job("then", 2), checkpoints());
      log.awaitComplete("then", runtime);
      Map<String, String> asItWas = SameTables.bytes(rows("then").values());
      log.append(events.stream().filter(e -> e.recordedAt().isAfter(then)).toList());
      log.awaitComplete("then", runtime);
      assertEquals(asItWas, SameTables.bytes(batch(early)));
      assertSame(batch(events), rows("then"));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 7})
  void fitsAreTheSameWithAnyTasksAndStrataAddUp(int tasks) {
    List<LoggedEvent> events = arranged(tasks);
    log.append(events);
    JobSettings job = job("fit-" + tasks, tasks);
    TopicSetup.make(job);
    FitCut cut = new FitCut("cut", log.end(), Instant.EPOCH, 1);
    try (FlinkRuntime runtime = runtime(tasks)) {
      runtime.fit(job, cut);
    }
    Map<String, Bundle> fits = rows("fit-" + tasks);
    assertSame(
        BatchTables.of(events, events, CRITERIA, cut).stream()
            .filter(b -> b instanceof FitRows || b instanceof FoulingRows)
            .toList(),
        fits);
    FoulingRows fouling = (FoulingRows) fits.get(FoulingRows.KEY);
    assertTrue(fouling.fit().visits() > POSITIONS, fouling.fit().toString());
    Map<String, Integer> sizes = new TreeMap<>();
    fits.values().stream()
        .filter(b -> b instanceof FitRows)
        .forEach(b -> sizes.put(((FitRows) b).stratum(), size((FitRows) b)));
    List<AssemblyRows> untyped = untyped(events);
    assertEquals(
        sizes.get("all").intValue(), untyped.size() + sum(sizes, "type=\\S+"), sizes.toString());
    assertTrue(sizes.containsKey("component=check1"), sizes.toString());
    sizes.forEach(
        (stratum, size) -> {
          if (stratum.startsWith("component=")) {
            long others = untyped.stream().filter(rows -> hasSeal(rows, stratum)).count();
            assertEquals(size.longValue(), others + sum(sizes, "type=\\S+ " + stratum), stratum);
          }
        });
  }

  /** Assemblies whose installation was voided or never reported. */
  private static List<AssemblyRows> untyped(List<LoggedEvent> events) {
    return batch(events).stream()
        .filter(b -> b instanceof AssemblyRows)
        .map(b -> (AssemblyRows) b)
        .filter(rows -> rows.assembly().type() == null)
        .toList();
  }

  private static boolean hasSeal(AssemblyRows rows, String stratum) {
    return rows.seals().stream().anyMatch(s -> stratum.equals("component=" + s.component()));
  }

  private static int sum(Map<String, Integer> sizes, String strata) {
    return sizes.entrySet().stream()
        .filter(e -> e.getKey().matches(strata))
        .mapToInt(Map.Entry::getValue)
        .sum();
  }

  private static int size(FitRows fit) {
    return fit.fit().assemblies();
  }

  /** All events, some of them twice and thrice, in an order of its own for every number. */
  private static List<LoggedEvent> arranged(int number) {
    Random random = new Random(number);
    List<LoggedEvent> events = new ArrayList<>(SomeEvents.of(SEED, POSITIONS));
    for (LoggedEvent event : List.copyOf(events)) {
      for (int again = 0; again < 2 && random.nextInt(12) == 0; again++) {
        events.add(event);
      }
    }
    Collections.shuffle(events, random);
    return events;
  }

  /** Where pieces end, of any sizes; the last at the end of all. */
  private static List<Integer> ends(int all, int pieces, Random random) {
    List<Integer> ends = new ArrayList<>();
    for (int i = 1; i < pieces; i++) {
      ends.add(1 + random.nextInt(all - 1));
    }
    ends.add(all);
    Collections.sort(ends);
    return ends;
  }

  private static List<Bundle> batch(List<LoggedEvent> events) {
    return BatchTables.of(events, List.of(), CRITERIA, null);
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

  private static void pause(int millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
