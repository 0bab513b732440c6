package sealspan.answers;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.answers.writer.Published;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.ExposureRow;
import sealspan.table.FindingRow;
import sealspan.table.JobRow;
import sealspan.table.LedgerEntry;
import sealspan.table.OccurrenceRow;
import sealspan.table.QuarantinedRow;
import sealspan.table.RateRow;
import sealspan.table.ReadingRow;
import sealspan.table.RepairEpisodeRow;
import sealspan.table.RepairRow;
import sealspan.table.SealRow;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/** A small invented utility, written down row by row. */
public final class HandMade {
  static final Instant RECORDED = Instant.parse("2025-03-01T08:00:00Z");

  private HandMade() {}

  /** Publishes all of it into a data folder, as the writer would. */
  public static Path publishedIn(Path dataFolder) throws SQLException, IOException {
    return Published.in(dataFolder, bundles(), quarantined(), ledger(), HandMadeEvents.all());
  }

  static LocalDate day(String text) {
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
        HandMadeFits.ofType(),
        HandMadeFits.ofAll(),
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
            TestRowDraft.of(
                    "A1", "t1", "v1", 1, "2022-04-04", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
                .outcome("PASSED", "all readings at or above their limits")
                .row(),
            TestRowDraft.of(
                    "A1", "t2", "v2", 1, "2023-04-05", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
                .outcome("FAILED", "check 1 held 3.0 psi, the limit is 5.0 psi")
                .exposure(366, "FOULING")
                .row(),
            TestRowDraft.of(
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
            TestRowDraft.of(
                    "A1", "t4", "v3", 1, "2024-04-04", "AS_FOUND", "ROUTINE", "RP", "1", "S1", "Z1")
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
                day("2024-04-04"),
                1_434),
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
                null,
                0)),
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
            TestRowDraft.of(
                    "A2", "u1", "w1", 1, "2022-06-01", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
                .outcome("PASSED", "all readings at or above their limits")
                .row(),
            TestRowDraft.of(
                    "A2", "u2", "w2", 1, "2023-06-01", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
                .outcome("PASSED", "all readings at or above their limits")
                .exposure(365, null)
                .notCompliant()
                .row(),
            TestRowDraft.of(
                    "A2", "u3", "w3", 1, "2024-05-31", "AS_FOUND", "ROUTINE", "DC", "2", "S2", "Z2")
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
                null,
                730)),
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
            TestRowDraft.of(
                    "A4",
                    "p1",
                    "y1",
                    1,
                    "2023-05-02",
                    "AS_FOUND",
                    "ROUTINE",
                    "PVB",
                    "1",
                    "S1",
                    "Z1")
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
}
