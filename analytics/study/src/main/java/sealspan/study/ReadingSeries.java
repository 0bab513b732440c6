package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.degradation.GaugeError;
import sealspan.stats.degradation.GaugedReading;
import sealspan.stats.degradation.ReadingRun;
import sealspan.table.ReadingRow;

/**
 * The runs of readings of one assembly, component by component.
 *
 * @param component the component
 * @param measure what is measured
 */
record ReadingSeries(String component, String measure) implements Comparable<ReadingSeries> {

  /**
   * One run.
   *
   * @param number its number
   * @param run the readings
   * @param rows the rows that they come from
   */
  record Numbered(int number, ReadingRun run, List<ReadingRow> rows) {
    ReadingRow last() {
      return rows.get(rows.size() - 1);
    }
  }

  /** The runs of each component in order of time; readings of no run are passed over. */
  static Map<ReadingSeries, List<Numbered>> of(List<ReadingRow> readings) {
    Map<ReadingSeries, TreeMap<Integer, List<ReadingRow>>> grouped = new TreeMap<>();
    for (ReadingRow row : readings) {
      if (row.run() != null) {
        grouped
            .computeIfAbsent(
                new ReadingSeries(row.component(), row.measure()), s -> new TreeMap<>())
            .computeIfAbsent(row.run(), n -> new ArrayList<>())
            .add(row);
      }
    }
    Map<ReadingSeries, List<Numbered>> runs = new TreeMap<>();
    grouped.forEach(
        (series, byNumber) -> {
          List<Numbered> numbered = new ArrayList<>(byNumber.size());
          byNumber.forEach((number, rows) -> numbered.add(numbered(number, rows)));
          runs.put(series, numbered);
        });
    return runs;
  }

  private static Numbered numbered(int number, List<ReadingRow> rows) {
    List<GaugedReading> readings = new ArrayList<>(rows.size());
    for (ReadingRow row : rows) {
      readings.add(gauged(row));
    }
    return new Numbered(number, new ReadingRun(readings), rows);
  }

  /** The verdict goes before the number, which is rounded and may be held to a limit above. */
  private static GaugedReading gauged(ReadingRow row) {
    boolean failed = row.result().equals("FAILED");
    boolean measured = row.psi() != null && (row.psi() > 0 || !failed);
    double value = measured ? row.psi() : 0;
    double limit =
        failed ? Math.max(row.limitPsi(), Math.nextUp(value)) : Math.min(row.limitPsi(), value);
    return new GaugedReading(
        (int) row.day().toEpochDay(),
        value,
        measured ? GaugedReading.Seen.MEASURED : GaugedReading.Seen.AT_OR_BELOW,
        limit,
        error(row),
        row.stepPsi(),
        row.gaugePeriod());
  }

  static GaugeError error(ReadingRow row) {
    return row.gaugeErrorPsi() == null
        ? new GaugeError(0, 0)
        : GaugeError.within(row.gaugeErrorPsi());
  }

  @Override
  public int compareTo(ReadingSeries other) {
    int order = component.compareTo(other.component);
    return order != 0 ? order : measure.compareTo(other.measure);
  }
}
