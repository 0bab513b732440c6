package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.RELIEF;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.psi;
import static sealspan.assembly.Story.report;
import static sealspan.assembly.Story.rp;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Mechanism;
import sealspan.event.Observation;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;

/** The section "Exposure" of the definitions, sentence by sentence. */
class ExposureTest {
  private static final ComponentAt WHOLE = AssemblyHistory.WHOLE;

  private static List<String> exposures(Story story, ComponentAt at) {
    return story.history().exposures().stream()
        .filter(e -> e.at().equals(at))
        .map(
            e ->
                e.eventId()
                    + " "
                    + e.exposureDays()
                    + (e.failed() ? " failed " + e.failureClass() : " passed"))
        .toList();
  }

  private static Counting counting(Story story, String eventId) {
    return story.history().rounds().stream()
        .filter(round -> round.source().id().equals(eventId))
        .findFirst()
        .orElseThrow()
        .counting();
  }

  private static Story begun() {
    return new Story()
        .installed("2019-01-10", AssemblyType.DC)
        .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
  }

  @Test
  void noPriorPassMeansNoExposure() {
    Story story = begun();
    assertEquals(List.of(), exposures(story, WHOLE));
    assertEquals(List.of(), exposures(story, CHECK1));
    assertEquals(Counting.COUNTED, counting(story, "t1"));
  }

