package sealspan.stats.rates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Counted events of one unit over its exposure. */
record CountedUnit(long events, double exposureDays) {
  CountedUnit {
    if (events < 0 || !(exposureDays > 0) || Double.isInfinite(exposureDays)) {
      throw new IllegalArgumentException(
          "a unit needs at least 0 events and an exposure above 0, but got "
              + events
              + " and "
              + exposureDays);
    }
  }

  static List<CountedUnit> sorted(long[] events, double[] exposureDays) {
    List<CountedUnit> units = new ArrayList<>(events.length);
    for (int i = 0; i < events.length; i++) {
      units.add(new CountedUnit(events[i], exposureDays[i]));
    }
    units.sort(
        Comparator.comparingLong(CountedUnit::events)
            .thenComparingDouble(CountedUnit::exposureDays));
    return units;
  }
}
