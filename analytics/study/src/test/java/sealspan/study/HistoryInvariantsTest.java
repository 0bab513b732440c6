package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.RandomHistory;
import sealspan.assembly.Story;
import sealspan.avro.TableCodec;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.table.Bundle;

/** What must hold of every fold, however the log came about: bundles are compared byte for byte. */
class HistoryInvariantsTest {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  /** Bundles of three assemblies that share sites, gauge and tester, by key. */
  private static Map<String, byte[]> bundles(List<LoggedEvent> events) {
    Map<String, byte[]> bytes = new TreeMap<>();
    for (Bundle bundle : BatchTables.of(events, List.of(), CRITERIA, null)) {
      bytes.put(bundle.key(), TableCodec.encode(bundle));
    }
    return bytes;
  }

  private static List<LoggedEvent> log(long seed) {
    List<LoggedEvent> events = new ArrayList<>();
    for (String assembly : List.of("A", "B", "C")) {
      events.addAll(RandomHistory.of(seed + assembly.hashCode(), assembly));
    }
    return events;
  }

  private static void assertSame(Map<String, byte[]> expected, Map<String, byte[]> found) {
    assertEquals(expected.keySet(), found.keySet());
    expected.forEach((key, bytes) -> assertArrayEquals(bytes, found.get(key), key));
  }

  /** I1: any order and any repetition of the same log give the same bytes. */
  @Property(tries = 150)
  void orderAndRepetitionDecideNothing(@ForAll long seed, @ForAll long shuffle) {
    List<LoggedEvent> log = log(seed);
    Random random = new Random(shuffle);
    List<LoggedEvent> other = new ArrayList<>(log);
    for (int i = random.nextInt(log.size()); i >= 0; i--) {
      other.add(log.get(random.nextInt(log.size())));
    }
    Collections.shuffle(other, random);
    assertSame(bundles(log), bundles(other));
  }

  /** I2: a log with an event, its corrections and its void equals the log without the event. */
  @Property(tries = 150)
  void whatIsTakenBackLeavesNoTrace(@ForAll long seed, @ForAll long choice) {
    List<LoggedEvent> log = log(seed);
    Random random = new Random(choice);
    Set<String> amended = new HashSet<>();
    for (LoggedEvent event : log) {
      if (event.event() instanceof EventCorrected e) {
        amended.add(e.targetEventId());
      } else if (event.event() instanceof EventVoided e) {
        amended.add(e.targetEventId());
      }
    }
    List<LoggedEvent> tests =
        log.stream()
            .filter(e -> e.event() instanceof TestPerformed && !amended.contains(e.id()))
            .toList();
    if (tests.isEmpty()) {
      return;
    }
    LoggedEvent target = tests.get(random.nextInt(tests.size()));
    LoggedEvent content = tests.get(random.nextInt(tests.size()));
    List<LoggedEvent> without = new ArrayList<>(log);
    without.removeIf(e -> e.id().equals(target.id()));
    List<LoggedEvent> with = new ArrayList<>(log);
    Moment when = target.event().when();
    Instant later = Instant.parse("2025-01-01T00:00:00Z");
    if (content.event().subject().equals(target.event().subject())) {
      with.add(
          Story.logged(
              "correction",
              new EventCorrected(target.id(), when, "clerk", "why", content.event()),
              later));
    }
    Subject about = target.event().subject();
    with.add(
        Story.logged("void", new EventVoided(target.id(), about, when, "clerk", "why"), later));
    Collections.shuffle(with, random);
    assertSame(bundles(without), bundles(with));
  }

  /** I3: after every event the bag of what arrived gives what the log so far gives. */
  @Property(tries = 20)
  void everyPrefixIsTheLogSoFar(@ForAll long seed) {
    List<LoggedEvent> log = RandomHistory.of(seed, "A");
    List<LoggedEvent> bag = new ArrayList<>();
    Random random = new Random(seed);
    for (int n = 1; n <= log.size(); n++) {
      bag.add(random.nextInt(bag.size() + 1), log.get(n - 1));
      assertSame(bundles(log.subList(0, n)), bundles(bag));
    }
  }

  /** I4: as of a recorded time, the log cut there and the events filtered by it are the same. */
  @Property(tries = 60)
  void asOfATimeIsTheLogAsItWasThen(@ForAll long seed, @ForAll @IntRange(max = 200) int seconds) {
    List<LoggedEvent> log = log(seed);
    log.sort(java.util.Comparator.comparing(LoggedEvent::recordedAt));
    Instant cut = Instant.parse("2024-01-01T00:00:00Z").plusSeconds(seconds);
    List<LoggedEvent> then = new ArrayList<>();
    for (LoggedEvent event : log) {
      if (event.recordedAt().isAfter(cut)) {
        break;
      }
      then.add(event);
    }
    List<LoggedEvent> all = new ArrayList<>(log);
    Collections.shuffle(all, new Random(seed));
    all.removeIf(e -> e.recordedAt().isAfter(cut));
    assertSame(bundles(then), bundles(all));
  }

  /** The revision is the bundle's alone. */
  @Property(tries = 30)
  void theRevisionChangesNothingElse(@ForAll long seed) {
    List<LoggedEvent> log = RandomHistory.of(seed, "A");
    LatestFits priors = AssemblyTablesTest.fitted();
    var first = AssemblyTables.of("A", log, CRITERIA, priors, 1);
    var second = AssemblyTables.of("A", log, CRITERIA, priors, 2);
    assertEquals(1, first.revision());
    assertEquals(2, second.revision());
    assertEquals(first.tests(), second.tests());
    assertEquals(first.rate(), second.rate());
    assertEquals(first.assembly(), second.assembly());
    assertEquals(first.findings(), second.findings());
  }
}
