package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.AssemblyRows;
import sealspan.table.TestRow;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/** Rows of tests and water, made by hand. */
final class InventedWater {
  private final Map<String, List<TestRow>> tests = new TreeMap<>();
  private final Map<String, List<WaterSampleRow>> samples = new TreeMap<>();
  private final Map<String, List<WaterDisturbanceRow>> events = new TreeMap<>();
  private int count;

  InventedWater zone(String zone) {
    samples.computeIfAbsent(zone, z -> new ArrayList<>());
    events.computeIfAbsent(zone, z -> new ArrayList<>());
    return this;
  }

  InventedWater event(String zone, String kind, String from, String until) {
    zone(zone);
    String id = "e" + ++count;
    events
        .get(zone)
        .add(
            new WaterDisturbanceRow(
                zone,
                id,
                kind,
                LocalDate.parse(from),
                until == null ? null : LocalDate.parse(until),
                null,
                null,
                null));
    return this;
  }

  InventedWater sample(String zone, String what, String day, String value, String unit) {
    return sample(zone, what, day, value, unit, "MEASURED", null, null);
  }

  InventedWater notDetected(String zone, String what, String day, String limit, String unit) {
    return sample(zone, what, day, null, null, "NOT_DETECTED", limit, unit);
  }

  private InventedWater sample(
      String zone,
      String what,
      String day,
      String value,
      String unit,
      String detection,
      String limit,
      String limitUnit) {
    zone(zone);
    samples
        .get(zone)
        .add(
            new WaterSampleRow(
                zone,
                "s" + ++count,
                LocalDate.parse(day),
                "ST",
                what,
                null,
                value,
                unit,
                detection,
                limit,
                limitUnit));
    return this;
  }

  /** A counted routine round of an assembly of its own; a null class of failure is a pass. */
  InventedWater test(String zone, LocalDate day, int days, String failureClass) {
    return test("a" + (1000 + ++count), zone, day, days, 1000, failureClass, "ROUTINE");
  }

  InventedWater test(
      String assembly,
      String zone,
      LocalDate day,
      Integer days,
      Integer age,
      String failureClass,
      String purpose) {
    boolean routine = purpose.equals("ROUTINE");
    TestRow row =
        new TestRow(
            assembly,
            "t" + ++count,
            null,
            1,
            day,
            null,
            "invented",
            "AS_FOUND",
            purpose,
            null,
            null,
            null,
            null,
            "DC",
            null,
            "site " + assembly,
            zone,
            age,
            null,
            failureClass == null ? "PASSED" : "FAILED",
            null,
            false,
            routine,
            routine ? null : "not routine",
            true,
            days,
            failureClass,
            null,
            null);
    tests.computeIfAbsent(assembly, a -> new ArrayList<>()).add(row);
    return this;
  }

  List<AssemblyRows> assemblies() {
    List<AssemblyRows> all = new ArrayList<>();
    tests.forEach(
        (id, rows) ->
            all.add(
                new AssemblyRows(
                    id, 0, null, rows, List.of(), List.of(), List.of(), List.of(), List.of(),
                    List.of(), List.of(), null, List.of(), List.of(), null, List.of())));
    return all;
  }

  List<ZoneRows> zones() {
    List<ZoneRows> all = new ArrayList<>();
    events.forEach((zone, own) -> all.add(new ZoneRows(zone, 0, samples.get(zone), own)));
    return all;
  }
}
