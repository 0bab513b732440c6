package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * All spans and events as flat arrays in an order that depends on content alone, cut to the
 * unbroken stretch with most events.
 *
 * @param count number of units
 * @param unitsInStretch units watched at some time in the stretch
 * @param fromDay start of the stretch; nobody is watched on that day itself
 * @param toDay end of the stretch
 * @param entries day and index into spanUnit, packed and sorted
 * @param exits day and index into spanUnit, packed and sorted
 * @param spanUnit unit of each span
 * @param events day and index into eventUnit, packed and sorted
 * @param eventUnit unit of each event
 * @param eventMark mark of each event
 * @param eventsLeftOut events that are not in the arrays
 */
record WatchedUnits(
    int count,
    long unitsInStretch,
    int fromDay,
    int toDay,
    long[] entries,
    long[] exits,
    int[] spanUnit,
    long[] events,
    int[] eventUnit,
    long[] eventMark,
    long eventsLeftOut) {

  /** Null when nobody was watched. */
  static WatchedUnits of(Collection<EventHistory> histories) {
    List<EventHistory> units =
        histories.stream()
            .filter(h -> h.entryDays().length > 0)
            .sorted(EventHistory.ORDER)
            .toList();
    if (units.isEmpty()) {
      return null;
    }
    int[] stretch = longestStretchByEvents(units);
    return cut(units, stretch[0], stretch[1], eventCount(histories));
  }

  static int day(long packed) {
    return (int) (packed >> 32);
  }

  static int index(long packed) {
    return (int) packed;
  }

  private static long pack(int day, int index) {
    return (long) day << 32 | index;
  }

  private static long eventCount(Collection<EventHistory> histories) {
    long sum = 0;
    for (EventHistory history : histories) {
      sum += history.eventDays().length;
    }
    return sum;
  }

  private static WatchedUnits cut(List<EventHistory> units, int from, int to, long allEvents) {
    int spans = 0;
    int events = 0;
    for (EventHistory unit : units) {
      spans += unit.entryDays().length;
      events += unit.eventDays().length;
    }
    long[] entries = new long[spans];
    long[] exits = new long[spans];
    int[] spanUnit = new int[spans];
    long[] eventKeys = new long[events];
    int[] eventUnit = new int[events];
    long[] eventMark = new long[events];
    spans = 0;
    events = 0;
    long inStretch = 0;
    for (int u = 0; u < units.size(); u++) {
      EventHistory unit = units.get(u);
      int before = spans;
      for (int s = 0; s < unit.entryDays().length; s++) {
        if (unit.entryDays()[s] >= from && unit.exitDays()[s] <= to) {
          entries[spans] = pack(unit.entryDays()[s], spans);
          exits[spans] = pack(unit.exitDays()[s], spans);
          spanUnit[spans++] = u;
        }
      }
      inStretch += spans > before ? 1 : 0;
      for (int e = 0; e < unit.eventDays().length; e++) {
        int day = unit.eventDays()[e];
        if (from < day && day <= to && unit.watchedOn(day)) {
          eventKeys[events] = pack(day, events);
          eventUnit[events] = u;
          eventMark[events++] = unit.marks()[e];
        }
      }
    }
    return new WatchedUnits(
        units.size(),
        inStretch,
        from,
        to,
        sorted(entries, spans),
        sorted(exits, spans),
        spanUnit,
        sorted(eventKeys, events),
        eventUnit,
        eventMark,
        allEvents - events);
  }

  private static long[] sorted(long[] keys, int length) {
    long[] copy = Arrays.copyOf(keys, length);
    Arrays.sort(copy);
    return copy;
  }

  /** Start and end of the stretch of days with somebody watched that holds most events. */
  private static int[] longestStretchByEvents(List<EventHistory> units) {
    long[] spans =
        units.stream()
            .flatMapToLong(
                u ->
                    java.util.stream.IntStream.range(0, u.entryDays().length)
                        .mapToLong(i -> pack(u.entryDays()[i], u.exitDays()[i])))
            .sorted()
            .toArray();
    int[] seen =
        units.stream()
            .flatMapToInt(u -> Arrays.stream(u.eventDays()).filter(u::watchedOn))
            .sorted()
            .toArray();
    int[] best = null;
    int most = -1;
    int from = day(spans[0]);
    int to = index(spans[0]);
    for (int i = 1; i <= spans.length; i++) {
      boolean goesOn = i < spans.length && day(spans[i]) <= to;
      if (goesOn) {
        to = Math.max(to, index(spans[i]));
        continue;
      }
      int events = upTo(seen, to) - upTo(seen, from);
      if (events > most) {
        most = events;
        best = new int[] {from, to};
      }
      if (i < spans.length) {
        from = day(spans[i]);
        to = index(spans[i]);
      }
    }
    return best;
  }

  /** How many of the sorted days are at most the day. */
  private static int upTo(int[] sorted, int day) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (sorted[middle] <= day) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
