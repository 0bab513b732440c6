package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TrueRepairs;
import sealspan.study.practice.TrueWear;
import sealspan.table.AgeingRow;
import sealspan.table.AssemblyRows;
import sealspan.table.RepairEpisodeRow;
import sealspan.table.RetestRow;
import sealspan.table.YearlyRateRow;

class AgeingTest {
  private static final PracticeParameters PLAIN =
      PracticeParameters.plain(77, 1_200, TrueWear.plain(2, 8), TrueRepairs.plain(.6, .05));

  /**
   * An invented fleet that ages by Kijima's second model with shape 2, scale 8 years, and repairs
   * that leave .6 and .05 of the age: the figures come back, and the second model fits better. Seed
   * fixed; limits of 95 % widened by half.
   */
  @Test
  void theTruthOfAnInventedFleetComesBack() {
    List<AssemblyRows> members = PracticeRows.of(PLAIN);
    List<AgeingRow> rows = Ageing.of("component=check1", "check1", Members.of(members));
    assertEquals(2, rows.size());
    AgeingRow second = rows.get(1);
    assertEquals("KIJIMA_II", second.model());
    assertTrue(second.fitsBetter(), rows.toString());
    assertFalse(rows.get(0).fitsBetter());
    assertTrue(second.separates(), second.note());
    assertHolds(2, second.shapeLower(), second.shapeUpper());
    assertHolds(8, second.scaleLower(), second.scaleUpper());
    assertHolds(.6, second.keptSealLower(), second.keptSealUpper());
    assertHolds(.05, second.newSealLower(), second.newSealUpper());
    assertEquals(members.size(), second.components());
    assertTrue(second.note().startsWith("repair with the seal kept leaves"), second.note());
  }

  private static void assertHolds(double truth, double lower, double upper) {
    double half = (upper - lower) / 2;
    assertTrue(
        lower - half / 2 <= truth && truth <= upper + half / 2,
        lower + " to " + upper + ": " + truth);
  }

  /** A retest of the same visit fails with probability .2 after cleaning, .1 after a new seal. */
  @Test
  void retestsHaveAShareOfTheirOwn() {
    List<AssemblyRows> members =
        PracticeRows.of(PLAIN.ofSize(600).with(TrueRepairs.plain(.6, .05).withDoesNotTake(.2, .1)));
    List<RetestRow> rows =
        Retests.of("component=check1", RepairEffects.episodes("check1", Members.of(members)));
    assertEquals("CLEANED", rows.get(0).action());
    assertTrue(rows.get(0).retests() > 100);
    assertHolds(.2, rows.get(0).lower(), rows.get(0).upper());
    assertHolds(.1, rows.get(1).lower(), rows.get(1).upper());
  }

  /** An episode without one of the two decisions, or without a retest, counts in no share. */
  @Test
  void otherEpisodesCountInNoShare() {
    List<RepairEpisodeRow> episodes =
        List.of(episode(null, "FAILED"), episode("CLEANED", null), episode("CLEANED", "PASSED"));
    RetestRow cleaned = Retests.of("all", episodes).get(0);
    assertEquals(1, cleaned.retests());
    assertEquals(0.0, cleaned.share());
  }

  private static RepairEpisodeRow episode(String decision, String retest) {
    return new RepairEpisodeRow(
        "A",
        "v",
        LocalDate.of(2020, 1, 1),
        "check1",
        "DC",
        null,
        null,
        decision,
        "NOT_KNOWN",
        null,
        null,
        null,
        null,
        0,
        0,
        "NONE",
        retest,
        false,
        null,
        null,
        null,
        null,
        null);
  }

  /** With a flat hazard nothing is claimed. */
  @Test
  void aFlatHazardSeparatesNothing() {
    List<AssemblyRows> members =
        PracticeRows.of(
            PracticeParameters.plain(5, 400, TrueWear.plain(1, 8), TrueRepairs.plain(.6, .05)));
    for (AgeingRow row : Ageing.of("component=check1", "check1", Members.of(members))) {
      assertFalse(row.separates(), row.toString());
      assertTrue(row.note().startsWith("cannot separate clean from replace through ageing"));
    }
  }

  @Test
  void fewFailuresSayNothing() {
    List<AssemblyRows> members = PracticeRows.of(PLAIN.ofSize(2));
    for (AgeingRow row :
        Ageing.of("component=check1", "check1", Members.of(members.subList(0, 1)))) {
      assertNull(row.shape());
      assertFalse(row.separates());
      assertTrue(row.note().contains("at least 5 are needed"), row.note());
    }
    assertEquals(List.of(), Ageing.of("all", null, Members.of(members)));
    assertEquals(2, Ageing.of("component=check1", "check1", Members.of(List.of())).size());
    assertNull(Retests.of("all", List.of()).get(0).share());
  }

  /** The days of the years add up to the days watched, and the tests to the exposures. */
  @Test
  void yearsAddUp() {
    List<AssemblyRows> members = PracticeRows.of(PracticeParameters.usual(3, 150));
    List<YearlyRateRow> years = YearlyRates.of("all", null, Members.of(members));
    long watched = 0;
    int replaced = 0;
    for (AssemblyRows rows : members) {
      ReplacementDays unit = ReplacementDays.of(rows, null);
      if (unit != null) {
        watched += unit.exit() - unit.entry();
        replaced += unit.days().length;
      }
    }
    assertEquals(watched, years.stream().mapToLong(YearlyRateRow::watchedDays).sum());
    assertEquals(replaced, years.stream().mapToInt(YearlyRateRow::replacements).sum());
    assertEquals(
        members.stream()
            .flatMap(m -> m.exposures().stream())
            .filter(e -> e.component().equals("whole"))
            .count(),
        years.stream().mapToInt(YearlyRateRow::tests).sum());
  }
}
