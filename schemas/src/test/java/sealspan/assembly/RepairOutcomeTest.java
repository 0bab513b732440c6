package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.day;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.psi;
import static sealspan.assembly.Story.report;

import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.event.Action;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.TestPerformed.Phase;

class RepairOutcomeTest {
  private static Story failed() {
    return new Story()
        .installed("2019-01-10", AssemblyType.DC)
        .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5"));
  }

  private static RepairOutcome only(Story story) {
    List<RepairOutcome> repairs = story.history().repairs();
    assertEquals(1, repairs.size());
    return repairs.get(0);
  }

  @Test
  void theFirstRetestTellsWhetherItTookAndTheNextAsFoundWhetherItHeld() {
    RepairOutcome cleaned =
        only(
            failed()
                .repair("r", "2020-01-10", 2, item(CHECK1, Action.CLEANED))
                .test("t2", "2020-01-10", 3, Phase.AS_LEFT, dc("1.5", "1.5"))
                .test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("0.5", "1.5")));
    assertTrue(cleaned.foundFailed());
    assertEquals(Result.PASSED, cleaned.retest());
    assertEquals(day("2021-01-10"), cleaned.nextOn());
    assertEquals(Result.FAILED, cleaned.next());
  }

  @Test
  void aRoundThatDidNotReachTheComponentIsNoNextResult() {
    RepairOutcome cleaned =
        only(
            failed()
                .repair("r", "2020-01-10", 2, item(CHECK1, Action.CLEANED))
                .test(
                    "t2",
                    report(
                        "2021-01-10",
                        1,
                        Phase.AS_FOUND,
                        psi(CHECK2, Measure.DIRECTION_OF_FLOW, "0.2")))
                .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5")));
    assertNull(cleaned.retest());
    assertEquals(day("2022-01-10"), cleaned.nextOn());
    assertEquals(Result.PASSED, cleaned.next());
  }

  @Test
  void workInBetweenTakesTheNextResultAway() {
    List<RepairOutcome> repairs =
        failed()
            .repair("r1", "2020-01-10", 2, item(CHECK1, Action.CLEANED))
            .repair("r2", "2020-06-10", 1, item(CHECK1, Action.DISC_REPLACED))
            .test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5"))
            .history()
            .repairs();
    assertNull(repairs.get(0).next());
    assertEquals(Result.PASSED, repairs.get(1).next());
  }

  @Test
  void aComponentOpenedWhileSoundHadNotFailed() {
    assertFalse(
        only(failed().repair("r", "2020-01-10", 2, item(CHECK2, Action.CLEANED))).foundFailed());
  }

  @Test
  void aShutoffHasNoResultHere() {
    RepairOutcome valve =
        only(
            failed()
                .repair(
                    "r",
                    "2020-01-10",
                    2,
                    item(ComponentAt.main(Component.SHUTOFF2), Action.OTHER_PART_REPLACED))
                .test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5")));
    assertNull(valve.next());
    assertFalse(valve.foundFailed());
  }

  @Test
  void anActionOnTheWholeFollowsTheAssembly() {
    RepairOutcome rebuilt =
        only(
            failed()
                .repair("r", "2020-01-10", 2, item(AssemblyHistory.WHOLE, Action.REBUILT))
                .test("t2", "2020-01-10", 3, Phase.AS_LEFT, dc("1.5", "0.5"))
                .test("t3", "2021-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.5")));
    assertTrue(rebuilt.foundFailed());
    assertEquals(Result.FAILED, rebuilt.retest());
    assertEquals(Result.PASSED, rebuilt.next());
  }
}
