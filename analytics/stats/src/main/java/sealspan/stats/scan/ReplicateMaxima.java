package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/**
 * The largest score of each replicate under the null, exactly, without a logarithm per zone.
 *
 * <p>Under the null the expected cases of a zone stay the same and its score grows with its cases,
 * so whether a score reaches a threshold is a comparison of whole numbers. Replicates are counted
 * side by side, four to a machine word, {@value #LANES} to a pass; along the places of an order the
 * counts are summed four places at a time, and looked at one by one only where the sum of four
 * could reach what the first of them needs. Where a zone reaches the threshold its score is worked
 * out, so the maxima do not depend on the threshold; replicates that nowhere reach it are done
 * again with a lower one.
 */
final class ReplicateMaxima {
  static final int LANES = 128;

  /** More cases than this do not fit the 15 bits of a lane. */
  static final int MOST_CASES = 0x7FFF;

  private static final int WORDS = LANES / 4;
  private static final int GROUP = 8;
  private static final long TOP_BITS = 0x8000_8000_8000_8000L;
  private static final long ONES = 0x0001_0001_0001_0001L;
  private static final int PILOTS = 4;
  private static final double FIRST_THRESHOLD = 2;
  private static final double BELOW_PILOTS = 0.8;

  private final CaseGrid grid;
  private final List<Window> windows;
  private final List<ZoneOrder> orders;
  private final double fewestExpected;
  private final NullDraws draws;
  private final PoissonRatio ratio;
  private final ThresholdRow row;
  private final long[] counts;
  private final double[] expected;
  private final double[] maxima = new double[LANES];

  ReplicateMaxima(
      CaseGrid grid,
      List<Window> windows,
      List<ZoneOrder> orders,
      double fewestExpected,
      NullDraws draws) {
    this.grid = grid;
    this.windows = windows;
    this.orders = orders;
    this.fewestExpected = fewestExpected;
    this.draws = draws;
    this.ratio = new PoissonRatio(grid.total());
    if (ratio.total() > MOST_CASES) {
      throw new IllegalArgumentException(
          ratio.total() + " cases; a scan takes at most " + MOST_CASES);
    }
    int longest = 0;
    for (ZoneOrder order : orders) {
      longest = Math.max(longest, order.places().length);
    }
    this.row = new ThresholdRow(longest);
    this.counts = new long[grid.places() * WORDS];
    this.expected = new double[grid.places()];
  }

