package sealspan.answers;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.CurveRow;
import sealspan.table.ExposurePowerRow;
import sealspan.table.ExposureRow;
import sealspan.table.FindingRow;
import sealspan.table.FitRow;
import sealspan.table.FitRows;
import sealspan.table.JobRow;
import sealspan.table.LedgerEntry;
import sealspan.table.OccurrenceRow;
import sealspan.table.QuarantinedRow;
import sealspan.table.RateEffectRow;
import sealspan.table.RateNodeRow;
import sealspan.table.RatePriorRow;
import sealspan.table.RateRow;
import sealspan.table.ReadingRow;
import sealspan.table.RepairBalanceRow;
import sealspan.table.RepairEffectRow;
import sealspan.table.RepairEpisodeRow;
import sealspan.table.RepairRow;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;
import sealspan.table.TestRow;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/** A small invented utility, written down row by row. */
public final class HandMade {
  private static final Instant RECORDED = Instant.parse("2025-03-01T08:00:00Z");

  private HandMade() {}

  private static LocalDate day(String text) {
    return text == null ? null : LocalDate.parse(text);
  }

  /** All bundles: four assemblies at two sites, two zones, one fit. */
  public static List<Bundle> bundles() {
    return List.of(
        a1(),
        a2(),
        a3(),
        a4(),
        z1(),
        fit(),
        allFit(),
        HandMadeFouling.rows(),
        HandMadeWatch.rows());
  }

