package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.RELIEF;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.rp;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.GaugeCalibrated;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Unit;

/** Which readings tell of a drift, and which of them belong together. */
class ReadingRunsTest {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  private static List<String> runs(Story story, ComponentAt at) {
    AssemblyHistory history = story.history();
    ReadingRuns runs = ReadingRuns.of(history, CRITERIA);
    List<String> words = new ArrayList<>();
    for (TestRound round : history.rounds()) {
      for (int i = 0; i < round.test().readings().size(); i++) {
        Reading reading = round.test().readings().get(i);
        RunReading run = runs.of(round, i);
        if (run != null && run.at().equals(at)) {
          String read = reading.value() == null ? "none" : reading.value().entered();
          words.add(run.run() + ":" + read);
        }
      }
    }
    return words;
  }

  @Test
  void aRunEndsWithAFailureAndWithAnActionOnTheComponent() {
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.DC)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.9", "1.8"))
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, dc("1.4", "1.8"))
            .test("t3", "2022-01-10", 1, Phase.AS_FOUND, dc("0.9", "1.7"))
            .repair("r1", "2022-01-10", 2, item(CHECK1, Action.CLEANED))
            .test("t4", "2022-01-10", 3, Phase.AS_LEFT, dc("1.8", "1.7"))
            .test("t5", "2023-01-10", 1, Phase.AS_FOUND, dc("1.8", "1.7"))
            .repair("r2", "2023-01-10", 2, item(CHECK2, Action.DISC_TURNED));
    assertEquals(List.of("1:1.9", "1:1.4", "1:0.9", "2:1.8", "2:1.8"), runs(story, CHECK1));
    assertEquals(List.of("1:1.8", "1:1.8", "1:1.7", "1:1.7", "1:1.7"), runs(story, CHECK2));
    ReadingRuns runs = ReadingRuns.of(story.history(), CRITERIA);
    assertEquals(2, runs.openRun("check1", "DIRECTION_OF_FLOW"));
    assertNull(runs.openRun("check2", "DIRECTION_OF_FLOW"));
  }

  @Test
  void readingsOfNoUseAndObservationsOnlyAreNoPartOfARun() {
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.RP)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, rp("2.6", "8.0", Observation.CLOSED_TIGHT))
            .test("t2", "2021-01-10", 1, Phase.AS_FOUND, rp("2.5", "7.8", Observation.LEAKED))
            .removed("2021-02-01", AssemblyRemoved.Reason.DEMOLISHED);
    assertEquals(List.of("1:2.6", "1:2.5"), runs(story, RELIEF));
    assertEquals(List.of(), runs(story, CHECK2));
    assertNull(ReadingRuns.of(story.history(), CRITERIA).openRun("relief_valve", "OPENING_POINT"));
    Story leaking =
        new Story()
            .installed("2019-01-10", AssemblyType.DC)
            .test(
                "t1",
                "2020-01-10",
                1,
                Phase.AS_FOUND,
                Reading.seen(CHECK1, Measure.DIRECTION_OF_FLOW, Observation.LEAKED),
                Reading.seen(CHECK2, Measure.DIRECTION_OF_FLOW, Observation.NOT_TESTED));
    assertEquals(List.of("1:none"), runs(leaking, CHECK1));
    assertEquals(List.of(), runs(leaking, CHECK2));
  }

  @Test
  void stepLimitAndErrorAreInPsiAndTheGaugePeriodFollowsTheCalibration() {
    Reading kpa =
        Reading.measured(CHECK1, Measure.DIRECTION_OF_FLOW, new Quantity("13.8", Unit.KPA));
    Report first = Story.report("2020-01-10", 1, Phase.AS_FOUND, kpa);
    first.gaugeId = "G1";
    Report second = Story.report("2021-01-10", 1, Phase.AS_FOUND, dc("1.80", "1.8"));
    second.gaugeId = "G1";
    Story story =
        new Story()
            .installed("2019-01-10", AssemblyType.DC)
            .test("t1", first)
            .test("t2", second)
            .log("c1", calibrated("2019-12-01"))
            .log("c2", calibrated("2020-12-01"))
            .log("c3", calibrated("2021-12-01"));
    AssemblyHistory history = story.history();
    ReadingRuns runs = ReadingRuns.of(history, CRITERIA);
    RunReading one = runs.of(history.rounds().get(0), 0);
    // 0.1 kPa; 1 psi = 6.894757 kPa (NIST SP 811).
    assertEquals(0.0145, one.stepPsi(), 1e-9);
    assertEquals(1.0, one.limitPsi());
    assertEquals(0.2, one.gaugeErrorPsi());
    assertEquals("G1 2019-12-01", one.gaugePeriod());
    RunReading two = runs.of(history.rounds().get(1), 0);
    assertEquals(0.01, two.stepPsi(), 1e-12);
    assertEquals("G1 2020-12-01", two.gaugePeriod());
    Story unknown =
        new Story()
            .installed("2019-01-10", AssemblyType.DC)
            .test("t1", "2020-01-10", 1, Phase.AS_FOUND, dc("1.8", "1.8"));
    AssemblyHistory other = unknown.history();
    assertEquals(
        "visit 2020-01-10",
        ReadingRuns.of(other, CRITERIA).of(other.rounds().get(0), 0).gaugePeriod());
  }

  private static GaugeCalibrated calibrated(String day) {
    return new GaugeCalibrated("G1", Story.on(day), null, null, null, null, null);
  }

  /** Whatever the history: cut before a round with an exposure, that exposure is the open one. */
  @Property(tries = 300, seed = "3")
  void theOpenExposureIsTheOneThatTheNextRoundEnds(@ForAll long seed) {
    List<LoggedEvent> log = RandomHistory.of(seed, "A");
    AssemblyHistory history = AssemblyHistory.of("A", log, CRITERIA);
    for (TestExposure exposure : history.exposures()) {
      if (!exposure.at().equals(AssemblyHistory.WHOLE)) {
        continue;
      }
      Set<String> after = new HashSet<>();
      boolean reached = false;
      List<StandingEvent> before = new ArrayList<>();
      for (StandingEvent event : history.events()) {
        reached |= event.id().equals(exposure.eventId());
        if (reached) {
          after.add(event.id());
        } else {
          before.add(event);
        }
      }
      AssemblyHistory cut = cut(history, before, after);
      TestRound begun = OpenExposure.begunBy(cut);
      assertTrue(begun != null, "no open exposure before " + exposure);
      assertEquals(exposure.fromDay(), begun.test().when().day());
    }
  }

  private static AssemblyHistory cut(
      AssemblyHistory history, List<StandingEvent> before, Set<String> after) {
    return new AssemblyHistory(
        history.assemblyId(),
        before,
        history.rounds().stream().filter(r -> !after.contains(r.source().id())).toList(),
        history.exposures(),
        history.seals(),
        history.repairs(),
        history.findings(),
        history.duplicatesIgnored(),
        history.installation(),
        history.type(),
        history.sizeInch(),
        history.place(),
        history.installedOn(),
        history.recordBegins(),
        history.service(),
        history.lastRecordedAt(),
        history.failureClasses());
  }
}