  /** The maxima of replicates 0, 1, ... */
  double[] of(int replicates) {
    double[] all = new double[replicates];
    Arrays.fill(all, -1);
    int pilots = Math.min(PILOTS, replicates);
    double threshold = FIRST_THRESHOLD;
    settle(all, pilots, threshold);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < pilots; i++) {
      least = Math.min(least, all[i]);
    }
    threshold = BELOW_PILOTS * least;
    settle(all, replicates, threshold);
    return all;
  }

  /** Works out the maxima that are still missing, with lower thresholds where need be. */
  private void settle(double[] all, int upTo, double firstThreshold) {
    double threshold = firstThreshold;
    while (true) {
      int[] open = new int[LANES];
      int n = 0;
      for (int i = 0; i < upTo; i++) {
        if (all[i] < 0) {
          open[n++] = i;
          if (n == LANES) {
            pass(all, open, n, threshold);
            n = 0;
          }
        }
      }
      if (n > 0) {
        pass(all, open, n, threshold);
      }
      if (threshold <= 0) {
        return;
      }
      threshold = threshold > 0.1 ? threshold / 2 : 0;
    }
  }

  private void pass(double[] all, int[] open, int lanes, double threshold) {
    Arrays.fill(maxima, 0);
    int[][] byPeriod = drawn(open, lanes);
    ThresholdRow.Table[] tables = ThresholdRow.tables(orders, ratio, threshold);
    Window before = null;
    for (Window window : windows) {
      addUp(before, window, byPeriod, lanes);
      before = window;
      for (ZoneOrder order : orders) {
        row.set(order, expected, fewestExpected, ThresholdRow.tableOf(tables, order));
        for (int group = 0; group * GROUP * 4 < lanes; group++) {
          scan(order, group * GROUP);
        }
      }
    }
    for (int lane = 0; lane < lanes; lane++) {
      if (maxima[lane] >= threshold || threshold <= 0) {
        all[open[lane]] = maxima[lane];
      }
    }
  }

  /** By period, the counter of each case: place * LANES + lane. */
  private int[][] drawn(int[] open, int lanes) {
    int total = ratio.total();
    int[][] cells = new int[lanes][total];
    int[] sizes = new int[grid.periods()];
    for (int lane = 0; lane < lanes; lane++) {
      draws.draw(open[lane], cells[lane]);
      for (int cell : cells[lane]) {
        sizes[cell / grid.places()]++;
      }
    }
    int[][] byPeriod = new int[grid.periods()][];
    for (int period = 0; period < byPeriod.length; period++) {
      byPeriod[period] = new int[sizes[period]];
    }
    for (int lane = 0; lane < lanes; lane++) {
      for (int cell : cells[lane]) {
        int period = cell / grid.places();
        byPeriod[period][--sizes[period]] = (cell - period * grid.places()) * LANES + lane;
      }
    }
    return byPeriod;
  }

  private void addUp(Window before, Window window, int[][] byPeriod, int lanes) {
    int from = window.first();
    if (before != null && before.first() == from && before.last() < window.last()) {
      from = before.last() + 1;
    } else {
      Arrays.fill(counts, 0);
      Arrays.fill(expected, 0);
    }
    for (int period = from; period <= window.last(); period++) {
      grid.addExpected(period, expected);
      for (int counter : byPeriod[period]) {
        counts[counter >>> 2] += 1L << ((counter & 3) << 4);
      }
    }
  }

  /** One order of places for {@value #GROUP} words of replicates. */
  private void scan(ZoneOrder order, int word) {
    int[] places = order.places();
    int end = row.end();
    long a = 0;
    long b = 0;
    long c = 0;
    long d = 0;
    long e = 0;
    long f = 0;
    long g = 0;
    long h = 0;
    int k = 0;
    while (k < end) {
      int blockEnd = Math.min(end, k + ThresholdRow.BLOCK);
      long a0 = a;
      long b0 = b;
      long c0 = c;
      long d0 = d;
      long e0 = e;
      long f0 = f;
      long g0 = g;
      long h0 = h;
      for (int i = k; i < blockEnd; i++) {
        int at = places[i] * WORDS + word;
        a += counts[at];
        b += counts[at + 1];
        c += counts[at + 2];
        d += counts[at + 3];
        e += counts[at + 4];
        f += counts[at + 5];
        g += counts[at + 6];
        h += counts[at + 7];
      }
      long bias = row.blockBias(k / ThresholdRow.BLOCK);
      long any =
          (a + bias)
              | (b + bias)
              | (c + bias)
              | (d + bias)
              | (e + bias)
              | (f + bias)
              | (g + bias)
              | (h + bias);
      if ((any & TOP_BITS) != 0) {
        look(order, word, k, blockEnd, new long[] {a0, b0, c0, d0, e0, f0, g0, h0});
      }
      k = blockEnd;
    }
  }

  /** Looks at the zones of a block one by one. */
  private void look(ZoneOrder order, int word, int from, int to, long[] sums) {
    for (int k = from; k < to; k++) {
      int at = order.places()[k] * WORDS + word;
      long bias = row.bias(k);
      for (int i = 0; i < GROUP; i++) {
        sums[i] += counts[at + i];
        long reached = (sums[i] + bias) & TOP_BITS;
        if (reached != 0) {
          raise(order, word + i, k, sums[i], reached);
        }
      }
    }
  }

  private void raise(ZoneOrder order, int word, int k, long sums, long reached) {
    for (int lane = 0; lane < 4; lane++) {
      if ((reached >>> (16 * lane + 15) & 1) != 0) {
        int cases = (int) (sums >>> (16 * lane)) & 0xFFFF;
        double score = order.penalty() * ratio.at(cases, row.expected(k));
        maxima[4 * word + lane] = Math.max(maxima[4 * word + lane], score);
      }
    }
  }

  static long bias(int cases) {
    return ONES * (0x8000 - cases);
  }
}
