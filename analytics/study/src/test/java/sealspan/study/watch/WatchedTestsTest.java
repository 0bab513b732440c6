package sealspan.study.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.Story;
import sealspan.event.Action;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Mechanism;
import sealspan.event.TestPerformed.Phase;

/** Which tests enter and when, by hand; a double check passes from 1.0 psi on. */
class WatchedTestsTest {
  /**
   * A pass that came late, one in 2023; in 2024 a failure, recorded the day after, its repair a
   * month later.
   */
  private static Story fouled() {
    return new Story()
        .site("2017-01-01", null, "Z1")
        .last(e -> at(e, "2018-01-01"))
        .installed("2018-03-01", AssemblyType.DC)
        .last(e -> at(e, "2018-03-02"))
        .test("t0", "2022-03-01", 1, Phase.AS_FOUND, dc("1.4", "1.5"))
        .last(e -> at(e, "2023-01-01"))
        .test("t1", "2023-03-01", 1, Phase.AS_FOUND, dc("1.2", "1.5"))
        .last(e -> at(e, "2023-03-02"))
        .test("t2", "2024-03-01", 1, Phase.AS_FOUND, dc("0.8", "1.3"))
        .last(e -> at(e, "2024-03-02"))
        .repair("r2", "2024-03-01", 2, item(CHECK1, Action.CLEANED, Mechanism.DEBRIS, null))
        .last(e -> at(e, "2024-04-01"));
  }

  private static LoggedEvent at(LoggedEvent event, String day) {
    return event.recorded(Instant.parse(day + "T12:00:00Z"));
  }

  private static List<WatchedTest> watched(List<LoggedEvent> events) {
    return WatchedTests.of(Story.ASSEMBLY, events, AcceptanceCriteria.shipped());
  }

  @Test
  void aFailureEntersWhenItsRepairTellsWhatItWas() {
    List<WatchedTest> tests = watched(fouled().events());
    assertEquals(List.of("t1", "t2"), tests.stream().map(WatchedTest::eventId).toList());
    assertEquals(Instant.parse("2023-03-02T12:00:00Z"), tests.get(0).knownAt());
    assertFalse(tests.get(0).asKnown().fouled());
    WatchedTest fouled = tests.get(1);
    assertEquals(Instant.parse("2024-04-01T12:00:00Z"), fouled.knownAt());
    assertTrue(fouled.asKnown().fouled());
    // 2023-03-01 to 2024-03-01 has a 29 February.
    assertEquals(366, fouled.asKnown().exposureDays());
    assertEquals("S-1", fouled.asKnown().place());
    assertEquals("Z1", fouled.asKnown().zoneId());
    assertEquals("DC", fouled.asKnown().type());
    assertEquals(fouled.asKnown(), fouled.standing());
  }

  @Test
  void aFailureThatIsNotClassifiedWaits() {
    Story story = fouled();
    assertEquals(1, watched(story.events().subList(0, 5)).size());
  }

  @Test
  void whatWasKnownStaysWhateverIsSaidLater() {
    List<LoggedEvent> voided = fouled().voided("v", "t2").last(e -> at(e, "2024-05-01")).events();
    WatchedTest test = watched(voided).get(1);
    assertTrue(test.asKnown().fouled());
    assertNull(test.standing());
    List<LoggedEvent> corrected =
        fouled()
            .correct(
                "c", "t2", Story.report("2024-03-01", 1, Phase.AS_FOUND, dc("1.8", "1.3")).event())
            .last(e -> at(e, "2024-05-01"))
            .events();
    test = watched(corrected).get(1);
    assertTrue(test.asKnown().fouled());
    assertFalse(test.standing().fouled());
    assertEquals(Instant.parse("2024-04-01T12:00:00Z"), test.knownAt());
  }

  @Test
  void importedHistoryIsNoNews() {
    List<LoggedEvent> imported = fouled().events().stream().map(e -> at(e, "2024-05-31")).toList();
    // 2024-03-01 is 91 days before; 2024-03-02 would be 90.
    assertEquals(List.of(), watched(imported));
    assertEquals(
        List.of("t2"),
        watched(fouled().events().stream().map(e -> at(e, "2024-05-30")).toList()).stream()
            .map(WatchedTest::eventId)
            .toList());
  }

  @Test
  void theWorkIsBoundedWhateverALogHolds() {
    Story story =
        new Story()
            .installed("2018-03-01", AssemblyType.DC)
            .last(e -> at(e, "2018-03-02"))
            .test("t", "2019-12-01", 1, Phase.AS_FOUND, dc("1.4", "1.5"))
            .last(e -> at(e, "2020-12-01"));
    LocalDate day = LocalDate.of(2021, 1, 1);
    for (int i = 0; i < WatchedTests.MOST_TESTS + 5; i++) {
      String on = day.plusDays(i).toString();
      story.test("t" + (1_000 + i), on, 1, Phase.AS_FOUND, dc("1.4", "1.5")).last(e -> at(e, on));
    }
    List<WatchedTest> tests = watched(story.events());
    assertEquals(WatchedTests.MOST_TESTS, tests.size());
    assertEquals("t1000", tests.get(0).eventId());
  }

  @Test
  void orderAndRepetitionDecideNothing() {
    List<LoggedEvent> events = fouled().voided("v", "t1").last(e -> at(e, "2024-05-01")).events();
    List<WatchedTest> expected = watched(events);
    List<LoggedEvent> other = new ArrayList<>(events);
    other.addAll(events.subList(1, 5));
    Collections.shuffle(other, new Random(5));
    assertEquals(expected, watched(other));
  }
}
