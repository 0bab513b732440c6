package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.day;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;

import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.event.Action;
import sealspan.event.AssemblyType;
import sealspan.event.Mechanism;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;

class AssemblyHistoryTest {
  /**
   * Worked by hand: passed, failed on check 1 with debris, cleaned, passed, disc replaced later.
   */
  @Test
  void aDoubleCheckOverFourYears() {
    AssemblyHistory history =
        new Story()
            .installed("2018-03-01", AssemblyType.DC)
            .test("t0", "2018-03-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"))
            .test("t1", "2019-03-01", 1, Phase.AS_FOUND, dc("1.4", "1.5"))
            .test("t2", "2020-03-01", 1, Phase.AS_FOUND, dc("0.8", "1.3"))
            .repair("r2", "2020-03-01", 2, item(CHECK1, Action.CLEANED, Mechanism.DEBRIS, null))
            .test("t3", "2020-03-01", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
            .test("t4", "2021-03-01", 1, Phase.AS_FOUND, dc("0.5", "1.2"))
            .repair(
                "r4",
                "2021-03-01",
                2,
                item(CHECK1, Action.DISC_REPLACED, Mechanism.SEAL_WORN, ReplacementReason.FAILED))
            .test("t5", "2021-03-01", 3, Phase.AS_LEFT, dc("1.8", "1.2"))
            .history();
    assertEquals(
        List.of(
            Outcome.PASSED,
            Outcome.PASSED,
            Outcome.FAILED,
            Outcome.PASSED,
            Outcome.FAILED,
            Outcome.PASSED),
        history.rounds().stream().map(TestRound::outcome).toList());
    List<TestExposure> whole =
        history.exposures().stream().filter(e -> e.at().equals(AssemblyHistory.WHOLE)).toList();
    assertEquals(List.of(365, 366, 365), whole.stream().map(TestExposure::exposureDays).toList());
    assertEquals(List.of(false, true, true), whole.stream().map(TestExposure::failed).toList());
    assertEquals(FailureClass.FOULING, whole.get(1).failureClass());
    assertEquals(FailureClass.DAMAGE, whole.get(2).failureClass());
    assertEquals(Action.CLEANED, whole.get(2).lastAction());
    List<SealInterval> seals = history.seals().stream().filter(s -> s.at().equals(CHECK1)).toList();
    assertEquals(2, seals.size());
    assertEquals(day("2020-03-01"), seals.get(0).lastHeldOn());
    assertEquals(day("2021-03-01"), seals.get(0).foundFailedOn());
    assertEquals(SealInterval.End.REPLACED, seals.get(0).end());
    assertEquals(SealInterval.End.IN_PLACE, seals.get(1).end());
    assertNull(seals.get(1).foundFailedOn());
    assertEquals(Result.PASSED, history.repairs().get(0).retest());
    assertEquals(Result.FAILED, history.repairs().get(0).next());
    assertEquals(day("2021-03-01"), history.repairs().get(0).nextOn());
    assertTrue(history.repairs().get(0).foundFailed());
    assertEquals(1, history.seals().stream().filter(s -> s.at().equals(CHECK2)).count());
  }
}
