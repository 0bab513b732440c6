package sealspan.stats.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;

/**
 * How often things happened that were given a probability: the curve that never falls and lies
 * closest to the outcomes, by pooling adjacent violators. It needs no bins.
 *
 * @param blocks its steps, by rising probability
 */
public record Reliability(List<Block> blocks) {
  private static final long SEED = 20210217L;

  /**
   * One step.
   *
   * @param lowest smallest probability in it
   * @param highest greatest probability in it
   * @param mean mean probability in it
   * @param share share of them that happened
   * @param n forecasts in it
   */
  public record Block(double lowest, double highest, double mean, double share, int n) {}

  public Reliability {
    blocks = List.copyOf(blocks);
  }

  /** The curve; the order of the forecasts decides nothing. */
  public static Estimate<Reliability> of(double[] probabilities, boolean[] outcomes) {
    ForecastScore.requirePairs(probabilities, outcomes);
    if (probabilities.length == 0) {
      return Estimate.notIdentified("no forecast has been followed by an outcome");
    }
    Groups groups = Groups.of(probabilities, outcomes);
    List<Block> blocks = new ArrayList<>();
    for (int[] range : groups.pooled(groups.happened)) {
      double total = 0;
      int n = 0;
      int happened = 0;
      for (int i = range[0]; i < range[1]; i++) {
        total += groups.value[i] * groups.count[i];
        n += groups.count[i];
        happened += groups.happened[i];
      }
      blocks.add(
          new Block(
              groups.value[range[0]],
              groups.value[range[1] - 1],
              total / n,
              (double) happened / n,
              n));
    }
    return Estimate.of(new Reliability(blocks));
  }

  /**
   * Where the curve would lie at each of its steps if every probability were right: pointwise, by
   * drawing outcomes from the probabilities themselves. A step outside of its band speaks against
   * them.
   *
   * @param draws number of draws, such as 200
   */
  public List<Interval> bands(double[] probabilities, int draws, double level) {
    double[] sorted = probabilities.clone();
    Arrays.sort(sorted);
    Groups groups = Groups.of(sorted, new boolean[sorted.length]);
    SplittableRandom random = new SplittableRandom(SEED);
    double[][] drawn = new double[blocks.size()][draws];
    for (int draw = 0; draw < draws; draw++) {
      int[] happened = new int[groups.value.length];
      for (int i = 0; i < happened.length; i++) {
        for (int k = 0; k < groups.count[i]; k++) {
          happened[i] += random.nextDouble() < groups.value[i] ? 1 : 0;
        }
      }
      double[] curve = groups.curve(happened);
      for (int b = 0; b < blocks.size(); b++) {
        int at = Arrays.binarySearch(groups.value, middle(groups, blocks.get(b)));
        drawn[b][draw] = curve[at];
      }
    }
    double tail = Confidence.tail(level);
    List<Interval> bands = new ArrayList<>();
    for (double[] heights : drawn) {
      Arrays.sort(heights);
      int lower = (int) Math.floor(tail * draws);
      bands.add(new Interval(heights[lower], heights[draws - 1 - lower], level));
    }
    return bands;
  }

  /** The probability among those of a step that lies nearest to their mean. */
  private static double middle(Groups groups, Block block) {
    int at = Arrays.binarySearch(groups.value, block.mean());
    if (at >= 0) {
      return groups.value[at];
    }
    int above = Math.min(-at - 1, groups.value.length - 1);
    int below = Math.max(0, above - 1);
    double up = groups.value[above] - block.mean();
    double down = block.mean() - groups.value[below];
    return groups.value[up < down ? above : below];
  }

  /** Forecasts by probability. */
  private record Groups(double[] value, int[] count, int[] happened) {
    static Groups of(double[] probabilities, boolean[] outcomes) {
      Integer[] order = new Integer[probabilities.length];
      Arrays.setAll(order, i -> i);
      Arrays.sort(order, (a, b) -> Double.compare(probabilities[a] + 0.0, probabilities[b] + 0.0));
      double[] value = new double[order.length];
      int[] count = new int[order.length];
      int[] happened = new int[order.length];
      int n = 0;
      for (int i : order) {
        double p = probabilities[i] + 0.0;
        if (n == 0 || value[n - 1] != p) {
          value[n++] = p;
        }
        count[n - 1]++;
        happened[n - 1] += outcomes[i] ? 1 : 0;
      }
      return new Groups(
          Arrays.copyOf(value, n), Arrays.copyOf(count, n), Arrays.copyOf(happened, n));
    }

    /** The ranges of groups that are pooled, from and to (excluded). */
    List<int[]> pooled(int[] outcomes) {
      int[] from = new int[value.length];
      long[] hits = new long[value.length];
      long[] cases = new long[value.length];
      int n = 0;
      for (int i = 0; i < value.length; i++) {
        from[n] = i;
        hits[n] = outcomes[i];
        cases[n] = count[i];
        n++;
        while (n > 1 && hits[n - 2] * cases[n - 1] >= hits[n - 1] * cases[n - 2]) {
          hits[n - 2] += hits[n - 1];
          cases[n - 2] += cases[n - 1];
          n--;
        }
      }
      List<int[]> ranges = new ArrayList<>(n);
      for (int b = 0; b < n; b++) {
        ranges.add(new int[] {from[b], b + 1 < n ? from[b + 1] : value.length});
      }
      return ranges;
    }

    double[] curve(int[] outcomes) {
      double[] curve = new double[value.length];
      for (int[] range : pooled(outcomes)) {
        long hits = 0;
        long cases = 0;
        for (int i = range[0]; i < range[1]; i++) {
          hits += outcomes[i];
          cases += count[i];
        }
        Arrays.fill(curve, range[0], range[1], (double) hits / cases);
      }
      return curve;
    }
  }
}
