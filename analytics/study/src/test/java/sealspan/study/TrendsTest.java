package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TrueRepairs;
import sealspan.study.practice.TrueWear;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.RepairRow;
import sealspan.table.ReplacementComparisonRow;
import sealspan.table.SealRow;
import sealspan.table.TrendRow;

class TrendsTest {
  private static final LocalDate START = LocalDate.of(2010, 1, 1);

  /** Replaced on day 730 after a visit on day 365: dated on day 547.5. */
  @Test
  void replacementsAreDatedHalfWayBackToTheVisitBefore() {
    AssemblyRows rows =
        assembly(
            "A", List.of(), seals("A", 730, 1_095), List.of(repair("A", 365), repair("A", 730)));
    ReplacementDays days = ReplacementDays.of(rows, null);
    assertArrayEquals(new int[] {(int) START.plusDays(730).toEpochDay()}, days.days());
    assertArrayEquals(new double[] {START.toEpochDay() + 547.5}, days.dated());
    assertEquals(0, days.byAge().start());
    assertEquals(1_095, days.byAge().end());
  }

  /**
   * Half of the assemblies fail in the first of two years, all but a quarter in the second: with
   * equal exposures the rate ratio is ln(1/4) / ln(1/2) = 2.
   */
  @Test
  void theRateRatioIsThatOfTheHazards() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      String id = String.format("A%03d", i);
      members.add(
          assembly(
              id,
              List.of(exposure(id, 0, i % 2 == 0), exposure(id, 1, i % 4 != 0)),
              List.of(),
              List.of()));
    }
    TrendRow year =
        find(Trends.of("all", null, Members.of(members)), "rate ratio, one calendar year later");
    assertEquals(Math.pow(2, 365.25 / 365), year.figure(), 1e-6);
    assertEquals("RISING", year.verdict());
    assertEquals(500, year.events());
    assertEquals(400, year.assemblies());
    TrendRow ordinal =
        find(
            Trends.of("all", null, Members.of(members)),
            "rate ratio, one test of the assembly later");
    assertEquals(2, ordinal.figure(), 1e-6);
    TrendRow words = Trends.of("all", null, Members.of(members)).get(0);
    assertEquals("RISING", words.verdict());
    assertTrue(
        words.note().startsWith("Getting worse: failures found at tests rise by +100"),
        words.note());
  }

  @Test
  void fewEventsSayNothing() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      members.add(
          assembly(
              "A" + i, List.of(exposure("A" + i, 0, i < 4)), seals("A" + i, 500, 900), List.of()));
    }
    List<TrendRow> rows = Trends.of("all", null, Members.of(members.subList(0, 4)));
    assertEquals(2, rows.size());
    assertEquals("NOT_IDENTIFIED", rows.get(0).verdict());
    assertEquals(
        "Cannot be told: failures found at tests were 4, and fewer than 5 say nothing of a trend.",
        rows.get(0).note());
    assertEquals(2, Trends.of("all", null, Members.of(List.of())).size());
  }

  /** All failed, or all alike: a reason, never an exception or a figure without width. */
  @Test
  void hardFleetsGiveReasons() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      members.add(
          assembly(
              "A" + i,
              List.of(exposure("A" + i, 0, true), exposure("A" + i, 1, true)),
              seals("A" + i, 500, 900),
              List.of()));
    }
    for (TrendRow row : Trends.of("all", null, Members.of(members))) {
      assertTrue(row.figure() == null || Double.isFinite(row.figure()), row.toString());
      assertTrue(row.figure() != null || !row.note().isBlank());
    }
    assertNull(
        find(Trends.of("all", null, Members.of(members)), "rate ratio, one calendar year later")
            .figure());
  }

  /**
   * Without ageing or trend, and tests once a year: the trends of replacements and failures are
   * seen about as often as the error allows. 60 invented fleets, seeds fixed; fails only where a
   * binomial test rejects .05 at p &lt; .001.
   */
  @Test
  void flatFleetsAreFlat() {
    int seen = 0;
    int asked = 0;
    for (int seed = 1; seed <= 60; seed++) {
      List<AssemblyRows> members =
          PracticeRows.of(
              PracticeParameters.plain(seed, 40, TrueWear.plain(1, 6), TrueRepairs.plain(.5, .5)));
      for (TrendRow row : Trends.of("all", null, Members.of(members))) {
        boolean calendar = row.quantity().equals("rate ratio, one calendar year later");
        if (calendar || row.quantity().startsWith("Laplace's test, variance")) {
          asked++;
          seen += row.verdict().equals("RISING") || row.verdict().equals("FALLING") ? 1 : 0;
        }
      }
    }
    assertEquals(180, asked);
    // 180 x .05 + 3.1 standard deviations
    assertTrue(seen <= 18, "seen " + seen);
  }

  /** Every seal is replaced once within 1,000 days, whatever the type: no difference. */
  @Test
  void typesAreCompared() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      String id = "A" + i;
      int replacedOn = i % 2 == 0 ? 400 + i : 900 + i;
      members.add(
          assembly(id, i < 20 ? "RP" : "DC", List.of(), seals(id, replacedOn, 1_000), List.of()));
    }
    List<ReplacementComparisonRow> rows = compared(members);
    assertEquals(List.of("type=DC", "type=RP"), rows.stream().map(r -> r.groupName()).toList());
    assertEquals(1, rows.get(0).mean(), 1e-12);
    assertEquals(0, rows.get(0).mean() - rows.get(0).othersMean(), 1e-12);
    assertEquals(1_000 / 365.25, rows.get(0).years(), 1e-12);
    assertEquals(20, rows.get(0).replacements());
    assertEquals(List.of(), compared(members.subList(0, 20)));
    assertTrue(
        compared(members.subList(16, 40)).stream()
            .allMatch(r -> r.mean() == null && r.note().contains("fewer than 5")));
  }

  private static List<ReplacementComparisonRow> compared(List<AssemblyRows> members) {
    return ReplacementComparisons.of("all", ReplacementHistories.of(null, Members.of(members)));
  }

  private static TrendRow find(List<TrendRow> rows, String quantity) {
    return rows.stream().filter(r -> r.quantity().equals(quantity)).findFirst().orElseThrow();
  }

  private static ExposureRow exposure(String id, int year, boolean failed) {
    LocalDate from = START.plusDays(365L * year);
    return new ExposureRow(
        id, "e" + year, "whole", from, from.plusDays(365), 365, 365, failed, null, "none");
  }

  private static RepairRow repair(String id, int day) {
    return new RepairRow(
        id,
        "r" + day,
        1,
        "v",
        START.plusDays(day),
        "check1",
        null,
        null,
        null,
        "CLEANED",
        false,
        null,
        null,
        true,
        null,
        null,
        null,
        null);
  }

  private static List<SealRow> seals(String id, int replacedOn, int until) {
    LocalDate change = START.plusDays(replacedOn);
    LocalDate end = START.plusDays(until);
    return List.of(
        new SealRow(
            id,
            "RP",
            "2",
            "check1",
            1,
            START,
            true,
            START,
            change,
            "REPLACED",
            "FAILED",
            START,
            change,
            0),
        new SealRow(
            id, "RP", "2", "check1", 2, change, true, change, end, "IN_PLACE", null, end, null, 0));
  }

  private static AssemblyRows assembly(
      String id, List<ExposureRow> exposures, List<SealRow> seals, List<RepairRow> repairs) {
    return assembly(id, "RP", exposures, seals, repairs);
  }

  private static AssemblyRows assembly(
      String id,
      String type,
      List<ExposureRow> exposures,
      List<SealRow> seals,
      List<RepairRow> repairs) {
    return new AssemblyRows(
        id,
        0,
        assemblyRow(id, type),
        List.of(),
        List.of(),
        exposures,
        repairs,
        seals,
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        null,
        List.of());
  }

  private static AssemblyRow assemblyRow(String id, String type) {
    return new AssemblyRow(
        id, null, null, null, null, null, null, null, null, null, null, null, type, "2", null, null,
        null, START, START, null, null, null, null, null, null, 0, 0, 0, 0, 0, 0, 0, 0, 0, null);
  }
}
