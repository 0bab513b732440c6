package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.Story;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Mechanism;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.table.RepairEpisodeRow;

/** Episodes of repair, worked out by hand; a double check passes from 1.0 psi on. */
class RepairEpisodesTest {
  private static List<RepairEpisodeRow> episodes(List<LoggedEvent> events) {
    return AssemblyTables.of(
            Story.ASSEMBLY, events, AcceptanceCriteria.shipped(), LatestFits.none(), 1)
        .repairEpisodes();
  }

  private static RepairEpisodeRow only(Story story) {
    List<RepairEpisodeRow> episodes = episodes(story.events());
    assertEquals(1, episodes.size(), episodes.toString());
    return episodes.get(0);
  }

  /** New in 2018, found at .8 psi in 2020 and worked on; the caller goes on from there. */
  private static Story failed(Action action, Mechanism mechanism, ReplacementReason reason) {
    return new Story()
        .site("2017-01-01", null, "Z1")
        .installed("2018-03-01", AssemblyType.DC)
        .test("t1", "2019-03-01", 1, Phase.AS_FOUND, dc("1.2", "1.5"))
        .test("t2", "2020-03-01", 1, Phase.AS_FOUND, dc("0.8", "1.3"))
        .repair("r2", "2020-03-01", 2, item(CHECK1, action, mechanism, reason));
  }

  private static Story cleaned() {
    return failed(Action.CLEANED, Mechanism.DEBRIS, null);
  }

  @Test
  void aCleaningThatFailedAtTheNextTest() {
    RepairEpisodeRow row =
        only(
            cleaned()
                .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
                .test("t4", "2021-03-02", 1, Phase.AS_FOUND, dc("0.6", "1.2")));
    assertNull(row.leftOutBecause());
    assertEquals("CLEANED", row.decision());
    assertEquals("FOULING", row.found());
    assertEquals("check1", row.component());
    assertEquals("DC", row.type());
    assertEquals("Z1", row.zoneId());
    assertEquals(0.8, row.readingShare(), 1e-12);
    // 2018-03-01 to 2020-03-01 has a 29 February: 731 days.
    assertEquals(731, row.ageDays());
    assertEquals(731, row.sealAgeDays());
    assertEquals(731, row.sinceActionDays());
    assertEquals(0, row.failuresBefore());
    assertEquals(0, row.cleaningsBefore());
    assertEquals("NONE", row.actionBefore());
    assertEquals("PASSED", row.retestResult());
    assertEquals(366, row.exposureDays());
    assertEquals(true, row.failedNext());
    assertEquals(false, row.untouchedFailedNext());
  }

