package sealspan.stats.recurrence;

import java.util.ArrayList;
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
    List<EventHistory> units = new ArrayList<>(histories.size());
    for (EventHistory history : histories) {
      if (history.entryDays().length > 0) {
        units.add(history);
      }
    }
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
    return (long) day << 32 | index & 0xFFFF_FFFFL;
  }

  private static long eventCount(Collection<EventHistory> histories) {
    long sum = 0;
    for (EventHistory history : histories) {
      sum += history.eventDays().length;
    }
    return sum;
  }

  private static WatchedUnits cut(List<EventHistory> units, int from, int to, long allEvents) {
    int[] ranks = UnitOrder.ranks(units);
    int[] firstSpan = new int[units.size() + 1];
    int[] firstEvent = new int[units.size() + 1];
    for (int u = 0; u < ranks.length; u++) {
      firstSpan[ranks[u] + 1] = units.get(u).entryDays().length;
      firstEvent[ranks[u] + 1] = units.get(u).eventDays().length;
    }
    for (int r = 0; r < ranks.length; r++) {
      firstSpan[r + 1] += firstSpan[r];
      firstEvent[r + 1] += firstEvent[r];
    }
    int spans = firstSpan[ranks.length];
    int[] entryDay = new int[spans];
    int[] exitDay = new int[spans];
    int[] spanUnit = new int[spans];
    int events = firstEvent[ranks.length];
    int[] eventDay = new int[events];
    int[] eventUnit = new int[events];
    long[] eventMark = new long[events];
    Arrays.fill(spanUnit, -1);
    Arrays.fill(eventUnit, -1);
    long inStretch = 0;
    for (int u = 0; u < ranks.length; u++) {
      EventHistory unit = units.get(u);
      int rank = ranks[u];
      boolean inside = false;
      for (int s = 0; s < unit.entryDays().length; s++) {
        if (unit.entryDays()[s] >= from && unit.exitDays()[s] <= to) {
          entryDay[firstSpan[rank] + s] = unit.entryDays()[s];
          exitDay[firstSpan[rank] + s] = unit.exitDays()[s];
          spanUnit[firstSpan[rank] + s] = rank;
          inside = true;
        }
      }
      inStretch += inside ? 1 : 0;
      for (int e = 0; e < unit.eventDays().length; e++) {
        int day = unit.eventDays()[e];
        if (from < day && day <= to && unit.watchedOn(day)) {
          eventDay[firstEvent[rank] + e] = day;
          eventUnit[firstEvent[rank] + e] = rank;
          eventMark[firstEvent[rank] + e] = unit.marks()[e];
        }
      }
    }
    spans = closeUp(spanUnit, entryDay, exitDay);
    events = closeUp(eventUnit, eventDay, eventMark);
    return new WatchedUnits(
        units.size(),
        inStretch,
        from,
        to,
        DayOrder.packed(entryDay, spans),
        DayOrder.packed(exitDay, spans),
        spanUnit,
        DayOrder.packed(eventDay, events),
        eventUnit,
        eventMark,
        allEvents - events);
  }

  /** Moves what has a unit together; how much there is. */
  private static int closeUp(int[] unit, int[] first, int[] second) {
    int kept = 0;
    for (int i = 0; i < unit.length; i++) {
      if (unit[i] >= 0) {
        unit[kept] = unit[i];
        first[kept] = first[i];
        second[kept++] = second[i];
      }
    }
    return kept;
  }

  private static int closeUp(int[] unit, int[] first, long[] second) {
    int kept = 0;
    for (int i = 0; i < unit.length; i++) {
      if (unit[i] >= 0) {
        unit[kept] = unit[i];
        first[kept] = first[i];
        second[kept++] = second[i];
      }
    }
    return kept;
  }

  /** Start and end of the stretch of days with somebody watched that holds most events. */
  private static int[] longestStretchByEvents(List<EventHistory> units) {
    int count = 0;
    for (EventHistory unit : units) {
      count += unit.entryDays().length;
    }
    long[] spans = new long[count];
    for (EventHistory unit : units) {
      for (int i = 0; i < unit.entryDays().length; i++) {
        spans[--count] = pack(unit.entryDays()[i], unit.exitDays()[i]);
      }
    }
    Arrays.sort(spans);
    if (isOneStretch(spans)) {
      int last = day(spans[0]);
      for (long span : spans) {
        last = Math.max(last, index(span));
      }
      return new int[] {day(spans[0]), last};
    }
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

  private static boolean isOneStretch(long[] spans) {
    int to = index(spans[0]);
    for (long span : spans) {
      if (day(span) > to) {
        return false;
      }
      to = Math.max(to, index(span));
    }
    return true;
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
