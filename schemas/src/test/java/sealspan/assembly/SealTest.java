package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.RELIEF;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.rp;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved.Reason;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Observation;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;

/** The section "Seals" of the definitions. */
class SealTest {
  /** start/origin/entry-end how reason (lastHeld, foundFailed]. */
  private static List<String> seals(Story story, ComponentAt at) {
    List<String> words = new ArrayList<>();
    for (SealInterval seal : story.history().seals()) {
      if (seal.at().equals(at)) {
        words.add(
            seal.gap()
                + " "
                + seal.startDay()
                + " "
                + seal.origin()
                + " "
                + seal.entryDay()
                + " "
                + seal.endDay()
                + " "
                + seal.end()
                + " "
                + seal.reason()
                + " ("
                + seal.lastHeldOn()
                + ", "
                + seal.foundFailedOn()
                + "]");
      }
    }
    return words;
  }

  private static Story begun() {
    return new Story()
        .installed("2019-01-10", AssemblyType.DC)
        .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
  }

  @Test
  void aSealInPlaceIsCensoredAtTheLastVisitThatCouldHaveReplacedIt() {
    assertEquals(
        List.of("1 2019-01-10 KNOWN 2019-01-10 2020-01-10 IN_PLACE null (2020-01-10, null]"),
        seals(begun(), CHECK1));
  }

