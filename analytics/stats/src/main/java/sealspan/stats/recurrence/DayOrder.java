package sealspan.stats.recurrence;

import java.util.Arrays;

/** Sorts items by day, keeping the order of items of one day; linear where days are dense. */
final class DayOrder {
  private DayOrder() {}

  /**
   * Days and places, packed as {@code day << 32 | place} and ascending.
   *
   * @param days the day of each item
   * @param count how many items there are
   */
  static long[] packed(int[] days, int count) {
    long[] keys = new long[count];
    int lowest = Integer.MAX_VALUE;
    int highest = Integer.MIN_VALUE;
    for (int i = 0; i < count; i++) {
      lowest = Math.min(lowest, days[i]);
      highest = Math.max(highest, days[i]);
    }
    long range = (long) highest - lowest;
    if (count == 0 || range > 4L * count) {
      for (int i = 0; i < count; i++) {
        keys[i] = (long) days[i] << 32 | i;
      }
      Arrays.sort(keys);
      return keys;
    }
    int[] next = new int[(int) range + 2];
    for (int i = 0; i < count; i++) {
      next[days[i] - lowest + 1]++;
    }
    for (int d = 1; d < next.length; d++) {
      next[d] += next[d - 1];
    }
    for (int i = 0; i < count; i++) {
      keys[next[days[i] - lowest]++] = (long) days[i] << 32 | i;
    }
    return keys;
  }
}
