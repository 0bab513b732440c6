package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The exact times of events of one unit and the window in which it was watched, (start, end]. The
 * unit of time is the caller's; the clock is that of the unit.
 *
 * @param start start of the window, finite; an event at the start is not seen
 * @param end end of the window, after the start
 * @param ending what ended the window
 * @param times times of the events, ascending, in (start, end]; two events may share a time
 */
public record EventTimes(double start, double end, Ending ending, double[] times) {
  static final Comparator<EventTimes> ORDER =
      Comparator.comparingDouble(EventTimes::start)
          .thenComparingDouble(EventTimes::end)
          .thenComparing(EventTimes::ending)
          .thenComparing(EventTimes::times, Arrays::compare);

  /** What ended a window. */
  public enum Ending {
    /** A time that did not depend on the events. */
    TIME,
    /** The last event itself: watching went on until so many events had come. */
    EVENT
  }

  public EventTimes {
    if (!(start < end) || !Double.isFinite(start) || !Double.isFinite(end)) {
      throw new IllegalArgumentException(
          "a window needs a finite start before its end, but is from " + start + " to " + end);
    }
    for (int i = 0; i < times.length; i++) {
      if (!(times[i] > start && times[i] <= end) || i > 0 && times[i] < times[i - 1]) {
        throw new IllegalArgumentException(
            "event times must ascend in (" + start + ", " + end + "], but one is " + times[i]);
      }
    }
    if (ending == Ending.EVENT && (times.length == 0 || times[times.length - 1] != end)) {
      throw new IllegalArgumentException(
          "a window that its last event ended must end with that event");
    }
  }

  /** A unit watched from start to end, whatever happened; times in any order. */
  public static EventTimes watched(double start, double end, double... times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    return new EventTimes(start, end, Ending.TIME, sorted);
  }

  /** A unit watched from start until the last of its events; times in any order, at least one. */
  public static EventTimes untilLastEvent(double start, double... times) {
    double[] sorted = times.clone();
    Arrays.sort(sorted);
    return new EventTimes(start, sorted[sorted.length - 1], Ending.EVENT, sorted);
  }

  /** Events whose times are free given their number: all but one that ended the window. */
  int freeEvents() {
    return ending == Ending.EVENT ? times.length - 1 : times.length;
  }
}
