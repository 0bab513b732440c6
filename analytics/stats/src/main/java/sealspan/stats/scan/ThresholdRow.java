package sealspan.stats.scan;

import java.util.Arrays;

/**
 * For the zones of one order, block by block of places and for each window, the fewest cases that
 * reach a threshold at any zone that ends in the block: the first that is looked at expects least.
 * What zones expect is summed here by stretches of time, so it may be off by rounding.
 */
final class ThresholdRow {
  /** Places of a block. */
  static final int BLOCK = 4;

  private static final double ROUNDING = 1e-9;

  private final WindowCuts cuts;
  private final int windows;
  private final double fewestExpected;

  /** By place and stretch. */
  private final double[] expected;

  private final double[] sum;
  private final double[] first;
  private final double[] before;

  /** By window, the fewest cases that reached the threshold in the block before. */
  private final int[] cases;

  /** By window, whether as much is expected as a zone needs. */
  private final boolean[] enough;

  private final double[] least;
  private final long[] bias;
  private int blocks;

  /**
   * Rows for orders.
   *
   * @param grid what is expected
   * @param cuts the windows
   * @param longest places of the longest order
   * @param fewestExpected zones that expect fewer cases are not looked at
   */
  ThresholdRow(CaseGrid grid, WindowCuts cuts, int longest, double fewestExpected) {
    this.cuts = cuts;
    this.windows = cuts.windows();
    this.fewestExpected = fewestExpected * (1 - ROUNDING);
    int n = cuts.stretches();
    expected = new double[grid.places() * n];
    for (int period = 0; period < grid.periods(); period++) {
      int stretch = cuts.stretch(period);
      for (int place = 0; place < grid.places() && stretch >= 0; place++) {
        expected[place * n + stretch] += grid.expected()[period * grid.places() + place];
      }
    }
    int blocksAtMost = (longest + BLOCK - 1) / BLOCK;
    sum = new double[n];
    first = new double[n];
    before = new double[blocksAtMost * n];
    cases = new int[windows];
    enough = new boolean[windows];
    least = new double[blocksAtMost * windows];
    bias = new long[blocksAtMost * windows];
  }

  /**
   * Works out the row of an order.
   *
   * @param largestExpected by cases, the largest expected number at which the threshold is reached
   */
  void set(ZoneOrder order, double[] largestExpected) {
    int[] places = order.places();
    boolean inReach = true;
    Arrays.fill(sum, 0);
    Arrays.fill(cases, 1);
    Arrays.fill(enough, false);
    blocks = 0;
    for (int begin = 0; begin < places.length && inReach; begin += BLOCK) {
      int end = Math.min(places.length, begin + BLOCK);
      System.arraycopy(sum, 0, before, blocks * sum.length, sum.length);
      int k = begin;
      boolean complete = false;
      while (k < end && !complete) {
        add(places[k]);
        complete = order.complete()[k++];
      }
      System.arraycopy(sum, 0, first, 0, sum.length);
      for (; k < end; k++) {
        add(places[k]);
      }
      int at = blocks++ * windows;
      if (complete) {
        inReach = setBlock(at, largestExpected);
      } else {
        Arrays.fill(bias, at, at + windows, 0);
      }
    }
  }

  private void add(int place) {
    int from = place * sum.length;
    for (int i = 0; i < sum.length; i++) {
      sum[i] += expected[from + i];
    }
  }

  /** Sets a block that is summed; tells whether some window is still within reach. */
  private boolean setBlock(int at, double[] largest) {
    boolean inReach = false;
    for (int w = 0; w < windows; w++) {
      double smallest = Math.max(inWindow(first, 0, w), fewestExpected);
      int needed = cases[w];
      while (needed < largest.length && largest[needed] < smallest) {
        needed++;
      }
      cases[w] = needed;
      boolean open = needed < largest.length;
      inReach |= open;
      least[at + w] = smallest;
      enough[w] = enough[w] || inWindow(sum, 0, w) >= fewestExpected;
      bias[at + w] = open && enough[w] ? LaneGroup.bias(needed) : 0;
    }
    return inReach;
  }

  private double inWindow(double[] byStretch, int at, int window) {
    double all = 0;
    for (int stretch = cuts.from(window); stretch < cuts.to(window); stretch++) {
      all += byStretch[at + stretch];
    }
    return all;
  }

  /** What a zone expects, but for rounding: the places before a block and the first of it. */
  double upTo(ZoneOrder order, int block, int lastOfBlock, int window) {
    double all = inWindow(before, block * sum.length, window);
    for (int i = 0; i <= lastOfBlock; i++) {
      all += inWindow(expected, order.places()[block * BLOCK + i] * sum.length, window);
    }
    return all;
  }

  /** Blocks after which no number of cases reaches the threshold. */
  int blocks() {
    return blocks;
  }

  /** What tells whether a lane could reach the threshold in a block; 0 where none can. */
  long bias(int block, int window) {
    return bias[block * windows + window];
  }

  /** No zone looked at in the block expects less, but for rounding; where the bias is not 0. */
  double least(int block, int window) {
    return least[block * windows + window];
  }
}
