package sealspan.stats.scan;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The largest score of each replicate under the null, exactly, without a logarithm per zone.
 *
 * <p>Under the null the expected cases of a zone stay the same, so many replicates are counted side
 * by side, and along the places of an order only what could raise a replicate's largest score is
 * worked out ({@link GroupScan}). A few orders, spread over all, are scanned first: what they come
 * to is the threshold for the rest. In between replicates are sorted by it, so that those of one
 * group need about the same. Maxima depend neither on the sequence of orders nor on what replicates
 * are done together.
 */
final class ReplicateMaxima {
  /** Counts take at most about this, unless those of four replicates need more: 128 MiB. */
  static final long MOST_WORDS = 1L << 24;

  private static final int MOST_WORDS_OF_GROUP = 64;
  private static final int MOST_GROUPS = 32;

  /** Of so many orders one is scanned first, then of fewer, then all the others. */
  private static final int[] STRIDES = {256, 64, 8, 1};

  /** Thresholds are raised when so many orders were scanned and it makes a difference. */
  private static final int ORDERS_BETWEEN = 64;

  private static final double DIFFERENCE = 0.05;

  private final CaseGrid grid;
  private final NullDraws draws;
  private final PoissonRatio ratio;
  private final int[] stretch;
  private final ZoneOrder[] walk;
  private final double[] penalties;
  private final LaneGroups groups;
  private final GroupScan scan;
  private final int together;

  /**
   * For a grid and zones.
   *
   * @param grid cases and expected cases
   * @param windows windows, ordered by first period, then last
   * @param orders the places about each centre
   * @param fewestExpected zones that expect fewer cases are not looked at
   * @param draws the replicates
   * @param mostWords machine words that counts take at most, unless four replicates need more
   */
  ReplicateMaxima(
      CaseGrid grid,
      List<Window> windows,
      List<ZoneOrder> orders,
      double fewestExpected,
      NullDraws draws,
      long mostWords) {
    this.grid = grid;
    this.draws = draws;
    this.ratio = new PoissonRatio(grid.total());
    if (ratio.total() > LaneGroup.MOST_CASES) {
      throw new IllegalArgumentException(
          ratio.total() + " cases; a scan takes at most " + LaneGroup.MOST_CASES);
    }
    WindowCuts cuts = new WindowCuts(windows);
    this.stretch = IntStream.range(0, grid.periods()).map(cuts::stretch).toArray();
    this.walk = NearWalk.of(orders, grid.places());
    this.penalties = orders.stream().mapToDouble(ZoneOrder::penalty).distinct().toArray();
    long wordsOfFour = Math.max(1, (long) grid.places() * cuts.stretches());
    int words = MOST_WORDS_OF_GROUP;
    while (words > 1 && words * wordsOfFour > mostWords) {
      words /= 2;
    }
    long mostGroups = Math.max(1, Math.min(MOST_GROUPS, mostWords / (words * wordsOfFour)));
    this.together = (int) mostGroups * words * LaneGroup.LANES;
    this.groups = new LaneGroups(grid.places(), cuts.stretches(), words);
    int longest = orders.stream().mapToInt(order -> order.places().length).max().orElse(0);
    this.scan = new GroupScan(grid, windows, longest, fewestExpected, words);
  }

  /** The maxima of replicates 0, 1, ... */
  double[] of(int replicates) {
    double[] all = new double[replicates];
    for (int first = 0; first < replicates; first += together) {
      draw(first, Math.min(replicates, first + together));
      int passed = 0;
      for (int stride : STRIDES) {
        for (LaneGroup group : groups.inUse()) {
          scan(group, stride, passed);
        }
        passed = stride;
        if (stride > 1) {
          groups.sort();
        }
      }
      groups.enterLargest(all);
    }
    return all;
  }

  private void draw(int first, int end) {
    groups.clear(first, end);
    int[] cells = new int[ratio.total()];
    int replicate = first;
    for (LaneGroup group : groups.inUse()) {
      for (int lane = 0; lane < group.lanes(); lane++) {
        draws.draw(replicate++, cells);
        for (int cell : cells) {
          int period = cell / grid.places();
          if (stretch[period] >= 0) {
            group.add(cell - period * grid.places(), stretch[period], lane);
          }
        }
      }
      group.addUp();
    }
  }

  /** Every so-manieth order but those that an earlier stride has passed (0: there was none). */
  private void scan(LaneGroup group, int stride, int passed) {
    double threshold = -1;
    double[][] tables = new double[penalties.length][];
    int scanned = 0;
    for (int i = 0; i < walk.length; i += stride) {
      if (passed > 0 && i % passed == 0) {
        continue;
      }
      boolean due = Integer.bitCount(scanned) <= 1 || scanned % ORDERS_BETWEEN == 0;
      if (due && group.least() > threshold + DIFFERENCE) {
        threshold = group.least();
        for (int p = 0; p < penalties.length; p++) {
          tables[p] = ratio.largestExpected(threshold / penalties[p]);
        }
      }
      scan.scan(group, walk[i], tables[indexOf(walk[i].penalty())]);
      scanned++;
    }
  }

  private int indexOf(double penalty) {
    int p = 0;
    while (penalties[p] != penalty) {
      p++;
    }
    return p;
  }
}
