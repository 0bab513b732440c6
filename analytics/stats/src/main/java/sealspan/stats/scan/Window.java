package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.List;

/**
 * Successive periods.
 *
 * @param first first period, from 0
 * @param last last period, included
 */
public record Window(int first, int last) {
  public Window {
    if (first < 0 || last < first) {
      throw new IllegalArgumentException("a window from " + first + " to " + last);
    }
  }

  /** All periods: a scan of space alone. */
  public static List<Window> whole(int periods) {
    return List.of(new Window(0, periods - 1));
  }

  /** All windows of at most some length, ordered by first, then last. */
  public static List<Window> upTo(int longest, int periods) {
    List<Window> windows = new ArrayList<>();
    for (int first = 0; first < periods; first++) {
      for (int last = first; last < Math.min(periods, first + longest); last++) {
        windows.add(new Window(first, last));
      }
    }
    return windows;
  }

  /** Number of periods. */
  public int length() {
    return last - first + 1;
  }

  /** Whether a period lies in it. */
  public boolean contains(int period) {
    return first <= period && period <= last;
  }
}
