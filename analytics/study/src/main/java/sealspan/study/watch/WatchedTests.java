package sealspan.study.watch;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.study.AssemblyTables;
import sealspan.study.fouling.FoulingFailure;
import sealspan.table.TestRow;

/**
 * Which tests of an assembly enter the watch, when, and with which outcome. What was known at a
 * time is what the history gave of the events recorded by then, so a test enters at the first time
 * at which it counts and its failure, if it is one, is classified: a pass at once, a failure often
 * with its repair. What is said of it later changes only the outcome that stands.
 *
 * <p>Left out is what was recorded more than {@link #LATEST_DAYS} days after it was done: imported
 * history is no news. Of one assembly the first {@link #MOST_TESTS} enter, which is more than any
 * has in its life; the work stays bounded whatever a log holds.
 */
public final class WatchedTests {
  /** The most days from a test to its record. */
  public static final int LATEST_DAYS = 90;

  /** The most tests of one assembly, by recorded time and event id. */
  public static final int MOST_TESTS = 200;

  private WatchedTests() {}

  /**
   * The tests of one assembly in the order in which they became known; a pure function of the set
   * of events.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition
   * @param criteria the limits in force
   */
  public static List<WatchedTest> of(
      String assemblyId, Collection<LoggedEvent> events, AcceptanceCriteria criteria) {
    Map<Instant, Set<String>> news = news(Subject.assembly(assemblyId), events);
    Map<String, WatchedTest> entered = new HashMap<>();
    Set<String> waiting = new HashSet<>();
    boolean any = false;
    for (Map.Entry<Instant, Set<String>> at : news.entrySet()) {
      waiting.addAll(at.getValue());
      any |= !at.getValue().isEmpty();
      if (!waiting.isEmpty()) {
        enter(tests(assemblyId, events, criteria, at.getKey()), at.getKey(), waiting, entered);
      }
    }
    if (!any || entered.isEmpty()) {
      return List.of();
    }
    return standing(entered, AssemblyTables.tests(assemblyId, events, criteria));
  }

  /** By recorded time of the assembly's own events, the timely tests that first came then. */
  private static Map<Instant, Set<String>> news(Subject own, Collection<LoggedEvent> events) {
    Map<Instant, Set<String>> news = new TreeMap<>();
    for (LoggedEvent event : events) {
      if (event.event().subject().equals(own) && event.recordedAt() != null) {
        Set<String> tests = news.computeIfAbsent(event.recordedAt(), t -> new TreeSet<>());
        if (event.event() instanceof TestPerformed test
            && isTimely(test.when().day(), event.recordedAt())) {
          tests.add(event.id());
        }
      }
    }
    Set<String> first = new HashSet<>();
    for (Set<String> tests : news.values()) {
      tests.removeIf(id -> !first.contains(id) && first.size() == MOST_TESTS || !first.add(id));
    }
    return news;
  }

  private static boolean isTimely(LocalDate day, Instant recordedAt) {
    LocalDate recorded = recordedAt.atZone(ZoneOffset.UTC).toLocalDate();
    return ChronoUnit.DAYS.between(day, recorded) <= LATEST_DAYS;
  }

  private static List<TestRow> tests(
      String assemblyId, Collection<LoggedEvent> events, AcceptanceCriteria criteria, Instant at) {
    List<LoggedEvent> known = new ArrayList<>();
    for (LoggedEvent event : events) {
      if (event.recordedAt() != null && !event.recordedAt().isAfter(at)) {
        known.add(event);
      }
    }
    return AssemblyTables.tests(assemblyId, known, criteria);
  }

  /** Only a failure that is not classified goes on waiting. */
  private static void enter(
      List<TestRow> rounds, Instant at, Set<String> waiting, Map<String, WatchedTest> entered) {
    Set<String> unclassified = new HashSet<>();
    for (TestRow round : rounds) {
      String id = round.eventId();
      if (waiting.contains(id) && WatchedOutcome.counts(round)) {
        WatchedOutcome outcome = WatchedOutcome.of(round);
        if (outcome != null) {
          entered.putIfAbsent(id, new WatchedTest(at, round.assemblyId(), id, outcome, null));
        } else if (FoulingFailure.of(round) == FoulingFailure.UNCLASSIFIED) {
          unclassified.add(id);
        }
      }
    }
    waiting.retainAll(unclassified);
  }

  private static List<WatchedTest> standing(
      Map<String, WatchedTest> entered, List<TestRow> rounds) {
    Map<String, WatchedOutcome> now = new HashMap<>();
    for (TestRow round : rounds) {
      now.put(round.eventId(), WatchedOutcome.of(round));
    }
    List<WatchedTest> tests = new ArrayList<>(entered.size());
    for (WatchedTest test : entered.values()) {
      tests.add(
          new WatchedTest(
              test.knownAt(),
              test.assemblyId(),
              test.eventId(),
              test.asKnown(),
              now.get(test.eventId())));
    }
    tests.sort(WatchedTest.ORDER);
    return List.copyOf(tests);
  }
}
