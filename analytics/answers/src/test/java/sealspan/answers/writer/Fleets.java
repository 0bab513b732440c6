package sealspan.answers.writer;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.avro.PackedBundle;
import sealspan.avro.TableCodec;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.ExposureRow;
import sealspan.table.RateRow;
import sealspan.table.ReadingRow;
import sealspan.table.TestRow;

/** Invented assemblies of any number, with yearly tests that all pass. */
final class Fleets {
  private static final LocalDate BEGIN = LocalDate.of(2010, 1, 1);
  private static final Instant RECORDED = Instant.parse("2025-03-01T08:00:00Z");

  private Fleets() {}

  /** A bundle as it is taken in: packed. */
  static Upsert packed(Bundle bundle) {
    return Upsert.of(new PackedBundle(TableCodec.encode(bundle)));
  }

  /** One assembly with a number of yearly tests, each with four readings. */
  static AssemblyRows assembly(String id, long revision, int tests) {
    List<TestRow> rounds = new ArrayList<>();
    List<ReadingRow> readings = new ArrayList<>();
    List<ExposureRow> exposures = new ArrayList<>();
    for (int i = 0; i < tests; i++) {
      LocalDate day = BEGIN.plusYears(i).plusDays(Math.floorMod(id.hashCode(), 360));
      String event = id + "-" + i;
      rounds.add(round(id, event, day, i));
      for (int c = 1; c <= 4; c++) {
        readings.add(
            new ReadingRow(
                id,
                event,
                day,
                "AS_FOUND",
                "check" + c,
                "STATIC_DROP",
                "MEASURED",
                "6.5",
                "PSI",
                6.5,
                "5.0 psi",
                "PASSED",
                false,
                1,
                5.0,
                0.2,
                0.1,
                "G1 2020-01-01"));
      }
      if (i > 0) {
        exposures.add(
            new ExposureRow(
                id, event, "whole", day.minusYears(1), day, 365, 365, false, null, "NONE"));
      }
    }
    return new AssemblyRows(
        id,
        revision,
        assemblyRow(id, tests),
        rounds,
        readings,
        exposures,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new RateRow(
            id,
            Math.max(0, tests - 1),
            0,
            365L * Math.max(0, tests - 1),
            "PER_YEAR",
            0.0,
            0.0,
            0.5,
            0.0,
            0.0,
            0.5,
            Math.max(0, tests - 1),
            0,
            0.0,
            0.0,
            0.5,
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
            null),
        List.of(),
        List.of(),
        null,
        List.of());
  }

  private static AssemblyRow assemblyRow(String id, int tests) {
    int site = Math.floorMod(id.hashCode(), 5000);
    return new AssemblyRow(
        id,
        "S" + site,
        "Site " + site,
        "P-" + id,
        "Z" + site % 50,
        "J1",
        "HIGH",
        "CONTAINMENT",
        "DOMESTIC",
        null,
        null,
        null,
        "RP",
        "1",
        "Maker M",
        "X1",
        "SN-" + id,
        BEGIN,
        BEGIN,
        null,
        "IN_SERVICE",
        null,
        null,
        null,
        null,
        tests,
        0,
        Math.max(0, tests - 1),
        0,
        365L * Math.max(0, tests - 1),
        0,
        0,
        tests,
        0,
        RECORDED);
  }

  private static TestRow round(String id, String event, LocalDate day, int number) {
    return new TestRow(
        id,
        event,
        "V-" + event,
        1,
        day,
        "R-" + event,
        "fleet.csv",
        "AS_FOUND",
        "ROUTINE",
        "T1",
        "G1",
        "DIRECTION_OF_FLOW",
        "10",
        "RP",
        "1",
        "S1",
        "Z1",
        365 * number,
        "PASSED",
        "PASSED",
        "all readings at or above their limits",
        false,
        true,
        null,
        true,
        number == 0 ? null : 365,
        null,
        null,
        RECORDED);
  }
}
