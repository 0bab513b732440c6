package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.on;
import static sealspan.assembly.Story.report;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.event.Action;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved.Reason;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.RepairPerformed;
import sealspan.event.ServiceStateChanged;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Visit;
import sealspan.event.Visit.SequenceOrigin;

/** Order of a history and what is known of a place as of a day. */
class ContextTest {
  private static final Instant T0 = Instant.parse("2024-01-01T00:00:00Z");

  private static Story yearly() {
    Story story = new Story().installed("2019-01-10", AssemblyType.DC);
    for (int year = 2019; year < 2024; year++) {
      story.test("t" + year, year + "-06-01", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    }
    return story;
  }

  private static List<String> zones(Story story) {
    return story.history().rounds().stream().map(round -> round.place().zoneId()).toList();
  }

  @Test
  void theZoneIsThatOfTheDay() {
    Story story = yearly().site("2020-01-01", null, "Z1").site("2022-01-01", null, "Z2");
    assertEquals(List.of("Z1", "Z1", "Z1", "Z2", "Z2"), zones(story));
    assertEquals("Z2", story.history().place().zoneId());
  }

  @Test
  void aDescriptionOfThePositionOrAChangeOfTheAssemblyHoldsUntilALaterOne() {
    Story story =
        yearly()
            .site("2019-01-01", null, "Z1")
            .log("p", Story.site("2020-01-01", "P-1", null, "Z2"))
            .log("q", Story.site("2020-02-01", "P-9", null, "Z9"))
            .log(
                "c",
                new AssemblyChanged(
                    Story.ASSEMBLY,
                    on("2021-01-01"),
                    null,
                    "Z3",
                    null,
                    null,
                    null,
                    null,
                    null,
                    null))
            .site("2023-01-01", null, "Z4");
    assertEquals(List.of("Z1", "Z2", "Z3", "Z3", "Z4"), zones(story));
  }

  @Test
  void whatALaterDescriptionDoesNotTellStays() {
    Story story = yearly().site("2019-01-01", "toronto", "Z1").site("2021-01-01", null, "Z2");
    assertEquals("toronto", story.history().place().jurisdiction());
    assertEquals("Z2", story.history().place().zoneId());
  }

  @Test
  void theJurisdictionOfTheDayJudges() {
    Story story =
        yearly().site("2019-01-01", "newwa", "Z1").site("2021-01-01", "Springfield", "Z1");
    assertEquals(
        List.of(
            Outcome.PASSED,
            Outcome.PASSED,
            Outcome.UNDECIDED,
            Outcome.UNDECIDED,
            Outcome.UNDECIDED),
        story.history().rounds().stream().map(TestRound::outcome).toList());
  }

  @Test
  void aUnitThatMovedIsAtItsNewSite() {
    AssemblyInstalled moved =
        new AssemblyInstalled(
            Story.ASSEMBLY,
            on("2021-01-01"),
            AssemblyInstalled.DayMeaning.INSTALLED,
            "S-2",
            "P-2",
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null);
    Story story = yearly().removed("2020-12-01", Reason.RELOCATED).log("moved", moved);
    List<String> sites =
        story.history().rounds().stream().map(round -> round.place().siteId()).toList();
    assertEquals(List.of("S-1", "S-1", "S-2", "S-2", "S-2"), sites);
    assertEquals(AssemblyType.DC, story.history().type());
    assertEquals(ServiceStatus.State.IN_SERVICE, story.history().service().state());
  }

  @Test
  void serviceStateFollowsTheEvents() {
    Story story =
        yearly()
            .log(
                "w",
                new ServiceStateChanged(
                    Story.ASSEMBLY, on("2023-11-01"), ServiceStateChanged.State.WINTERISED, null));
    assertEquals(ServiceStatus.State.WINTERISED, story.history().service().state());
    story.removed("2023-12-01", Reason.DEMOLISHED);
    assertEquals(ServiceStatus.State.REMOVED, story.history().service().state());
    assertEquals(Story.day("2023-12-01"), story.history().service().removedOn());
  }

  /** Laid up for the winter of 151 days, by the calendar of 2023 and 2024 (a leap year). */
  @Test
  void daysLaidUpOrRemovedAreNotDaysInService() {
    Story story =
        yearly()
            .log("w", state("2023-11-01", ServiceStateChanged.State.WINTERISED))
            .log("s", state("2024-03-31", ServiceStateChanged.State.IN_SERVICE))
            .removed("2024-12-01", Reason.DEMOLISHED);
    ServiceDays days = ServiceDays.of(story.history().events());
    assertEquals(366 - 151, between(days, "2023-10-01", "2024-10-01"));
    assertEquals(30, between(days, "2023-10-02", "2023-12-24"), "from 2 to 31 October");
    assertEquals(0, between(days, "2023-12-01", "2024-03-31"));
    assertEquals(1, between(days, "2024-03-31", "2024-04-01"));
    assertEquals(245, between(days, "2024-01-01", "2025-06-01"), "31 March to 30 November");
    assertEquals(0, between(days, "2024-06-01", "2024-06-01"));
  }

  private static ServiceStateChanged state(String day, ServiceStateChanged.State state) {
    return new ServiceStateChanged(Story.ASSEMBLY, on(day), state, null);
  }

  private static int between(ServiceDays days, String from, String to) {
    return days.between(Story.day(from), Story.day(to));
  }

  @Test
  void onTheDayOfAReplacementTheTestComesBeforeTheRemoval() {
    Story story =
        yearly()
            .test("last", "2023-08-01", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .removed("2023-08-01", Reason.REPLACED_BECAUSE_FAILED);
    assertEquals(List.of("last", "removed-2023-08-01"), ids(story).subList(6, 8));
  }

  @Test
  void aRelocationWithinADayRemovesBeforeItInstalls() {
    Story story =
        yearly().installed("2023-08-01", AssemblyType.DC).removed("2023-08-01", Reason.RELOCATED);
    assertEquals(List.of("removed-2023-08-01", "install-2023-08-01"), ids(story).subList(6, 8));
    assertNull(story.history().service().removedOn());
  }

  private static List<String> ids(Story story) {
    return story.history().events().stream().map(StandingEvent::id).toList();
  }

  /** Definitions, order: valid day, visit start, visit id, sequence in visit, event id. */
  @Test
  void theOrderIsThatOfTheDefinitions() {
    List<LoggedEvent> events = new ArrayList<>();
    events.add(Story.logged("a", test("2020-05-06", visit("V0", 60, 1)), T0));
    events.add(Story.logged("b", test("2020-05-05", visit("V2", 540, 1)), T0));
    events.add(Story.logged("c", test("2020-05-05", visit("V1", 540, 3)), T0));
    events.add(Story.logged("d", work("2020-05-05", visit("V1", null, 2)), T0));
    events.add(Story.logged("f", test("2020-05-05", visit("V1", 545, 1)), T0));
    events.add(Story.logged("e", test("2020-05-05", visit("V1", 545, 1)), T0));
    events.add(Story.logged("g", test("2020-05-05", visit("V9", 480, 1)), T0));
    events.add(
        Story.logged(
            "h",
            Story.installation(
                "2020-05-05", AssemblyType.DC, AssemblyInstalled.DayMeaning.INSTALLED),
            T0));
    Random random = new Random(5);
    for (int i = 0; i < 30; i++) {
      Collections.shuffle(events, random);
      assertEquals(
          List.of("h", "g", "e", "f", "d", "c", "b", "a"),
          AssemblyHistory.of(Story.ASSEMBLY, events, AcceptanceCriteria.shipped()).events().stream()
              .map(StandingEvent::id)
              .toList());
    }
  }

  private static sealspan.event.TestPerformed test(String day, Visit visit) {
    Report report = report(day, 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    report.visit = visit;
    return report.event();
  }

  private static RepairPerformed work(String day, Visit visit) {
    return Story.repair(day, visit, item(CHECK1, Action.CLEANED));
  }

  private static Visit visit(String id, Integer start, int sequence) {
    return new Visit(id, start, sequence, SequenceOrigin.GIVEN);
  }

  @Test
  void withoutAVisitTheDayIsOneVisitInTheOrderOfTheForm() {
    Report found = report("2020-06-02", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    found.visit = null;
    Report left = report("2020-06-02", 1, Phase.AS_LEFT, dc("1.5", "1.5"));
    left.visit = null;
    Story story =
        yearly()
            .test("a-left", left)
            .log("b-repair", Story.repair("2020-06-02", null, item(CHECK1, Action.CLEANED)))
            .test("c-found", found);
    assertEquals(List.of("c-found", "b-repair", "a-left"), ids(story).subList(3, 6));
    assertEquals(Counting.RETEST, story.history().rounds().get(3).counting());
    assertEquals(Result.PASSED, story.history().repairs().get(0).retest());
  }

  @Test
  void aPhaseThatWasNotRecordedFollowsFromTheVisit() {
    Report first = report("2020-06-02", 1, null, dc("0.5", "1.5"));
    Report second = report("2020-06-02", 3, null, dc("1.5", "1.5"));
    Story story =
        yearly()
            .test("x1", first)
            .repair("x2", "2020-06-02", 2, item(CHECK1, Action.CLEANED))
            .test("x3", second);
    assertEquals(Phase.AS_FOUND, story.history().rounds().get(2).phase());
    assertEquals(Phase.AS_LEFT, story.history().rounds().get(3).phase());
  }

  @Test
  void datesWithoutATimeStandBeforeTimesOfTheSameDay() {
    SiteDescribed early = Story.site("2019-01-01", null, null, "Z1");
    SiteDescribed late =
        new SiteDescribed(
            "S-1",
            new Moment(Story.day("2019-01-01"), 60, null),
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            "Z2",
            null,
            null,
            null,
            null,
            null,
            null,
            null);
    assertEquals("Z2", yearly().log("a", late).log("b", early).history().place().zoneId());
  }
}