  /** RP at the school: fouled twice, cleaned, then a new disc. */
  public static AssemblyRows a1() {
    return new AssemblyRows(
        "A1",
        7,
        assembly("A1", "S1", "North school", "Z1", "HIGH", "RP", "1", null, 3, 2, 2, 1, 731, 1),
        List.of(
            test("A1", "t1", "v1", 1, "2022-04-04", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
                .outcome("PASSED", "all readings at or above their limits")
                .row(),
            test("A1", "t2", "v2", 1, "2023-04-05", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
                .outcome("FAILED", "check 1 held 3.0 psi, the limit is 5.0 psi")
                .exposure(366, "FOULING")
                .row(),
            test(
                    "A1",
                    "t3",
                    "v2",
                    3,
                    "2023-04-05",
                    "AS_LEFT",
                    "AFTER_REPAIR",
                    "RP",
                    "1",
                    "S1",
                    "Z1")
                .outcome("PASSED", "all readings at or above their limits")
                .notCounted("it is an as-left round")
                .row(),
            test("A1", "t4", "v3", 1, "2024-04-04", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
                .outcome("FAILED", "check 1 held 4.9 psi, the limit is 5.0 psi")
                .exposure(365, "DAMAGE")
                .marginal()
                .row()),
        List.of(
            reading("A1", "t1", "2022-04-04", "AS_FOUND", "check1", "STATIC_DROP", "7.2", "PASSED"),
            reading("A1", "t2", "2023-04-05", "AS_FOUND", "check1", "STATIC_DROP", "3.0", "FAILED"),
            reading(
                "A1",
                "t2",
                "2023-04-05",
                "AS_FOUND",
                "check2",
                "BACKPRESSURE_TIGHTNESS",
                null,
                "UNKNOWN"),
            reading("A1", "t3", "2023-04-05", "AS_LEFT", "check1", "STATIC_DROP", "6.8", "PASSED"),
            reading(
                "A1", "t4", "2024-04-04", "AS_FOUND", "check1", "STATIC_DROP", "4.9", "FAILED")),
        List.of(
            new ExposureRow(
                "A1",
                "t2",
                "whole",
                day("2022-04-04"),
                day("2023-04-05"),
                366,
                true,
                "FOULING",
                "NONE"),
            new ExposureRow(
                "A1",
                "t4",
                "whole",
                day("2023-04-05"),
                day("2024-04-04"),
                365,
                true,
                "DAMAGE",
                "CLEANED")),
        List.of(
            new RepairRow(
                "A1",
                "r1",
                1,
                "v2",
                day("2023-04-05"),
                "check1",
                "LOW_READING",
                "DEBRIS",
                null,
                "CLEANED",
                false,
                null,
                null,
                true,
                "PASSED",
                day("2024-04-04"),
                "FAILED",
                45),
            new RepairRow(
                "A1",
                "r2",
                1,
                "v3",
                day("2024-04-04"),
                "check1",
                "LOW_READING",
                "SEAL_CUT",
                null,
                "DISC_REPLACED",
                true,
                "FAILED",
                "1 disc kit K1 (EPDM)",
                true,
                null,
                null,
                null,
                null)),
        List.of(
            new SealRow(
                "A1",
                "RP",
                "1",
                "check1",
                1,
                day("2020-05-01"),
                true,
                day("2022-04-04"),
                day("2024-04-04"),
                "REPLACED",
                "FAILED",
                day("2023-04-05"),
                day("2024-04-04")),
            new SealRow(
                "A1",
                "RP",
                "1",
                "check1",
                2,
                day("2024-04-04"),
                true,
                day("2024-04-04"),
                day("2024-04-04"),
                "IN_PLACE",
                null,
                null,
                null)),
        List.of(
            new FindingRow(
                "A1",
                "t4",
                day("2024-04-04"),
                "1004",
                "T9",
                "SUSPICIOUS",
                "verdict-differs",
                "issued as passed, but check 1 is below its limit")),
        List.of(
            new JobRow(
                "A1", "j1", day("2023-04-05"), "v2", "C-7", true, "USD", 6000L, 1500L, 0L, 7500L)),
        List.of(
            new OccurrenceRow(
                "A1", "i1", day("2020-05-01"), "AssemblyInstalled", "installed at position P1")),
        new RateRow(
            "A1",
            2,
            2,
            731,
            "PER_YEAR",
            null,
            0.17,
            null,
            1.0,
            0.158,
            1.0,
            1,
            1,
            null,
            0.025,
            null,
            "ASSEMBLIES_LIKE_IT",
            0.35,
            0.08,
            0.9,
            0.28,
            0.077,
            0.593,
            0.02,
            0.62,
            1.2,
            1L,
            2L,
            1.0,
            true,
            "every test failed: only the lower end is known"),
        List.of(
            episode("v2", "2023-04-05", "CLEANED", "FOULING", 0.6, "2024-04-04", 365, true, null),
            episode(
                "v3",
                "2024-04-04",
                "SEAL_RENEWED",
                "DAMAGE",
                0.98,
                null,
                null,
                null,
                "not tested again yet")),
        HandMadeForecasts.levels("A1"),
        HandMadeForecasts.forecast("A1"),
        HandMadeForecasts.frozen("A1"));
  }

  /** DC at the mill: three passes, one by a tester without a valid certificate. */
  public static AssemblyRows a2() {
    return new AssemblyRows(
        "A2",
        4,
        assembly("A2", "S2", "Mill", "Z2", "LOW", "DC", "2", null, 3, 0, 2, 0, 730, 0),
        List.of(
            test("A2", "u1", "w1", 1, "2022-06-01", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
                .outcome("PASSED", "all readings at or above their limits")
                .row(),
            test("A2", "u2", "w2", 1, "2023-06-01", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
                .outcome("PASSED", "all readings at or above their limits")
                .exposure(365, null)
                .notCompliant()
                .row(),
            test("A2", "u3", "w3", 1, "2024-05-31", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
                .outcome("PASSED", "all readings at or above their limits")
                .exposure(365, null)
                .row()),
        List.of(),
        List.of(),
        List.of(
            new RepairRow(
                "A2",
                "r3",
                1,
                "w3",
                day("2024-05-31"),
                "check2",
                null,
                "NOTHING_FOUND",
                null,
                "DISC_REPLACED",
                true,
                "SCHEDULED",
                "1 disc kit K2 (silicone)",
                false,
                null,
                null,
                null,
                20)),
        List.of(
            new SealRow(
                "A2",
                "DC",
                "2",
                "check2",
                1,
                day("2022-06-01"),
                false,
                day("2022-06-01"),
                day("2024-05-31"),
                "REPLACED",
                "SCHEDULED",
                day("2024-05-31"),
                null)),
        List.of(
            new FindingRow(
                "A2",
                "u2",
                day("2023-06-01"),
                "2002",
                "T9",
                "INVALID",
                "certificate-expired",
                "the certificate of tester T9 ended on 2023-05-01")),
        List.of(),
        List.of(),
        new RateRow(
            "A2",
            2,
            0,
            730,
            "PER_TEST",
            null,
            null,
            null,
            0.0,
            0.0,
            0.842,
            2,
            0,
            null,
            null,
            null,
            "ASSEMBLIES_LIKE_IT",
            null,
            null,
            null,
            0.04,
            0.002,
            0.181,
            0.002,
            0.05,
            1.8,
            1L,
            2L,
            1.0,
            false,
            "failures do not accumulate evenly with time (coefficient of log exposure 0.20, 95 %"
                + " interval -0.10 to 0.50), so shares per test are quoted, not yearly rates"),
        List.of(),
        HandMadeForecasts.levels("A2"),
        HandMadeForecasts.forecast("A2"),
        HandMadeForecasts.frozen("A2"));
  }

  /** RP at the mill that no one has tested yet. */
  public static AssemblyRows a3() {
    return new AssemblyRows(
        "A3",
        1,
        assembly("A3", "S2", "Mill", "Z2", "HIGH", "RP", "2", null, 0, 0, 0, 0, 0, 0),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(new OccurrenceRow("A3", "x1", day("2024-02-02"), "VisitAttempted", "no access")),
        untested("A3"),
        List.of(),
        HandMadeForecasts.levels("A3"),
        HandMadeForecasts.forecast("A3"),
        HandMadeForecasts.frozen("A3"));
  }

  /** PVB at the school, taken out in 2023. */
  public static AssemblyRows a4() {
    return new AssemblyRows(
        "A4",
        3,
        assembly(
            "A4", "S1", "North school", "Z1", "LOW", "PVB", "1", "2023-10-01", 1, 0, 0, 0, 0, 0),
        List.of(
            test("A4", "p1", "y1", 1, "2023-05-02", "AS_FOUND", "ROUTINE", "PVB", "1", "S1", "Z1")
                .outcome("PASSED", "all readings at or above their limits")
                .row()),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(new OccurrenceRow("A4", "q1", day("2023-10-01"), "AssemblyRemoved", "removed")),
        untested("A4"),
        List.of(),
        HandMadeForecasts.levels("A4"),
        HandMadeForecasts.forecast("A4"),
        HandMadeForecasts.frozen("A4"));
  }

  private static ZoneRows z1() {
    return new ZoneRows(
        "Z1",
        2,
        List.of(
            new WaterSampleRow(
                "Z1",
                "s1",
                day("2023-03-20"),
                "ST-4",
                "Iron",
                "Total",
                "0.41",
                "mg/l",
                "MEASURED",
                null,
                null),
            new WaterSampleRow(
                "Z1",
                "s2",
                day("2023-06-20"),
                "ST-4",
                "Iron",
                "Total",
                null,
                null,
                "BELOW_DETECTION",
                "0.05 mg/l",
                null)),
        List.of(
            new WaterDisturbanceRow(
                "Z1",
                "d1",
                "MAIN_BREAK",
                day("2023-03-15"),
                day("2023-03-17"),
                null,
                null,
                "12 inch main, invented")));
  }

  private static RepairEpisodeRow episode(
      String visit,
      String day,
      String decision,
      String found,
      Double readingShare,
      String nextOn,
      Integer exposureDays,
      Boolean failedNext,
      String leftOut) {
    return new RepairEpisodeRow(
        "A1",
        visit,
        day(day),
        "check1",
        "RP",
        "1",
        "Z1",
        decision,
        found,
        readingShare,
        1069,
        1069,
        1069,
        0,
        0,
        "NONE",
        nextOn == null ? null : "PASSED",
        decision.equals("SEAL_RENEWED"),
        day(nextOn),
        exposureDays,
        failedNext,
        nextOn == null ? null : false,
        leftOut);
  }

  private static RepairEffectRow effect(
      int place, String quantity, Double figure, Double lower, Double upper, String note) {
    return new RepairEffectRow(
        "all", "ANY", place, quantity, figure, lower, upper, 60, 21, 40, 6, 55, note);
  }

  private static CurveRow curve(
      String question, String estimator, String reason, int days, double height, double least) {
    return new CurveRow(
        "type=RP component=check1",
        question,
        estimator,
        reason,
        days,
        height,
        least,
        Math.max(0, least - 0.1),
        Math.min(1, height + 0.1),
        12,
        days == 0 ? 0 : 2);
  }

  private static SealLifeRow restrictedMean(String stratum) {
    return new SealLifeRow(
        stratum,
        "REPLACED_ANY_REASON",
        "Kaplan-Meier, first gaps",
        "restricted mean to 4 years, years",
        3.6,
        2.9,
        4.0,
        2,
        1,
        1,
        0,
        4.0,
        null,
        null);
  }

  private static RateRow untested(String assemblyId) {
    return new RateRow(
        assemblyId,
        0,
        0,
        0,
        "PER_YEAR",
        null,
        null,
        null,
        null,
        null,
        null,
        0,
        0,
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
        null,
        null,
        null,
        null,
        "no test has an exposure");
  }

  private static RatePriorRow rates(String stratum, int assemblies) {
    boolean all = stratum.equals("all");
    return new RatePriorRow(
        stratum,
        assemblies,
        2 * assemblies,
        2,
        731L * assemblies,
        0.2,
        0.1,
        0.4,
        2 * assemblies - 1,
        1,
        0.11,
        0.003,
        0.5,
        1.2,
        6.0,
        0.2,
        all ? -20.0 : null,
        -20.5,
        all ? -19.8 : null,
        all ? -12.1 : null,
        all ? 0.046 : null,
        all ? 2L : null,
        all ? 0.4 : null,
        all ? 1 : null,
        all ? 0.1 : null,
        all ? 0.03 : null,
        all ? 1.2 : null,
        "the intervals take all assemblies to share one rate");
  }

  /** Rates of all assemblies, with two nodes of the lattice. */
  private static FitRows allFit() {
    FitRow fit =
        new FitRow("all", "cut-1", "0:9", Instant.parse("2025-02-01T00:00:00Z"), 4, "00fe", "test");
    FitRows rates =
        FitRows.ofRates(
            "all",
            rates("all", 2),
            List.of(
                new RateNodeRow("all", 0, 0, 0.1, 0.6, 1L << 40, 0L),
                new RateNodeRow("all", 0, 1, 0.4, 0.4, 1L << 40, 1L << 38)),
            List.of(
                new RateEffectRow("all", "type", "RP", 60, 9, 1.0, null, null, "the base"),
                new RateEffectRow("all", "type", "DC", 40, 3, 0.6, 0.3, 1.1, null)),
            List.of(
                new ExposurePowerRow("all", "ALL", 100, 12, 0, 0.9, 0.7, 1.1, "PER_YEAR", null),
                new ExposurePowerRow("type=DC", "ALL", 40, 12, 0, 0.2, -0.1, 0.5, "PER_TEST", null),
                new ExposurePowerRow(
                    "type=DC",
                    "FOULING",
                    38,
                    2,
                    2,
                    null,
                    null,
                    null,
                    "PER_YEAR",
                    "not identified: there are only 2 such failures; it needs 10")));
    return new FitRows(
        "all",
        1,
        fit,
        rates.ratePrior(),
        rates.rateNodes(),
        rates.rateEffects(),
        rates.exposurePowers(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static FitRows fit() {
    return new FitRows(
        "type=RP",
        1,
        new FitRow(
            "type=RP", "cut-1", "0:9", Instant.parse("2025-02-01T00:00:00Z"), 2, "00ff", "test"),
        rates("type=RP", 1),
        List.of(),
        List.of(),
        List.of(),
        List.of(
            restrictedMean("component=check1"),
            restrictedMean("type=RP"),
            new SealLifeRow(
                "type=RP component=check1",
                "SEAL_FAILED",
                "TURNBULL",
                "median years until failed",
                null,
                2.0,
                null,
                12,
                12,
                6,
                1,
                4.0,
                null,
                "first seals of known origin; half had failed after 2.0 and not after 3.0 years"),
            new SealLifeRow(
                "type=RP",
                "SEAL_FAILED",
                "Weibull, interval-censored",
                "median, years",
                null,
                null,
                null,
                2,
                1,
                1,
                0,
                4.0,
                null,
                "fewer than 5 failures: no figure")),
        List.of(
            curve("SEAL_FAILED", "TURNBULL", null, 0, 1.0, 1.0),
            curve("SEAL_FAILED", "TURNBULL", null, 366, 1.0, 0.8),
            curve("SEAL_FAILED", "TURNBULL", null, 731, 0.8, 0.8),
            curve("REPLACED_ANY_REASON", "WANG_CHANG", null, 0, 1.0, 1.0),
            curve("REPLACED_ANY_REASON", "WANG_CHANG", null, 1434, 0.5, 0.5),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "FAILED", 0, 0.0, 0.0),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "FAILED", 1434, 0.3, 0.3),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "SCHEDULED", 900, 0.2, 0.2)),
        List.of(
            effect(
                0,
                "in words",
                null,
                null,
                null,
                "Had all been cleaned, 31 % (20 to 42) would have failed the next yearly test;"
                    + " had all seals been renewed, 14 % (5 to 24); n = 100 (invented)."),
            effect(
                1,
                "failing the next yearly test, had all been cleaned",
                0.31,
                0.2,
                0.42,
                "invented"),
            effect(
                2,
                "failing the next yearly test, had all seals been renewed",
                0.14,
                0.05,
                0.24,
                "invented"),
            effect(3, "difference, cleaned less renewed", 0.17, 0.03, 0.31, "invented"),
            effect(5, "as it happened, cleaned: not comparable", 0.35, 0.23, 0.48, "raw share"),
            effect(6, "as it happened, seal renewed: not comparable", 0.15, 0.06, 0.3, null)),
        List.of(
            new RepairBalanceRow(
                "all", "ANY", "age of the seal", 4.1, 6.2, -0.62, 5.0, 5.1, -0.02)),
        HandMadeForecasts.drifts(),
        HandMadeForecasts.suddenFailure(),
        HandMadeTrends.trends(),
        HandMadeTrends.years(),
        HandMadeTrends.comparisons(),
        HandMadeTrends.ageing(),
        HandMadeTrends.retests());
  }

  /** Three rows that did not go in, one of them put right since. */
  public static List<QuarantinedRow> quarantined() {
    return List.of(
        new QuarantinedRow(
            "q-1",
            "tests-2024.csv",
            "tests-2024.csv",
            12,
            "day",
            "REJECTED",
            "32.04.2024 is no date; write 2024-04-30",
            "A1,32.04.2024,RP",
            RECORDED,
            null),
        new QuarantinedRow(
            "q-2",
            "tests-2024.csv",
            "tests-2024.csv",
            19,
            null,
            "CONFLICT",
            "report 2003 was read before with another content",
            "A2,2024-05-31,DC",
            RECORDED,
            null),
        new QuarantinedRow(
            "q-3",
            "tests-2024.csv",
            "tests-2024.csv",
            23,
            "size",
            "REJECTED",
            "'x' is not a size; write it as 3/4",
            "A3,2024-06-01,DC,x",
            RECORDED,
            null),
        new QuarantinedRow(
            "q-4",
            "tests-2024.csv",
            "tests-2024.csv",
            23,
            "size",
            "PUT_RIGHT",
            "The file was imported again to its end without this complaint.",
            null,
            RECORDED,
            "q-3"));
  }

  /** One cut that was fitted, and what was entered of the watch. */
  public static List<LedgerEntry> ledger() {
    List<LedgerEntry> entries = new ArrayList<>();
    entries.add(new LedgerEntry("cut-1", "CUT_FITTED", "0:9", RECORDED, "engine"));
    entries.addAll(HandMadeWatch.ledger());
    return List.copyOf(entries);
  }

  private static AssemblyRow assembly(
      String id,
      String site,
      String label,
      String zone,
      String hazard,
      String type,
      String size,
      String removed,
      int tests,
      int failures,
      int withExposure,
      int failuresWithExposure,
      long days,
      int replacements) {
    return new AssemblyRow(
        id,
        site,
        label,
        "P-" + id,
        zone,
        "J1",
        hazard,
        "CONTAINMENT",
        "DOMESTIC",
        null,
        null,
        null,
        type,
        size,
        "Maker M",
        "X-" + size,
        "SN-" + id,
        day("2020-05-01"),
        day("2020-05-01"),
        day(removed),
        removed == null ? "IN_SERVICE" : "REMOVED",
        null,
        null,
        null,
        null,
        tests,
        failures,
        withExposure,
        failuresWithExposure,
        days,
        0,
        replacements,
        tests + 2,
        1,
        RECORDED);
  }

  private static ReadingRow reading(
      String assembly,
      String event,
      String day,
      String phase,
      String component,
      String measure,
      String psi,
      String result) {
    return new ReadingRow(
        assembly,
        event,
        day(day),
        phase,
        component,
        measure,
        psi == null ? "NOT_TESTED" : "MEASURED",
        psi,
        psi == null ? null : "PSI",
        psi == null ? null : Double.valueOf(psi),
        psi == null ? null : "5.0 psi",
        result,
        "4.9".equals(psi),
        psi == null ? null : "t3".equals(event) || "t4".equals(event) ? 2 : 1,
        psi == null ? null : 5.0,
        psi == null ? null : 0.2,
        psi == null ? null : 0.1,
        psi == null ? null : "G1 2022-01-10");
  }

  private static TestDraft test(
      String assembly,
      String event,
      String visit,
      int sequence,
      String day,
      String phase,
      String purpose,
      String type,
      String size,
      String site,
      String zone) {
    TestDraft draft = new TestDraft();
    draft.row =
        new TestRow(
            assembly,
            event,
            visit,
            sequence,
            day(day),
            "R-" + event,
            "hand.csv",
            phase,
            purpose,
            "T9",
            "G1",
            null,
            null,
            type,
            size,
            site,
            zone,
            (int) (day(day).toEpochDay() - day("2020-05-01").toEpochDay()),
            "PASSED",
            null,
            null,
            false,
            true,
            null,
            true,
            null,
            null,
            null,
            RECORDED);
    return draft;
  }

  /** A test row in the making. */
  private static final class TestDraft {
    private TestRow row;

    TestDraft outcome(String outcome, String reason) {
      return with(
          outcome,
          reason,
          row.marginal(),
          row.notCountedBecause(),
          row.compliant(),
          row.exposureDays(),
          row.failureClass());
    }

    TestDraft exposure(int days, String failureClass) {
      return with(
          row.outcome(),
          row.reason(),
          row.marginal(),
          row.notCountedBecause(),
          row.compliant(),
          days,
          failureClass);
    }

    TestDraft notCounted(String because) {
      return with(
          row.outcome(),
          row.reason(),
          row.marginal(),
          because,
          row.compliant(),
          row.exposureDays(),
          row.failureClass());
    }

    TestDraft notCompliant() {
      return with(
          row.outcome(),
          row.reason(),
          row.marginal(),
          row.notCountedBecause(),
          false,
          row.exposureDays(),
          row.failureClass());
    }

    TestDraft marginal() {
      return with(
          row.outcome(),
          row.reason(),
          true,
          row.notCountedBecause(),
          row.compliant(),
          row.exposureDays(),
          row.failureClass());
    }

    private TestDraft with(
        String outcome,
        String reason,
        boolean marginal,
        String because,
        boolean compliant,
        Integer exposureDays,
        String failureClass) {
      row =
          new TestRow(
              row.assemblyId(),
              row.eventId(),
              row.visitId(),
              row.sequence(),
              row.day(),
              row.reportNumber(),
              row.source(),
              row.phase(),
              row.purpose(),
              row.testerId(),
              row.gaugeId(),
              row.method(),
              row.procedureEdition(),
              row.type(),
              row.sizeInch(),
              row.siteId(),
              row.zoneId(),
              row.ageDays(),
              row.verdictIssued(),
              outcome,
              reason,
              marginal,
              because == null,
              because,
              compliant,
              exposureDays,
              failureClass,
              row.reportedAt(),
              row.recordedAt());
      return this;
    }

    TestRow row() {
      return row;
    }
  }
}
