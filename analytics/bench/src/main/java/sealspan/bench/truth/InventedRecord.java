package sealspan.bench.truth;

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

/**
 * Invented rows of rounds and of the water of zones, as many as the link of fouling to water reads.
 */
final class InventedRecord {
  private final List<TestRow> tests = new ArrayList<>();
  private final Map<String, List<WaterSampleRow>> samples = new TreeMap<>();
  private final Map<String, List<WaterDisturbanceRow>> events = new TreeMap<>();

  private void zone(String zone) {
    samples.computeIfAbsent(zone, z -> new ArrayList<>());
    events.computeIfAbsent(zone, z -> new ArrayList<>());
  }

  void event(String zone, String kind, int day) {
    zone(zone);
    List<WaterDisturbanceRow> own = events.get(zone);
    String id = zone + " " + own.size();
    own.add(
        new WaterDisturbanceRow(zone, id, kind, LocalDate.ofEpochDay(day), null, null, null, null));
  }

  void sample(String zone, String what, int day, double value) {
    zone(zone);
    List<WaterSampleRow> own = samples.get(zone);
    String id = zone + " " + own.size();
    own.add(
        new WaterSampleRow(
            zone,
            id,
            LocalDate.ofEpochDay(day),
            "ST",
            what,
            null,
            Double.toString(value),
            "mg/l",
            "MEASURED",
            null,
            null));
  }

  /** A routine round that counts. */
  void routine(String assembly, String zone, int day, int exposureDays, boolean fouled) {
    test(assembly, zone, day, exposureDays, fouled, "ROUTINE");
  }

  /** A fouled round made because somebody noticed it. */
  void noticed(String zone, int day) {
    test("noticed in " + zone, zone, day, null, true, "COMPLAINT");
  }

  private void test(
      String assembly, String zone, int day, Integer exposureDays, boolean fouled, String purpose) {
    boolean routine = purpose.equals("ROUTINE");
    tests.add(
        new TestRow(
            assembly,
            "t" + tests.size(),
            null,
            1,
            LocalDate.ofEpochDay(day),
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
            5_000,
            null,
            fouled ? "FAILED" : "PASSED",
            null,
            false,
            routine,
            routine ? null : "not routine",
            true,
            exposureDays,
            fouled ? "FOULING" : null,
            null,
            null));
  }

  List<AssemblyRows> assemblies() {
    Map<String, List<TestRow>> byAssembly = new TreeMap<>();
    for (TestRow test : tests) {
      byAssembly.computeIfAbsent(test.assemblyId(), a -> new ArrayList<>()).add(test);
    }
    List<AssemblyRows> all = new ArrayList<>();
    byAssembly.forEach(
        (id, own) ->
            all.add(
                new AssemblyRows(
                    id, 0, null, own, List.of(), List.of(), List.of(), List.of(), List.of(),
                    List.of(), List.of(), null, List.of(), List.of(), null, List.of())));
    return all;
  }

  List<ZoneRows> zones() {
    List<ZoneRows> all = new ArrayList<>();
    events.forEach((zone, own) -> all.add(new ZoneRows(zone, 0, samples.get(zone), own)));
    return all;
  }
}
