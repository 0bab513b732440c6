package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The points of time at which windows begin or end. What fell before each of them tells what fell
 * in any window, by one subtraction; so places are summed once for all windows, and windows that
 * begin together share what they have in common.
 */
final class WindowCuts {
  private final int[] cuts;
  private final int[] from;
  private final int[] to;

  WindowCuts(List<Window> windows) {
    cuts =
        windows.stream()
            .flatMapToInt(w -> IntStream.of(w.first(), w.last() + 1))
            .sorted()
            .distinct()
            .toArray();
    from = windows.stream().mapToInt(w -> Arrays.binarySearch(cuts, w.first())).toArray();
    to = windows.stream().mapToInt(w -> Arrays.binarySearch(cuts, w.last() + 1)).toArray();
  }

  /** Number of windows. */
  int windows() {
    return from.length;
  }

  /** Number of stretches between neighbouring cuts. */
  int stretches() {
    return Math.max(0, cuts.length - 1);
  }

  /** The stretch that a period lies in, from 0; -1 where it lies before or after all windows. */
  int stretch(int period) {
    int at = Arrays.binarySearch(cuts, period);
    int stretch = at >= 0 ? at : -at - 2;
    return stretch < stretches() ? stretch : -1;
  }

  /** Number of stretches before a window. */
  int from(int window) {
    return from[window];
  }

  /** Number of stretches up to the end of a window. */
  int to(int window) {
    return to[window];
  }
}
