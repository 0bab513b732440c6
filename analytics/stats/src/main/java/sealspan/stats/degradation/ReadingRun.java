package sealspan.stats.degradation;

import java.util.Comparator;
import java.util.List;

/**
 * The readings of one component between two actions on it, in order of day; the first that fails is
 * the last of its run.
 *
 * @param readings at least one
 */
public record ReadingRun(List<GaugedReading> readings) {
  /** By content, so that an estimate does not hang on the order of its input. */
  static final Comparator<ReadingRun> ORDER = ReadingRun::compare;

  public ReadingRun {
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("a run holds at least one reading");
    }
    for (int i = 1; i < readings.size(); i++) {
      if (readings.get(i).day() < readings.get(i - 1).day() || readings.get(i - 1).fails()) {
        throw new IllegalArgumentException(
            "a run is in order of day and ends with its first failure, but got " + readings);
      }
    }
  }

  /** Whether it ended with a failed reading. */
  public boolean failed() {
    return last().fails();
  }

  /** Its last reading. */
  public GaugedReading last() {
    return readings.get(readings.size() - 1);
  }

  private static int compare(ReadingRun a, ReadingRun b) {
    int both = Math.min(a.readings.size(), b.readings.size());
    for (int i = 0; i < both; i++) {
      int order = GaugedReading.ORDER.compare(a.readings.get(i), b.readings.get(i));
      if (order != 0) {
        return order;
      }
    }
    return Integer.compare(a.readings.size(), b.readings.size());
  }
}
