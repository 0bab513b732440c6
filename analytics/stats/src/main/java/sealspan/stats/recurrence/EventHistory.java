package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Comparator;

/**
 * When one unit was watched and what happened to it. Days count on one scale for all units
 * (calendar days or age). The unit is watched over (entry, exit], so an event on its entry day is
 * not seen and one on its exit day is.
 *
 * @param entryDays starts of the spans, ascending
 * @param exitDays ends of the spans, each after its entry and not after the next entry
 * @param eventDays days of events, ascending; two events may share a day
 * @param marks what each event adds, for example its cost in minor units; as long as eventDays
 */
public record EventHistory(int[] entryDays, int[] exitDays, int[] eventDays, long[] marks) {
  static final Comparator<EventHistory> ORDER =
      Comparator.comparing(EventHistory::entryDays, Arrays::compare)
          .thenComparing(EventHistory::exitDays, Arrays::compare)
          .thenComparing(EventHistory::eventDays, Arrays::compare)
          .thenComparing(EventHistory::marks, Arrays::compare);

  public EventHistory {
    if (entryDays.length != exitDays.length || eventDays.length != marks.length) {
      throw new IllegalArgumentException(
          "spans need as many exits as entries, and events as many marks as days");
    }
    for (int i = 0; i < entryDays.length; i++) {
      if (entryDays[i] >= exitDays[i] || i > 0 && entryDays[i] < exitDays[i - 1]) {
        throw new IllegalArgumentException(
            "spans must be in order, apart, and at least 1 day long, but span "
                + (i + 1)
                + " is from "
                + entryDays[i]
                + " to "
                + exitDays[i]);
      }
    }
    for (int i = 1; i < eventDays.length; i++) {
      if (eventDays[i] < eventDays[i - 1]) {
        throw new IllegalArgumentException(
            "event days must ascend, but " + eventDays[i] + " follows " + eventDays[i - 1]);
      }
    }
  }

  /** A unit watched over one span, its events counted one each. */
  public static EventHistory watched(int entryDay, int exitDay, int... eventDays) {
    int[] sorted = eventDays.clone();
    Arrays.sort(sorted);
    long[] ones = new long[sorted.length];
    Arrays.fill(ones, 1);
    return new EventHistory(new int[] {entryDay}, new int[] {exitDay}, sorted, ones);
  }

  /** The unit as watched within (from, to] alone; events that were not seen are dropped. */
  EventHistory within(int from, int to) {
    int[] entries = new int[entryDays.length];
    int[] exits = new int[entryDays.length];
    int spans = 0;
    for (int i = 0; i < entryDays.length; i++) {
      entries[spans] = Math.max(from, entryDays[i]);
      exits[spans] = Math.min(to, exitDays[i]);
      spans += entries[spans] < exits[spans] ? 1 : 0;
    }
    int[] days = new int[eventDays.length];
    long[] amounts = new long[eventDays.length];
    int events = 0;
    for (int e = 0; e < eventDays.length; e++) {
      if (from < eventDays[e] && eventDays[e] <= to && watchedOn(eventDays[e])) {
        days[events] = eventDays[e];
        amounts[events++] = marks[e];
      }
    }
    return new EventHistory(
        Arrays.copyOf(entries, spans),
        Arrays.copyOf(exits, spans),
        Arrays.copyOf(days, events),
        Arrays.copyOf(amounts, events));
  }

  /** Whether the unit is watched on the day. */
  boolean watchedOn(int day) {
    for (int i = 0; i < entryDays.length; i++) {
      if (entryDays[i] < day && day <= exitDays[i]) {
        return true;
      }
    }
    return false;
  }
}
