package sealspan.stats.exposure;

import java.util.Arrays;
import java.util.List;

/**
 * One unit, such as a water zone, as long as it was watched. Arrays are not to be changed.
 *
 * @param fromDay first day, included
 * @param untilDay last day, not included
 * @param outcomeDays days of outcomes, in any order, with repetition; those outside do not count
 * @param exposureDays days of exposures, in any order; those outside still have their windows
 */
public record WatchedSpan(int fromDay, int untilDay, int[] outcomeDays, int[] exposureDays) {
  public WatchedSpan {
    if (fromDay >= untilDay) {
      throw new IllegalArgumentException(
          "a unit is watched for at least a day, not from " + fromDay + " until " + untilDay);
    }
  }

  /**
   * For each watched day the number of the window that it is in, from 1; 0 for none. A day that
   * windows of several exposures reach belongs to the latest of these exposures.
   */
  int[] windowOfDay(List<RiskWindow> windows) {
    int[] window = new int[untilDay - fromDay];
    int[] rising = exposureDays.clone();
    Arrays.sort(rising);
    for (int exposure : rising) {
      for (int w = 0; w < windows.size(); w++) {
        int first = Math.max(fromDay, exposure + windows.get(w).firstDay());
        int last = Math.min(untilDay - 1, exposure + windows.get(w).lastDay());
        for (int day = first; day <= last; day++) {
          window[day - fromDay] = w + 1;
        }
      }
    }
    return window;
  }
}
