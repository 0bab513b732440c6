package sealspan.stats.recurrence;

import java.util.Arrays;
import java.util.List;

/**
 * An order of units that depends on their content alone, found by sorting numbers: units are
 * ordered by a hash of their content, and only where hashes agree are contents compared.
 */
final class UnitOrder {
  private UnitOrder() {}

  /** The place of each unit in the order. */
  static int[] ranks(List<EventHistory> units) {
    int bits = Math.max(1, 32 - Integer.numberOfLeadingZeros(Math.max(1, units.size() - 1)));
    long low = (1L << bits) - 1;
    long[] keys = new long[units.size()];
    for (int u = 0; u < keys.length; u++) {
      keys[u] = hash(units.get(u)) & ~low | u;
    }
    Arrays.sort(keys);
    int[] ranks = new int[keys.length];
    for (int start = 0; start < keys.length; ) {
      int end = start + 1;
      while (end < keys.length && (keys[end] & ~low) == (keys[start] & ~low)) {
        end++;
      }
      place(units, keys, start, end, low, ranks);
      start = end;
    }
    return ranks;
  }

  private static void place(
      List<EventHistory> units, long[] keys, int start, int end, long low, int[] ranks) {
    Integer[] alike = new Integer[end - start];
    for (int i = start; i < end; i++) {
      alike[i - start] = (int) (keys[i] & low);
    }
    if (alike.length > 1) {
      Arrays.sort(alike, (a, b) -> EventHistory.ORDER.compare(units.get(a), units.get(b)));
    }
    for (int i = start; i < end; i++) {
      ranks[alike[i - start]] = i;
    }
  }

  private static long hash(EventHistory unit) {
    long hash = mix(unit.entryDays().length);
    for (int day : unit.entryDays()) {
      hash = mix(hash + day);
    }
    for (int day : unit.exitDays()) {
      hash = mix(hash + day);
    }
    for (int day : unit.eventDays()) {
      hash = mix(hash + day);
    }
    for (long mark : unit.marks()) {
      hash = mix(hash + mark);
    }
    return hash;
  }

  /** A step of the SplitMix64 generator (Steele, Lea and Flood 2014). */
  private static long mix(long value) {
    long z = value + 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
