package sealspan.stats.survival;

import java.util.Arrays;
import java.util.List;

/**
 * Where the mass of ends can lie, and which lives may have ended where. Times are kept doubled, so
 * that "just after day L" (2 L + 1) stands between day L (2 L) and the next: a life that ended in
 * (L, R] covers the keys from 2 L + 1 to 2 R, one that ended on day t the key 2 t alone.
 *
 * <p>Turnbull 1976: the likelihood depends on the mass in the innermost intervals only, each from a
 * left end to the next right end. With late entry an entry is a right end too, because mass before
 * it is free for those who entered then (Frydman 1994, from memory).
 */
final class TurnbullCells {
  /** Key of "never". */
  static final long NEVER = Long.MAX_VALUE;

  private final long[] from;
  private final long[] to;

  private final PairCounts.Sorted kinds;
  private final double[] entering;
  private double all;

  TurnbullCells(List<Lifetime> lifetimes) {
    int n = lifetimes.size();
    long[] lefts = new long[n];
    long[] rights = new long[2 * n];
    for (int i = 0; i < n; i++) {
      Lifetime life = lifetimes.get(i);
      lefts[i] = left(life);
      rights[2 * i] = right(life);
      rights[2 * i + 1] = 2L * life.entryDay();
    }
    Arrays.sort(lefts);
    Arrays.sort(rights);
    long[][] cells = innermost(lefts, rights);
    from = cells[0];
    to = cells[1];
    entering = new double[from.length + 1];
    PairCounts pairs = new PairCounts(n);
    for (Lifetime life : lifetimes) {
      int end = life.open() ? from.length : below(to, right(life) + 1);
      pairs.add(below(from, left(life)), end, life.count());
      entering[below(to, 2L * life.entryDay() + 1)] += life.count();
      all += life.count();
    }
    kinds = pairs.sorted();
  }

  /** First key at which the life may have ended. */
  static long left(Lifetime life) {
    return life.exact() ? 2L * life.lowerDay() : 2L * life.lowerDay() + 1;
  }

  /** Last key at which the life may have ended. */
  static long right(Lifetime life) {
    return life.open() ? NEVER : 2L * life.upperDay();
  }

  private static long[][] innermost(long[] lefts, long[] rights) {
    long[] from = new long[lefts.length];
    long[] to = new long[lefts.length];
    int count = 0;
    int r = 0;
    for (int i = 0; i < lefts.length; i++) {
      while (rights[r] < lefts[i]) {
        r++;
      }
      boolean anotherLeftFirst = i + 1 < lefts.length && lefts[i + 1] <= rights[r];
      if (!anotherLeftFirst) {
        from[count] = lefts[i];
        to[count++] = rights[r];
      }
    }
    return new long[][] {Arrays.copyOf(from, count), Arrays.copyOf(to, count)};
  }

  /** How many of the ascending keys lie below one. */
  private static int below(long[] keys, long key) {
    int low = 0;
    int high = keys.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (keys[middle] < key) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Number of cells. */
  int size() {
    return from.length;
  }

  /** First key of a cell, cells counted from 1. */
  long from(int cell) {
    return from[cell - 1];
  }

  /** Last key of a cell. */
  long to(int cell) {
    return to[cell - 1];
  }

  /**
   * Kinds of lives: each may have ended in the cells after the first cell named, up to the second.
   */
  PairCounts.Sorted kinds() {
    return kinds;
  }

  /** Lives watched from the end of this cell on; cell 0 is the start. */
  double entering(int cell) {
    return entering[cell];
  }

  /** All lives. */
  double all() {
    return all;
  }
}