  @Test
  void aFailedSealThatIsReplacedFailedBetweenLastHeldAndFound() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair(
                "r2",
                "2021-01-12",
                1,
                item(CHECK1, Action.DISC_REPLACED, null, ReplacementReason.FAILED))
            .test("t3", "2021-01-12", 2, Phase.AS_LEFT, dc("1.5", "1.5"));
    assertEquals(
        List.of(
            "1 2019-01-10 KNOWN 2019-01-10 2021-01-12 REPLACED FAILED (2020-01-10, 2021-01-10]",
            "2 2021-01-12 KNOWN 2021-01-12 2021-01-12 IN_PLACE null (2021-01-12, null]"),
        seals(story, CHECK1));
    assertEquals(
        List.of("1 2019-01-10 KNOWN 2019-01-10 2021-01-12 IN_PLACE null (2021-01-12, null]"),
        seals(story, CHECK2));
  }

  @Test
  void aScheduledReplacementOfASealThatHeldIsNoFailure() {
    Story story =
        begun()
            .repair(
                "r1",
                "2020-01-10",
                2,
                item(CHECK1, Action.FULL_RUBBER_KIT, null, ReplacementReason.SCHEDULED));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2020-01-10 REPLACED SCHEDULED (2020-01-10, null]",
        seals(story, CHECK1).get(0));
  }

  @Test
  void theReasonFailedAloneAlsoMakesAnInterval() {
    Story story =
        begun()
            .repair(
                "r1",
                "2020-05-10",
                1,
                item(CHECK1, Action.MODULE_REPLACED, null, ReplacementReason.FAILED));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2020-05-10 REPLACED FAILED (2020-01-10, 2020-05-10]",
        seals(story, CHECK1).get(0));
  }

  @Test
  void aComponentThatFailedAsFoundFailedWhateverTheReasonSays() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair(
                "r2",
                "2021-01-10",
                2,
                item(CHECK1, Action.DISC_REPLACED, null, ReplacementReason.WHILE_OPEN));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2021-01-10 REPLACED WHILE_OPEN (2020-01-10, 2021-01-10]",
        seals(story, CHECK1).get(0));
  }

  @ParameterizedTest
  @EnumSource(
      value = Action.class,
      names = {
        "NONE",
        "FLUSHED",
        "CLEANED",
        "DISC_TURNED",
        "ADJUSTED",
        "ORING_REPLACED",
        "SPRING_REPLACED",
        "GUIDE_REPLACED",
        "SEAT_REPLACED",
        "OTHER_PART_REPLACED",
        "BODY_REPAIRED"
      })
  void turningCleaningFlushingAndORingsAloneReplaceNoSeal(Action action) {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .repair("r2", "2021-01-10", 2, item(CHECK1, action))
            .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc("1.5", "1.5"));
    assertEquals(
        List.of("1 2019-01-10 KNOWN 2019-01-10 2021-01-10 IN_PLACE null (2021-01-10, null]"),
        seals(story, CHECK1));
  }

  @ParameterizedTest
  @EnumSource(
      value = Action.class,
      names = {
        "DISC_REPLACED",
        "DIAPHRAGM_REPLACED",
        "MODULE_REPLACED",
        "FULL_RUBBER_KIT",
        "REBUILT",
        "ASSEMBLY_REPLACED"
      })
  void discDiaphragmModuleKitRebuildAndAssemblyReplaceIt(Action action) {
    Story story = begun().repair("r1", "2020-01-10", 2, item(CHECK1, action));
    assertEquals(2, seals(story, CHECK1).size());
    assertEquals(1, seals(story, CHECK2).size());
  }

  @Test
  void aRetestThatFailsFindsNoFailedSeal() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "0.5"))
            .repair("r2", "2021-01-10", 2, item(CHECK2, Action.CLEANED))
            .test("t3", "2021-01-10", 3, Phase.AS_LEFT, dc("0.5", "1.5"))
            .repair(
                "r3",
                "2021-01-10",
                4,
                item(CHECK1, Action.DISC_REPLACED, null, ReplacementReason.DAMAGED_IN_WORK));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2021-01-10 REPLACED DAMAGED_IN_WORK (2021-01-10, null]",
        seals(story, CHECK1).get(0));
  }

  @Test
  void aFailedSealThatStaysIsFoundFailedUntilItPasses() {
    Story story = begun().test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
    assertEquals(
        List.of("1 2019-01-10 KNOWN 2019-01-10 2021-01-10 IN_PLACE null (2020-01-10, 2021-01-10]"),
        seals(story, CHECK1));
  }

  @Test
  void whereTheRecordBeginsLaterTheOriginIsUnknown() {
    Story story =
        new Story()
            .recordBegins("2018-06-01", AssemblyType.DC)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"))
            .repair("r1", "2021-01-10", 1, item(CHECK1, Action.DISC_REPLACED));
    assertEquals(
        List.of(
            "1 2018-06-01 UNKNOWN 2018-06-01 2021-01-10 REPLACED null (2020-01-10, null]",
            "2 2021-01-10 KNOWN 2021-01-10 2021-01-10 IN_PLACE null (null, null]"),
        seals(story, CHECK1));
  }

  @Test
  void aReplacementBeforeTheRecordGivesAnOriginAndALateEntry() {
    Story story =
        new Story()
            .repair("r0", "2015-03-01", 1, item(CHECK1, Action.DISC_REPLACED))
            .recordBegins("2018-06-01", AssemblyType.DC)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(
        List.of("1 2015-03-01 KNOWN 2018-06-01 2020-01-10 IN_PLACE null (2020-01-10, null]"),
        seals(story, CHECK1));
    assertEquals(
        List.of("1 2018-06-01 UNKNOWN 2018-06-01 2020-01-10 IN_PLACE null (2020-01-10, null]"),
        seals(story, CHECK2));
  }

  @Test
  void anInstallDayBeforeTheRecordIsNoOriginOfTheSeal() {
    Story story =
        new Story()
            .installed("1995-06-01", AssemblyType.DC)
            .recordBegins("2018-06-01", AssemblyType.DC)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(
        List.of("1 2018-06-01 UNKNOWN 2018-06-01 2020-01-10 IN_PLACE null (2020-01-10, null]"),
        seals(story, CHECK1));
  }

  @ParameterizedTest
  @CsvSource({
    "DEMOLISHED, REMOVED, ",
    "HAZARD_ELIMINATED, REMOVED, ",
    "REPLACED_AS_SCHEDULED, REPLACED, SCHEDULED"
  })
  void removalEndsEverySeal(Reason reason, SealInterval.End end, ReplacementReason why) {
    Story story = begun().removed("2020-08-01", reason);
    String row =
        "1 2019-01-10 KNOWN 2019-01-10 2020-08-01 " + end + " " + why + " (2020-01-10, null]";
    assertEquals(List.of(row), seals(story, CHECK1));
    assertEquals(List.of(row), seals(story, CHECK2));
  }

  @Test
  void ofAnAssemblyReplacedBecauseItFailedOnlyTheFailedSealFailed() {
    Story story =
        begun()
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"))
            .removed("2021-01-20", Reason.REPLACED_BECAUSE_FAILED);
    assertEquals(
        List.of(
            "1 2019-01-10 KNOWN 2019-01-10 2021-01-20 REPLACED FAILED (2020-01-10, 2021-01-10]"),
        seals(story, CHECK1));
    assertEquals(
        List.of("1 2019-01-10 KNOWN 2019-01-10 2021-01-20 REPLACED WHILE_OPEN (2021-01-10, null]"),
        seals(story, CHECK2));
  }

  @Test
  void aRebuildOfTheWholeAssemblyEndsAll() {
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.RP)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, rp("1.5", "7.0", Observation.CLOSED_TIGHT))
            .repair(
                "r1",
                "2020-01-10",
                2,
                item(AssemblyHistory.WHOLE, Action.REBUILT, null, ReplacementReason.FAILED));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2020-01-10 REPLACED FAILED (null, 2020-01-10]",
        seals(story, RELIEF).get(0));
    assertEquals(
        "1 2019-01-10 KNOWN 2019-01-10 2020-01-10 REPLACED WHILE_OPEN (2020-01-10, null]",
        seals(story, CHECK2).get(0));
    assertEquals(6, story.history().seals().size());
  }

  @Test
  void twoPartsInOneRepairAreOneReplacement() {
    Story story =
        begun()
            .repair(
                "r1",
                "2020-01-10",
                2,
                item(CHECK1, Action.DISC_REPLACED),
                item(CHECK1, Action.DIAPHRAGM_REPLACED));
    assertEquals(2, seals(story, CHECK1).size());
  }

  @Test
  void aUnitThatIsInstalledAgainBringsItsSealAndComesUnderObservationAnew() {
    Story story =
        begun()
            .removed("2020-08-01", Reason.RELOCATED)
            .installed("2020-11-01", AssemblyType.DC)
            .test("t2", "2021-11-01", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(
        List.of(
            "1 2019-01-10 KNOWN 2019-01-10 2020-08-01 REMOVED null (2020-01-10, null]",
            "2 2019-01-10 KNOWN 2020-11-01 2021-11-01 IN_PLACE null (2021-11-01, null]"),
        seals(story, CHECK1));
  }

  @Test
  void aDetectorHasSealsInMainlineAndBypass() {
    assertEquals(
        List.of("check1", "check2", "bypass.check1", "bypass.check2"),
        positions(AssemblyType.DCDA));
    assertEquals(List.of("check1", "check2", "bypass.check1"), positions(AssemblyType.DCDA_II));
    assertEquals(
        List.of(
            "check1",
            "check2",
            "relief_valve",
            "bypass.check1",
            "bypass.check2",
            "bypass.relief_valve"),
        positions(AssemblyType.RPDA));
    assertEquals(List.of("check1", "air_inlet"), positions(AssemblyType.PVB));
    assertEquals(List.of(), positions(AssemblyType.AVB));
  }

  private static List<String> positions(AssemblyType type) {
    return new Story()
        .installed("2019-01-10", type).history().seals().stream().map(s -> s.at().text()).toList();
  }

  @Test
  void shutoffsHaveNoSealInTheseTables() {
    Story story =
        begun()
            .repair(
                "r1",
                "2020-01-10",
                2,
                item(ComponentAt.main(Component.SHUTOFF1), Action.DISC_REPLACED));
    assertEquals(2, story.history().seals().size());
  }
}
