package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/**
 * Raises the largest scores of a group of replicates by the zones of orders. A score grows with the
 * cases of its zone, so whether it reaches a threshold is a comparison of whole numbers. Zones are
 * looked at one by one only where the cases of a whole block could raise what a replicate has, and
 * a score is worked out to the last digit only where it does.
 */
final class GroupScan {
  private static final long TOP_BITS = 0x8000_8000_8000_8000L;

  private final CaseGrid grid;
  private final List<Window> windows;
  private final WindowCuts cuts;
  private final PoissonRatio ratio;
  private final ThresholdRow row;
  private final double fewestExpected;
  private final int[] inBlock = new int[ThresholdRow.BLOCK];

  /** By stretch and word, up to the end of the stretch. */
  private final long[] sums;

  private final long[] nothing;

  private LaneGroup group;
  private ZoneOrder order;
  private double[] largestExpected;

  /** For zones of a grid, in windows ordered by first period, then last. */
  GroupScan(
      CaseGrid grid, List<Window> windows, int longestOrder, double fewestExpected, int words) {
    this.grid = grid;
    this.windows = windows;
    this.cuts = new WindowCuts(windows);
    this.ratio = new PoissonRatio(grid.total());
    this.row = new ThresholdRow(grid, cuts, longestOrder, fewestExpected);
    this.fewestExpected = fewestExpected;
    this.sums = new long[cuts.stretches() * words];
    this.nothing = new long[words];
  }

  /**
   * Scans the zones of an order, in all windows.
   *
   * @param replicates whose scores to raise
   * @param zones the order
   * @param reached by cases, the largest expected number at which a zone of the order reaches the
   *     least of the largest scores of the group, or a threshold below that
   */
  void scan(LaneGroup replicates, ZoneOrder zones, double[] reached) {
    group = replicates;
    order = zones;
    largestExpected = reached;
    row.set(order, largestExpected);
    Arrays.fill(sums, 0);
    int places = order.places().length;
    for (int block = 0; block < row.blocks(); block++) {
      int begin = block * ThresholdRow.BLOCK;
      group.addTo(order.places(), begin, Math.min(places, begin + ThresholdRow.BLOCK), sums);
      check(block);
    }
  }

  /** Two windows at a time: the compiler makes vectors of that, but not of more. */
  private void check(int block) {
    int last = windows.size() - 1;
    for (int window = 0; window <= last; window += 2) {
      int other = Math.min(window + 1, last);
      if (anyReaches(window, row.bias(block, window), other, row.bias(block, other))) {
        look(block, window);
        if (other > window) {
          look(block, other);
        }
      }
    }
  }

  private boolean anyReaches(int one, long biasOfOne, int other, long biasOfOther) {
    if ((biasOfOne | biasOfOther) == 0) {
      return false;
    }
    int words = group.words();
    long[] beforeOne = before(one);
    long[] beforeOther = before(other);
    int fromOne = beginOfBefore(one);
    int fromOther = beginOfBefore(other);
    int toOne = beginOfUpTo(one);
    int toOther = beginOfUpTo(other);
    long any = 0;
    for (int i = 0; i < words; i++) {
      any |=
          sums[toOne + i] - beforeOne[fromOne + i] + biasOfOne
              | sums[toOther + i] - beforeOther[fromOther + i] + biasOfOther;
    }
    return (any & TOP_BITS) != 0;
  }

  /** Sums up to the beginning of a window, and where in them they begin. */
  private long[] before(int window) {
    return cuts.from(window) == 0 ? nothing : sums;
  }

  private int beginOfBefore(int window) {
    return Math.max(0, cuts.from(window) - 1) * group.words();
  }

  /** Where the sums up to the end of a window begin. */
  private int beginOfUpTo(int window) {
    return (cuts.to(window) - 1) * group.words();
  }

  /** Goes through the lanes that reach the threshold in a block. */
  private void look(int block, int window) {
    long bias = row.bias(block, window);
    if (bias == 0) {
      return;
    }
    long[] before = before(window);
    int from = beginOfBefore(window);
    int to = beginOfUpTo(window);
    double logExpected = Math.log(row.least(block, window));
    double logOutside = Math.log(ratio.total() - row.least(block, window));
    for (int word = 0; word < group.words(); word++) {
      long inWindow = sums[to + word] - before[from + word];
      long reached = inWindow + bias & TOP_BITS;
      while (reached != 0) {
        int lane = word * LaneGroup.LANES + (Long.numberOfTrailingZeros(reached) >>> 4);
        reached &= reached - 1;
        int cases = LaneGroup.count(inWindow, lane);
        if (raises(lane, ratio.roughly(cases, logExpected, logOutside))) {
          lookAtZones(block, window, lane, cases);
        }
      }
    }
  }

  /** Whether a score before its penalty may raise a lane, but for rounding. */
  private boolean raises(int lane, double roughly) {
    return !(order.penalty() * roughly <= group.largest(lane) - PoissonRatio.ROUGHNESS);
  }

  /** The zones that end in a block, for a lane that has some number of cases at its end. */
  private void lookAtZones(int block, int window, int lane, int casesAtEnd) {
    int begin = block * ThresholdRow.BLOCK;
    int n = Math.min(order.places().length - begin, ThresholdRow.BLOCK);
    int cases = casesAtEnd;
    for (int i = 0; i < n; i++) {
      int place = order.places()[begin + i];
      inBlock[i] = group.cases(place, cuts.from(window), cuts.to(window), lane);
      cases -= inBlock[i];
    }
    double logLeast = Math.log(row.least(block, window));
    double logOutside = Math.log(ratio.total() - row.least(block, window));
    for (int i = 0; i < n; i++) {
      cases += inBlock[i];
      if (order.complete()[begin + i]
          && cases > 0
          && raises(lane, ratio.roughly(cases, logLeast, logOutside))
          && raises(lane, cases, row.upTo(order, block, i, window))) {
        raise(window, lane, begin + i + 1, cases);
      }
    }
  }

  private boolean raises(int lane, int cases, double expected) {
    return largestExpected[cases] >= expected
        && raises(
            lane, ratio.roughly(cases, Math.log(expected), Math.log(ratio.total() - expected)));
  }

  /** The first places of the order: what they expect, added up as the search of the best does. */
  private void raise(int window, int lane, int places, int cases) {
    Window time = windows.get(window);
    double expected = 0;
    for (int k = 0; k < places; k++) {
      double ofPlace = 0;
      for (int period = time.first(); period <= time.last(); period++) {
        ofPlace += grid.expected()[period * grid.places() + order.places()[k]];
      }
      expected += ofPlace;
    }
    if (expected >= fewestExpected) {
      group.raise(lane, order.penalty() * ratio.at(cases, expected));
    }
  }
}
