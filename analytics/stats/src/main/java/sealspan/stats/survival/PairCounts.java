package sealspan.stats.survival;

import java.util.Arrays;

/**
 * Counts by pair of places, in an open table of its own because boxed keys would take most of the
 * time.
 */
final class PairCounts {
  private static final long FREE = -1;

  private final long[] keys;
  private final double[] counts;
  private int used;

  /** An empty table for at most so many pairs. */
  PairCounts(int most) {
    int size = Integer.highestOneBit(Math.max(4, most)) << 2;
    keys = new long[size];
    Arrays.fill(keys, FREE);
    counts = new double[size];
  }

  /** Adds to the count of a pair; both places at least 0. */
  void add(int first, int second, double count) {
    long key = (long) first << 32 | second;
    int slot = slot(key);
    used += keys[slot] == FREE ? 1 : 0;
    keys[slot] = key;
    counts[slot] += count;
  }

  /**
   * The pairs in order, so that sums over them do not depend on the order of input.
   *
   * @param first first place of each
   * @param second second place of each
   * @param count count of each
   */
  record Sorted(int[] first, int[] second, double[] count) {}

  Sorted sorted() {
    long[] all = new long[used];
    int at = 0;
    for (long key : keys) {
      if (key != FREE) {
        all[at++] = key;
      }
    }
    Arrays.sort(all);
    Sorted sorted = new Sorted(new int[used], new int[used], new double[used]);
    for (int i = 0; i < used; i++) {
      sorted.first[i] = (int) (all[i] >> 32);
      sorted.second[i] = (int) all[i];
      sorted.count[i] = counts[slot(all[i])];
    }
    return sorted;
  }

  private int slot(long key) {
    long mixed = (key ^ key >>> 31) * 0x9E3779B97F4A7C15L;
    int slot = (int) (mixed >>> 32) & keys.length - 1;
    while (keys[slot] != FREE && keys[slot] != key) {
      slot = slot + 1 & keys.length - 1;
    }
    return slot;
  }
}