  @Test
  void thePastGrowsFromOneRepairToTheNext() {
    List<RepairEpisodeRow> rows =
        episodes(
            cleaned()
                .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
                .test("t4", "2021-03-01", 1, Phase.AS_FOUND, dc("0.6", "0.7"))
                .repair(
                    "r4",
                    "2021-03-01",
                    2,
                    item(
                        CHECK1,
                        Action.DISC_REPLACED,
                        Mechanism.SEAL_WORN,
                        ReplacementReason.FAILED),
                    item(CHECK2, Action.CLEANED))
                .test("t5", "2021-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.5"))
                .test("t6", "2022-03-01", 1, Phase.AS_FOUND, dc("0.9", "1.4"))
                .repair("r6", "2022-03-01", 2, item(CHECK1, Action.FLUSHED, null, null))
                .test("t7", "2022-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.5"))
                .events());
    assertEquals(4, rows.size());
    RepairEpisodeRow second = rows.get(1);
    assertEquals("SEAL_RENEWED", second.decision());
    assertEquals("DAMAGE", second.found());
    assertEquals(1, second.failuresBefore());
    assertEquals(1, second.cleaningsBefore());
    assertEquals("CLEANED", second.actionBefore());
    assertEquals(365, second.sinceActionDays());
    assertEquals(1096, second.sealAgeDays());
    assertEquals(true, second.failedNext());
    // Nobody else was there untouched: check 2 was cleaned in the same visit.
    assertNull(second.untouchedFailedNext());
    RepairEpisodeRow third = rows.get(2);
    assertEquals("CLEANED", third.decision());
    assertEquals("NOT_KNOWN", third.found());
    assertEquals("SEAL_RENEWED", third.actionBefore());
    assertEquals(365, third.sealAgeDays());
    assertEquals(0, third.cleaningsBefore());
    assertEquals("not tested again yet", third.leftOutBecause());
    assertEquals("check2", rows.get(3).component());
  }

  /** What was decided first counts, whatever the retest led to. */
  @Test
  void aCleaningThatDidNotTakeStaysACleaning() {
    RepairEpisodeRow row =
        only(
            cleaned()
                .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("0.9", "1.3"))
                .repair(
                    "r3",
                    "2020-03-01",
                    4,
                    item(CHECK1, Action.DISC_REPLACED, null, ReplacementReason.FAILED))
                .test("t4", "2020-03-01", 5, Phase.AS_LEFT, dc("1.5", "1.3"))
                .test("t5", "2021-03-01", 1, Phase.AS_FOUND, dc("1.4", "1.2")));
    assertEquals("CLEANED", row.decision());
    assertTrue(row.sealRenewedInVisit());
    assertEquals("FAILED", row.retestResult());
    assertEquals(false, row.failedNext());
    assertEquals(365, row.exposureDays());
  }

  @Test
  void saysWhyAnEpisodeIsNotCompared() {
    assertLeftOut("no pass was recorded after the work, so no days count", cleaned());
    assertLeftOut(
        "no pass was recorded after the work, so no days count",
        cleaned().test("t4", "2021-03-01", 1, Phase.AS_FOUND, dc("1.6", "1.2")));
    Story passed = cleaned().test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"));
    assertLeftOut("not tested again yet", passed);
    assertLeftOut(
        "the assembly was removed before the next routine test",
        cleaned()
            .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
            .removed("2020-08-01", AssemblyRemoved.Reason.HAZARD_ELIMINATED));
    assertLeftOut(
        "worked on again before the next routine test",
        cleaned()
            .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
            .repair("r3", "2020-07-01", 1, item(CHECK1, Action.FULL_RUBBER_KIT))
            .test("t4", "2021-03-01", 1, Phase.AS_FOUND, dc("1.4", "1.2")));
    sealspan.assembly.Report complaint =
        Story.report("2020-09-01", 1, Phase.AS_FOUND, dc("0.7", "1.2"));
    complaint.purpose = Purpose.COMPLAINT;
    assertLeftOut(
        "seen next outside a routine test",
        cleaned()
            .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
            .test("t4", complaint));
    assertLeftOut(
        "other work: neither cleaning alone nor a new seal",
        failed(Action.SPRING_REPLACED, Mechanism.SPRING_WEAK, null));
    assertLeftOut(
        "the seal was damaged in the work, so what was decided is not known",
        failed(Action.DISC_REPLACED, null, ReplacementReason.DAMAGED_IN_WORK));
    assertLeftOut("what was done is not recorded", failed(null, null, null));
    assertLeftOut("the assembly was replaced", failed(Action.ASSEMBLY_REPLACED, null, null));
  }

  private static void assertLeftOut(String because, Story story) {
    assertEquals(because, only(story).leftOutBecause());
  }

  @Test
  void workOnWhatHadNotFailedIsNoEpisode() {
    Story story =
        new Story()
            .installed("2018-03-01", AssemblyType.DC)
            .test("t1", "2019-03-01", 1, Phase.AS_FOUND, dc("1.2", "1.5"))
            .repair("r1", "2019-03-01", 2, item(CHECK1, Action.CLEANED))
            .test("t2", "2020-03-01", 1, Phase.AS_FOUND, dc("0.9", "1.5"));
    assertEquals(List.of(), episodes(story.events()));
  }

  /** Of an assembly known since the record began, age and seal age are not known. */
  @Test
  void whatIsNotOnTheRecordStaysUnknown() {
    RepairEpisodeRow row =
        only(
            new Story()
                .recordBegins("2018-03-01", AssemblyType.DC)
                .test("t1", "2019-03-01", 1, Phase.AS_FOUND, dc("0.0", "1.5"))
                .repair("r1", "2019-03-01", 2, item(CHECK1, Action.CLEANED))
                .test("t2", "2019-03-01", 3, Phase.AS_LEFT, dc("1.2", "1.5")));
    assertNull(row.ageDays());
    assertNull(row.sealAgeDays());
    assertNull(row.sinceActionDays());
    assertEquals(0, row.readingShare());
  }

  @Test
  void theOrderOfArrivalDecidesNothing() {
    List<LoggedEvent> events =
        new ArrayList<>(
            cleaned()
                .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
                .test("t4", "2021-03-02", 1, Phase.AS_FOUND, dc("0.6", "1.2"))
                .events());
    List<RepairEpisodeRow> inOrder = episodes(events);
    for (int seed = 0; seed < 20; seed++) {
      Collections.shuffle(events, new Random(seed));
      assertEquals(inOrder, episodes(events));
    }
    assertEquals(LocalDate.of(2021, 3, 2), inOrder.get(0).nextOn());
  }
}
