package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.RandomHistory;
import sealspan.assembly.Story;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.TestPerformed.Phase;
import sealspan.table.AssemblyRows;
import sealspan.table.DriftRow;
import sealspan.table.FitRows;
import sealspan.table.ForecastRow;
import sealspan.table.LevelRow;
import sealspan.table.SuddenFailureRow;

class NextTestTest {
  private static final AcceptanceCriteria CRITERIA = AcceptanceCriteria.shipped();

  private static final FitCut CUT = new FitCut("cut", "0:1", Instant.EPOCH, 1);

  private static LatestFits fits() {
    List<DriftRow> drifts = new ArrayList<>();
    for (String check : List.of("check1", "check2")) {
      drifts.add(
          new DriftRow(
              "type=DC",
              check,
              "DIRECTION_OF_FLOW",
              50,
              50,
              200,
              200,
              10,
              -0.1,
              -0.12,
              -0.08,
              0.0,
              0.0,
              0.02,
              0.3,
              1.0,
              1.0,
              null));
    }
    SuddenFailureRow sudden =
        new SuddenFailureRow("type=DC", 50, 200, 10, 2, null, null, 0.05, "pooled");
    FitRows empty = Fits.of("type=DC", Members.of(List.of()), CUT);
    return LatestFits.of(
        List.of(
            new FitRows(
                empty.stratum(),
                empty.revision(),
                empty.fit(),
                empty.ratePrior(),
                empty.rateNodes(),
                empty.rateEffects(),
                empty.exposurePowers(),
                empty.sealLife(),
                empty.curves(),
                empty.repairEffects(),
                empty.repairBalance(),
                drifts,
                sudden,
                empty.trends(),
                empty.yearlyRates(),
                empty.comparisons(),
                empty.ageing(),
                empty.retests())));
  }

  private static AssemblyRows rows(Story story) {
    return AssemblyTables.of(Story.ASSEMBLY, story.events(), CRITERIA, fits(), 1);
  }

  private static Story begun() {
    return new Story()
        .installed("2021-01-10", AssemblyType.DC)
        .test("t1", "2022-01-10", 1, Phase.AS_FOUND, Story.dc("1.5", "1.8"));
  }

  /**
   * By hand: one reading of 1.5 with variance .2^2 / 3 + .1^2 / 12, a drift of -.1 in a year of 365
   * days whose mean is known to .02 with 95 %, a second reading of variance .2^2 / 3 that fails
   * where it rounds to less than 1.0.
   */
  @Test
  void workedByHand() {
    AssemblyRows rows = rows(begun());
    ForecastRow f = rows.forecast();
    NormalDistribution normal = new NormalDistribution();
    double years = 365 / 365.25;
    double drift = .02 / normal.inverseCumulativeProbability(.975) * years;
    double sd = Math.sqrt(2 * .04 / 3 + .01 / 12 + drift * drift);
    double moved = .1 * years;
    double one = normal.cumulativeProbability((0.95 - (1.5 - moved)) / sd);
    double two = normal.cumulativeProbability((0.95 - (1.8 - moved)) / sd);
    double sudden = 1 - Math.exp(-.05 * 365 / 365.25);
    assertEquals(LocalDate.parse("2023-01-10"), f.dueOn());
    assertEquals(1 - (1 - one) * (1 - two), f.probabilityDrift(), 1e-9);
    assertEquals(sudden, f.probabilitySudden(), 1e-12);
    assertEquals(1 - (1 - one) * (1 - two) * (1 - sudden), f.probabilityFails(), 1e-9);
    assertNull(f.baseProbability());
    assertEquals("sudden failure", f.drivenBy());
    assertEquals(2, f.readings());
    assertTrue(f.probabilityAtOnce() < f.probability6Months());
    assertTrue(f.probability6Months() < f.probabilityFails());
    assertTrue(f.probabilityFails() < f.probability24Months());
    LevelRow level = rows.levels().get(0);
    assertEquals(1.5, level.levelPsi(), 1e-12);
    assertEquals(-0.1, level.driftPerYear(), 1e-12);
    assertEquals(-0.12, level.driftLowerPerYear(), 1e-9);
    assertEquals(one, level.probabilityReadingBelow(), 1e-9);
    assertTrue(level.note().startsWith("one reading since the last action"), level.note());
  }

  @Test
  void aComponentNearItsLimitDrivesTheForecast() {
    Story story = begun().test("t2", "2023-01-10", 1, Phase.AS_FOUND, Story.dc("1.1", "1.8"));
    assertEquals("check1", rows(story).forecast().drivenBy());
  }

  @Test
  void whereNothingCanBeSaidTheWordsSayWhy() {
    Story failed = begun().test("t2", "2023-01-10", 1, Phase.AS_FOUND, Story.dc("0.6", "1.8"));
    ForecastRow f = rows(failed).forecast();
    assertNull(f.probabilityFails());
    assertTrue(f.note().contains("since it failed on 2023-01-10"), f.note());
    ForecastRow unfitted =
        AssemblyTables.of(Story.ASSEMBLY, begun().events(), CRITERIA, LatestFits.none(), 1)
            .forecast();
    assertEquals("nothing has been fitted yet", unfitted.note());
    assertNull(rows(begun().removed("2023-02-01", AssemblyRemoved.Reason.DEMOLISHED)).forecast());
    // Somebody worked on check 1 after its last reading: only check 2 still drifts.
    Story worked = begun().repair("r1", "2022-03-01", 1, Story.item(Story.CHECK1, Action.CLEANED));
    assertEquals(
        List.of("check2"), rows(worked).levels().stream().map(LevelRow::component).toList());
  }

  /** Hard inputs: whatever the histories, every number is finite and every probability is one. */
  @Test
  void noHistoryGivesNaN() throws ReflectiveOperationException {
    for (int units : new int[] {1, 3, 60}) {
      List<List<LoggedEvent>> logs = new ArrayList<>();
      List<AssemblyRows> members = new ArrayList<>();
      for (int i = 0; i < units; i++) {
        logs.add(RandomHistory.of(i, "A" + i));
        members.add(AssemblyTables.of("A" + i, logs.get(i), CRITERIA, LatestFits.none(), 0));
      }
      List<FitRows> strata = new ArrayList<>();
      for (String stratum : List.of("all", "type=RP", "type=DC")) {
        List<AssemblyRows> of =
            members.stream().filter(m -> Fits.strataOf(m).contains(stratum)).toList();
        strata.add(Fits.of(stratum, Members.of(of), CUT));
      }
      for (FitRows stratum : strata) {
        for (DriftRow drift : stratum.drifts()) {
          assertFinite(drift);
        }
        assertFinite(stratum.suddenFailure());
      }
      LatestFits fits = LatestFits.of(strata);
      for (int i = 0; i < units; i++) {
        AssemblyRows rows = AssemblyTables.of("A" + i, logs.get(i), CRITERIA, fits, 0);
        if (rows.forecast() != null) {
          assertFinite(rows.forecast());
        }
        for (LevelRow level : rows.levels()) {
          assertFinite(level);
        }
      }
    }
  }

  private static void assertFinite(Record row) throws ReflectiveOperationException {
    for (RecordComponent component : row.getClass().getRecordComponents()) {
      if (component.getAccessor().invoke(row) instanceof Double value) {
        assertTrue(Double.isFinite(value), component.getName() + " of " + row);
        if (component.getName().startsWith("probability")) {
          assertTrue(value >= 0 && value <= 1, component.getName() + " of " + row);
        }
      }
    }
  }
}
