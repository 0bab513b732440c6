package sealspan.study.practice;

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
 * Invented rows of rounds and of the water of zones, as many as the link of fouling to water reads;
 * for tests and truth studies. Every method gives back this record.
 */
public final class InventedWater {
  private final Map<String, List<TestRow>> tests = new TreeMap<>();
  private final Map<String, List<WaterSampleRow>> samples = new TreeMap<>();
  private final Map<String, List<WaterDisturbanceRow>> events = new TreeMap<>();
  private int count;

  /** A zone, without water or tests so far. */
  public InventedWater zone(String zone) {
    samples.computeIfAbsent(zone, z -> new ArrayList<>());
    events.computeIfAbsent(zone, z -> new ArrayList<>());
    return this;
  }

  /** Something done to the water of a zone; {@code until} is null where only its day is known. */
  public InventedWater event(String zone, String kind, LocalDate from, LocalDate until) {
    zone(zone);
    events
        .get(zone)
        .add(new WaterDisturbanceRow(zone, "e" + ++count, kind, from, until, null, null, null));
    return this;
  }

  /** A measured sample. */
  public InventedWater sample(String zone, String what, LocalDate day, String value, String unit) {
    return sample(zone, what, day, value, unit, "MEASURED", null, null);
  }

  /** A sample in which nothing was found above a limit of detection. */
  public InventedWater notDetected(
      String zone, String what, LocalDate day, String limit, String unit) {
    return sample(zone, what, day, null, null, "NOT_DETECTED", limit, unit);
  }

  private InventedWater sample(
      String zone,
      String what,
      LocalDate day,
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
                day,
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
  public InventedWater test(String zone, LocalDate day, int days, String failureClass) {
    return test("a" + (1000 + ++count), zone, day, days, 1000, failureClass, "ROUTINE");
  }

  /**
   * A round as found; it counts where its purpose is {@code ROUTINE}.
   *
   * @param days days since the last pass; null where there was none
   * @param age days since the assembly was installed
   * @param failureClass null for a pass
   */
  public InventedWater test(
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

  /** The rows of all assemblies, in order of their ids. */
  public List<AssemblyRows> assemblies() {
    List<AssemblyRows> all = new ArrayList<>();
    tests.forEach(
        (id, rows) ->
            all.add(
                new AssemblyRows(
                    id, 0, null, rows, List.of(), List.of(), List.of(), List.of(), List.of(),
                    List.of(), List.of(), null, List.of(), List.of(), null, List.of())));
    return all;
  }

  /** The rows of all zones, in order of their ids. */
  public List<ZoneRows> zones() {
    List<ZoneRows> all = new ArrayList<>();
    events.forEach((zone, own) -> all.add(new ZoneRows(zone, 0, samples.get(zone), own)));
    return all;
  }
}
