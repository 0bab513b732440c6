package sealspan.study.fouling;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.TestRow;

/** Rows of assemblies made by hand: only what the study of fouling reads is filled in. */
final class MadeRows {
  private final String assemblyId;
  private final String siteId;
  private final Double latitude;
  private final Double longitude;
  private final String type;
  private final List<TestRow> tests = new ArrayList<>();

  MadeRows(String assemblyId, String siteId, Double latitude, Double longitude, String type) {
    this.assemblyId = assemblyId;
    this.siteId = siteId;
    this.latitude = latitude;
    this.longitude = longitude;
    this.type = type;
  }

  /** A routine as-found round; a failure class means that it failed. */
  MadeRows round(String day, Integer exposureDays, String failureClass) {
    return round(day, exposureDays, failureClass != null, failureClass, true);
  }

  MadeRows round(
      String day, Integer exposureDays, boolean failed, String failureClass, boolean counted) {
    tests.add(
        new TestRow(
            assemblyId,
            assemblyId + " " + day,
            "V" + day,
            1,
            LocalDate.parse(day),
            null,
            null,
            "AS_FOUND",
            "ROUTINE",
            null,
            null,
            null,
            null,
            type,
            null,
            siteId,
            "Z1",
            null,
            null,
            failed ? "FAILED" : "PASSED",
            "",
            false,
            counted,
            null,
            true,
            exposureDays,
            failureClass,
            null,
            Instant.parse(day + "T12:00:00Z")));
    return this;
  }

  AssemblyRows rows() {
    AssemblyRow row =
        new AssemblyRow(
            assemblyId,
            siteId,
            null,
            null,
            "Z1",
            null,
            null,
            null,
            null,
            null,
            latitude,
            longitude,
            type,
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
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            null);
    return new AssemblyRows(
        assemblyId,
        0,
        row,
        tests,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        null,
        List.of());
  }
}
