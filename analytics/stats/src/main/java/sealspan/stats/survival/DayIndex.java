package sealspan.stats.survival;

import java.util.Arrays;

/**
 * The distinct days that occur, ascending, and the place of each. Days that lie in a moderate range
 * are looked up in a table, so that a million lives cost no sorting.
 */
final class DayIndex {
  private static final int LARGEST_TABLE = 1 << 22;

  private final int[] days;

  /** Place of each day; null where the days spread too far for a table. */
  private final int[] table;

  /** The days of an array, in any order and repeated as they come. */
  DayIndex(int[] all) {
    int latest = 0;
    for (int day : all) {
      latest = Math.max(latest, day);
    }
    if (latest < LARGEST_TABLE) {
      table = new int[latest + 1];
      for (int day : all) {
        table[day] = 1;
      }
      int count = 0;
      for (int mark : table) {
        count += mark;
      }
      days = new int[count];
      int at = 0;
      for (int day = 0; day <= latest && at < count; day++) {
        if (table[day] == 1) {
          days[at] = day;
          table[day] = at++;
        }
      }
    } else {
      table = null;
      int[] sorted = all.clone();
      Arrays.sort(sorted);
      int count = 0;
      for (int i = 0; i < sorted.length; i++) {
        if (i == 0 || sorted[i] != sorted[i - 1]) {
          sorted[count++] = sorted[i];
        }
      }
      days = Arrays.copyOf(sorted, count);
    }
  }

  int size() {
    return days.length;
  }

  int day(int place) {
    return days[place];
  }

  /** The place of a day that occurs. */
  int place(int day) {
    return table != null ? table[day] : Arrays.binarySearch(days, day);
  }
}