  @Test
  void itRunsFromTheLastKnownPassToThisRound() {
    Story story = begun().test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, WHOLE));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, CHECK1));
    assertEquals(List.of("t2 366 passed"), exposures(story, CHECK2));
  }

  @Test
  void failedAndNotRepairedHasNoneUntilTheNextPass() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("0.4", "1.5"))
            .test("t4", "2023-01-10", 1, Phase.AS_FOUND, dc("1.4", "1.5"))
            .test("t5", "2024-01-10", 1, Phase.AS_FOUND, dc("1.4", "1.5"));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED", "t5 365 passed"), exposures(story, CHECK1));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED", "t5 365 passed"), exposures(story, WHOLE));
    assertEquals(
        List.of("t2 366 passed", "t3 365 passed", "t4 365 passed", "t5 365 passed"),
        exposures(story, CHECK2));
    assertEquals(Counting.COUNTED, counting(story, "t3"));
  }

  @Test
  void unknownExtendsToTheNextKnownResult() {
    Report stopped =
        report("2021-01-10", 1, Phase.AS_FOUND, psi(CHECK1, Measure.DIRECTION_OF_FLOW, "0.5"));
    stopped.conduct = Conduct.STOPPED_AT_DEFICIENCY;
    Story story =
        begun()
            .test("t2", stopped)
            .repair("r2", "2021-01-10", 2, item(CHECK1, Action.CLEANED))
            .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "0.2"));
    assertEquals(List.of("t3 731 failed UNCLASSIFIED"), exposures(story, CHECK2));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, CHECK1));
  }

  @Test
  void whatWasNotReachedAndNotActedOnGetsItsResultFromTheRetest() {
    for (String check2 : List.of("1.5", "0.2")) {
      Report stopped =
          report("2021-01-10", 1, Phase.AS_FOUND, psi(CHECK1, Measure.DIRECTION_OF_FLOW, "0.5"));
      stopped.conduct = Conduct.STOPPED_AT_DEFICIENCY;
      Story story =
          begun()
              .test("t2", stopped)
              .repair("r2", "2021-01-10", 2, item(CHECK1, Action.CLEANED))
              .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc("1.5", check2))
              .test("t4", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
      assertEquals(
          check2.equals("1.5")
              ? List.of("t3 366 passed", "t4 365 passed")
              : List.of("t3 366 failed UNCLASSIFIED"),
          exposures(story, CHECK2));
      assertEquals(List.of("t2 366 failed FOULING", "t4 365 passed"), exposures(story, CHECK1));
    }
  }

  @Test
  void aComponentActedOnWhileUnknownIsCensoredAtItsLastPass() {
    Report stopped =
        report("2021-01-10", 1, Phase.AS_FOUND, psi(CHECK1, Measure.DIRECTION_OF_FLOW, "0.5"));
    stopped.conduct = Conduct.STOPPED_AT_DEFICIENCY;
    Story story =
        begun()
            .test("t2", stopped)
            .repair(
                "r2",
                "2021-01-10",
                2,
                item(CHECK1, Action.CLEANED),
                item(CHECK2, Action.DISC_REPLACED, null, ReplacementReason.WHILE_OPEN))
            .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc("1.5", "1.6"))
            .test("t4", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.6"));
    assertEquals(List.of("t4 365 passed"), exposures(story, CHECK2));
    assertEquals(List.of("t2 366 failed FOULING", "t4 365 passed"), exposures(story, CHECK1));
  }

  @Test
  void workWithoutATestBeforeItAlsoFindsTheStateUnknown() {
    Story story =
        begun()
            .repair("r2", "2020-09-10", 1, item(CHECK1, Action.CLEANED))
            .test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.6"));
    assertEquals(List.of(), exposures(story, CHECK1));
    assertEquals(List.of("t3 366 passed"), exposures(story, CHECK2));
    assertEquals(List.of(), exposures(story, WHOLE));
  }

  @Test
  void workOnAShutoffTestCockOrBodyEndsNoExposure() {
    Story story = begun();
    for (Component part : List.of(Component.SHUTOFF2, Component.TEST_COCKS, Component.BODY)) {
      story.repair(
          "r-" + part, "2020-09-10", 1, item(ComponentAt.main(part), Action.OTHER_PART_REPLACED));
    }
    story.test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.6"));
    assertEquals(List.of("t3 366 passed"), exposures(story, WHOLE));
    assertEquals(List.of("t3 366 passed"), exposures(story, CHECK1));
  }

  @Test
  void aRetestOfTheSameVisitHasNone() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair("r2", "2021-01-10", 2, item(CHECK1, Action.CLEANED))
            .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc("0.9", "1.5"))
            .test("t4", "2021-01-10", 4, Phase.AS_FOUND, dc("1.2", "1.5"));
    assertEquals(1, exposures(story, WHOLE).size());
    assertEquals(List.of("t2 366 failed FOULING"), exposures(story, CHECK1));
    assertEquals(Counting.RETEST, counting(story, "t3"));
    assertEquals(Counting.RETEST, counting(story, "t4"));
    RepairOutcome cleaning = story.history().repairs().get(0);
    assertEquals(Result.FAILED, cleaning.retest());
  }

  @Test
  void anInstallationTestHasNoneButIsAPass() {
    Report first = report("2019-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    first.purpose = Purpose.INSTALLATION;
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.DC)
            .test("t0", first)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(Counting.INSTALLATION, counting(story, "t0"));
    assertEquals(List.of("t1 365 passed"), exposures(story, WHOLE));
  }

  @Test
  void aTestOnTheInstallDayWithoutPurposeIsOne() {
    Report first = report("2019-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    first.purpose = null;
    Story story = new Story().installed("2019-01-10", AssemblyType.DC).test("t0", first);
    assertEquals(Counting.INSTALLATION, counting(story, "t0"));
  }

  @Test
  void aPurposeThatWasNotRecordedIsTakenAsRoutine() {
    Report report = report("2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    report.purpose = null;
    Story story = begun().test("t2", report);
    assertEquals(Counting.COUNTED, counting(story, "t2"));
    assertEquals(List.of("t2 366 passed"), exposures(story, WHOLE));
  }

  @ParameterizedTest
  @EnumSource(
      value = Purpose.class,
      names = {
        "COMPLAINT",
        "INCIDENT",
        "VISIBLE_DISCHARGE",
        "AFTER_REPAIR",
        "RETURN_TO_SERVICE",
        "OTHER"
      })
  void otherRoundsAreCountedApartButTheirResultIsKnown(Purpose purpose) {
    Report report = report("2020-07-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    report.purpose = purpose;
    Story story =
        begun().test("t2", report).test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    assertEquals(Counting.NOT_ROUTINE, counting(story, "t2"));
    assertEquals(List.of("t3 184 failed UNCLASSIFIED"), exposures(story, WHOLE));
    report.readings = java.util.Arrays.asList(dc("0.5", "1.5"));
    Story failing =
        begun().test("t2", report).test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    assertEquals(List.of(), exposures(failing, WHOLE));
    assertEquals(List.of("t3 184 passed"), exposures(failing, CHECK2));
  }

  @Test
  void anAsLeftRoundOfALaterVisitIsAPassAndNoExposure() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair("r2", "2021-01-20", 1, item(CHECK1, Action.DISC_REPLACED))
            .test("t3", "2021-01-20", 2, Phase.AS_LEFT, dc("1.6", "1.5"))
            .test("t4", "2022-01-20", 1, Phase.AS_FOUND, dc("1.6", "1.5"));
    assertEquals(Counting.AS_LEFT, counting(story, "t3"));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED", "t4 365 passed"), exposures(story, WHOLE));
    List<TestExposure> check1 =
        story.history().exposures().stream().filter(e -> e.at().equals(CHECK1)).toList();
    assertEquals(Action.NONE, check1.get(0).lastAction());
    assertEquals(Action.DISC_REPLACED, check1.get(1).lastAction());
  }

  @Test
  void flushedToPassFailsAndWasLeftHolding() {
    Report flushed = report("2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    flushed.flushedToPass = true;
    Story story =
        begun().test("t2", flushed).test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(List.of("t2 366 failed FOULING", "t3 365 passed"), exposures(story, WHOLE));
    assertEquals(List.of("t3 365 passed"), exposures(story, CHECK1));
  }

  @Test
  void removalAndInstallationAskForANewPass() {
    Story story =
        begun()
            .removed("2020-06-01", AssemblyRemoved.Reason.RELOCATED)
            .installed("2020-06-01", AssemblyType.DC)
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"))
            .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(List.of("t3 365 passed"), exposures(story, WHOLE));
    assertNull(story.history().service().removedOn());
  }

  @Test
  void anUndecidedRoundStillTellsOfTheComponentsThatWereRead() {
    Story story =
        begun()
            .test(
                "t2",
                report(
                    "2021-01-10", 1, Phase.AS_FOUND, psi(CHECK1, Measure.DIRECTION_OF_FLOW, "1.5")))
            .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(Counting.UNDECIDED, counting(story, "t2"));
    assertEquals(List.of("t2 366 passed", "t3 365 passed"), exposures(story, CHECK1));
    assertEquals(List.of("t3 731 passed"), exposures(story, CHECK2));
    assertEquals(List.of("t3 731 passed"), exposures(story, WHOLE));
  }

  @Test
  void aSecondRoundOnTheSameDayHasNoExposure() {
    Report again = report("2020-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    again.visit = Story.visit("later that day", 1);
    assertEquals(List.of(), exposures(begun().test("t2", again), WHOLE));
  }

  @Test
  void aVerdictWithoutReadingsCountsForTheAssemblyAlone() {
    Report failed = report("2021-01-10", 1, Phase.AS_FOUND);
    failed.issued = IssuedVerdict.FAILED;
    Story story = begun().test("t2", failed);
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, WHOLE));
    assertEquals(List.of(), exposures(story, CHECK1));
  }

  @Test
  void anAssemblyThatFailsInTwoComponentsCountsOnce() {
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.RP)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, rp("2.5", "7.0", Observation.CLOSED_TIGHT))
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, rp("1.5", "4.0", Observation.LEAKED));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, WHOLE));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, RELIEF));
    assertEquals(List.of("t2 366 failed UNCLASSIFIED"), exposures(story, CHECK2));
  }

  /** The section "Fouling" of the definitions. */
  @ParameterizedTest
  @CsvSource({
    "DEBRIS, CLEANED, 1.5, FOULING",
    "DEPOSIT, DISC_REPLACED, 1.5, FOULING",
    "SCALE, CLEANED, 0.5, FOULING",
    "SEAL_CUT, CLEANED, 1.5, DAMAGE",
    "SPRING_WEAK, SPRING_REPLACED, 1.5, DAMAGE",
    "NOTHING_FOUND, CLEANED, 1.5, UNCLASSIFIED",
    "OTHER, CLEANED, 1.5, UNCLASSIFIED",
    "UNKNOWN, CLEANED, 1.5, FOULING",
    ", CLEANED, 1.5, FOULING",
    ", FLUSHED, 1.5, FOULING",
    ", CLEANED, 0.5, UNCLASSIFIED",
    ", DISC_TURNED, 1.5, UNCLASSIFIED",
    ", DISC_REPLACED, 1.5, UNCLASSIFIED",
    ", NONE, 1.5, UNCLASSIFIED"
  })
  void foulingIsDecidedByMechanismThenByWhatCleaningAloneDid(
      Mechanism mechanism, Action action, String retest, FailureClass expected) {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair("r2", "2021-01-10", 2, item(CHECK1, action, mechanism, null))
            .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc(retest, "1.5"));
    assertEquals(List.of("t2 366 failed " + expected), exposures(story, CHECK1));
    assertEquals(List.of("t2 366 failed " + expected), exposures(story, WHOLE));
  }

  @Test
  void debrisBesideDamageIsFoulingAndOtherComponentsDoNotCount() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair(
                "r2",
                "2021-01-10",
                2,
                item(CHECK1, Action.DISC_REPLACED, Mechanism.SEAL_CUT, null),
                item(CHECK2, Action.CLEANED, Mechanism.DEBRIS, null));
    assertEquals(List.of("t2 366 failed DAMAGE"), exposures(story, WHOLE));
    story.repair("r3", "2021-01-10", 3, item(CHECK1, Action.CLEANED, Mechanism.DEBRIS, null));
    assertEquals(List.of("t2 366 failed FOULING"), exposures(story, WHOLE));
  }

  @Test
  void aRepairDaysLaterStillClassifiesTheFailure() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair("r2", "2021-02-10", 1, item(CHECK1, Action.CLEANED))
            .test("t3", "2021-02-10", 2, Phase.AS_LEFT, dc("1.5", "1.5"))
            .repair("r3", "2022-01-10", 1, item(CHECK1, Action.CLEANED, Mechanism.SEAL_CUT, null));
    assertEquals(List.of("t2 366 failed FOULING"), exposures(story, CHECK1));
  }
}
