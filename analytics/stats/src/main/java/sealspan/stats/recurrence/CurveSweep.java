package sealspan.stats.recurrence;

import sealspan.stats.InfluenceSum;

/**
 * One pass over the days of a stretch: mean and robust variance at every event day, in work of
 * order spans plus events once they are sorted.
 */
final class CurveSweep {
  private final WatchedUnits units;
  private final InfluenceSum influence;
  private int nextEntry;
  private int nextExit;
  private long watchedNow;
  private long fewest = Long.MAX_VALUE;

  private final int[] days;
  private final long[] watched;
  private final long[] events;
  private final double[] mean;
  private final double[] variance;

  private CurveSweep(WatchedUnits units, int distinctDays) {
    this.units = units;
    influence = new InfluenceSum(units.count());
    days = new int[distinctDays];
    watched = new long[distinctDays];
    events = new long[distinctDays];
    mean = new double[distinctDays];
    variance = new double[distinctDays];
  }

  static CurveSweep over(WatchedUnits units, MeanCumulativeFunction.Mark mark) {
    long[] keys = units.events();
    int distinct = 0;
    for (int i = 0; i < keys.length; i++) {
      distinct += i == 0 || WatchedUnits.day(keys[i]) != WatchedUnits.day(keys[i - 1]) ? 1 : 0;
    }
    CurveSweep sweep = new CurveSweep(units, distinct);
    sweep.advanceTo(distinct == 0 ? units.toDay() : WatchedUnits.day(keys[0]), true);
    int next = 0;
    double mean = 0;
    for (int j = 0; j < distinct; j++) {
      int day = WatchedUnits.day(keys[next]);
      sweep.advanceTo(day, false);
      double n = sweep.watchedNow;
      long total = 0;
      int first = next;
      while (next < keys.length && WatchedUnits.day(keys[next]) == day) {
        int event = WatchedUnits.index(keys[next++]);
        long amount = mark == MeanCumulativeFunction.Mark.COUNT ? 1 : units.eventMark()[event];
        sweep.influence.raise(units.eventUnit()[event], amount / n);
        total += amount;
      }
      sweep.influence.lowerAll(total / n / n);
      mean += total / n;
      sweep.days[j] = day;
      sweep.watched[j] = sweep.watchedNow;
      sweep.events[j] = next - first;
      sweep.mean[j] = mean;
      sweep.variance[j] = sweep.influence.sumOfSquares();
    }
    return sweep;
  }

  /** Applies all entries and exits before the day, in the order of their days. */
  private void advanceTo(int day, boolean noteFewest) {
    long[] entries = units.entries();
    long[] exits = units.exits();
    while (true) {
      int entryDay =
          nextEntry < entries.length ? WatchedUnits.day(entries[nextEntry]) : Integer.MAX_VALUE;
      int exitDay = nextExit < exits.length ? WatchedUnits.day(exits[nextExit]) : Integer.MAX_VALUE;
      int now = Math.min(entryDay, exitDay);
      if (now >= day) {
        return;
      }
      // A unit may leave and come back on one day, so exits go first.
      while (nextExit < exits.length && WatchedUnits.day(exits[nextExit]) == now) {
        influence.weigh(units.spanUnit()[WatchedUnits.index(exits[nextExit++])], 0);
        watchedNow--;
      }
      while (nextEntry < entries.length && WatchedUnits.day(entries[nextEntry]) == now) {
        influence.weigh(units.spanUnit()[WatchedUnits.index(entries[nextEntry++])], 1);
        watchedNow++;
      }
      if (noteFewest) {
        fewest = Math.min(fewest, watchedNow);
      }
    }
  }

  long fewestBeforeFirstEvent() {
    return fewest;
  }

  int[] days() {
    return days;
  }

  long[] watched() {
    return watched;
  }

  long[] events() {
    return events;
  }

  double[] mean() {
    return mean;
  }

  double[] variance() {
    return variance;
  }
}
