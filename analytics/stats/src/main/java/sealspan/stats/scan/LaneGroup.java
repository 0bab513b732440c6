package sealspan.stats.scan;

import java.util.Arrays;

/**
 * Cases of some replicates by place, up to each cut of time, and the largest score of each so far.
 * Replicates lie side by side, four to a machine word: lane {@code l} is the bits {@code 16 (l mod
 * 4)} to {@code 16 (l mod 4) + 15} of word {@code l / 4}. A lane holds up to {@link #MOST_CASES};
 * its top bit stays free, so sums and differences of counts are those of whole words.
 */
final class LaneGroup {
  /** More cases than this do not fit the 15 bits of a lane. */
  static final int MOST_CASES = 0x7FFF;

  /** Lanes of a word. */
  static final int LANES = 4;

  private static final long ONES = 0x0001_0001_0001_0001L;

  private final int words;

  /** By place: by stretch and word. Rows of their own can be added by vectors. */
  private final long[][] counts;

  private final double[] largest;
  private int lanes;

  /** For some number of places, stretches between cuts, and words. */
  LaneGroup(int places, int stretches, int words) {
    this.words = words;
    this.counts = new long[places][stretches * words];
    this.largest = new double[words * LANES];
  }

  /** Begins anew with some number of lanes without cases. */
  void clear(int lanesInUse) {
    lanes = lanesInUse;
    for (long[] row : counts) {
      Arrays.fill(row, 0);
    }
    Arrays.fill(largest, 0);
  }

  /** Lanes in use. */
  int lanes() {
    return lanes;
  }

  /** Words of a place and stretch. */
  int words() {
    return words;
  }

  /** The counts of a place, by stretch and word. */
  long[] row(int place) {
    return counts[place];
  }

  /** The largest score of a lane so far. */
  double largest(int lane) {
    return largest[lane];
  }

  void setLargest(int lane, double score) {
    largest[lane] = score;
  }

  /** Raises the largest score of a lane to a score that is larger. */
  void raise(int lane, double score) {
    largest[lane] = Math.max(largest[lane], score);
  }

  /** The least of the largest scores. */
  double least() {
    double least = Double.POSITIVE_INFINITY;
    for (int lane = 0; lane < lanes; lane++) {
      least = Math.min(least, largest[lane]);
    }
    return least;
  }

  /** Enters a case of a lane, in a stretch of time. */
  void add(int place, int stretch, int lane) {
    counts[place][stretch * words + lane / LANES] += 1L << shift(lane);
  }

  /** Makes counts of stretches to counts of all stretches up to each, when all cases are in. */
  void addUp() {
    for (long[] row : counts) {
      for (int at = words; at < row.length; at++) {
        row[at] += row[at - words];
      }
    }
  }

  /**
   * Adds places to sums.
   *
   * @param order places
   * @param begin index of the first of them
   * @param end index after the last
   * @param sums the sums, by stretch and word
   */
  void addTo(int[] order, int begin, int end, long[] sums) {
    int k = begin;
    for (; k + 4 <= end; k += 4) {
      add(sums, counts[order[k]], counts[order[k + 1]], counts[order[k + 2]], counts[order[k + 3]]);
    }
    for (; k < end; k++) {
      long[] row = counts[order[k]];
      for (int i = 0; i < row.length; i++) {
        sums[i] += row[i];
      }
    }
  }

  /** One plain loop over whole rows: the compiler makes it one of vectors. */
  private static void add(long[] sums, long[] a, long[] b, long[] c, long[] d) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += a[i] + b[i] + c[i] + d[i];
    }
  }

  /** The cases of a lane at a place in the stretches from one to before another. */
  int cases(int place, int fromStretch, int toStretch, int lane) {
    int at = lane / LANES - words;
    long upTo = counts[place][at + toStretch * words];
    long before = fromStretch == 0 ? 0 : counts[place][at + fromStretch * words];
    return count(upTo - before, lane);
  }

  /** The count of a lane in its word. */
  static int count(long word, int lane) {
    return (int) (word >>> shift(lane)) & 0xFFFF;
  }

  /** The bits of a word before those of a lane. */
  static int shift(int lane) {
    return lane % LANES << 4;
  }

  /**
   * What is to be added to a word of counts so that the top bit of each lane says whether it has as
   * many cases; at least one and at most {@link #MOST_CASES}.
   */
  static long bias(int cases) {
    return ONES * (0x8000 - cases);
  }
}
