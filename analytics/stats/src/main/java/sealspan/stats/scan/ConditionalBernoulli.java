package sealspan.stats.scan;

import java.util.Arrays;

/**
 * Which of some independent trials with unequal probabilities succeed, given how many do: exact
 * draws. The trials are halved again and again; each half carries the distribution of its number of
 * successes, and a draw splits the number between the halves from the top down. Given the number,
 * the law does not change when all odds are multiplied by one factor; they are scaled so that the
 * number is what is expected, which keeps the distributions away from their tails.
 */
public final class ConditionalBernoulli {
  /** A probability below this beside the largest of its distribution is taken as 0. */
  private static final double NEGLIGIBLE = 1e-30;

  private final int trials;
  private final int successes;

  /**
   * By node of the halving, numbered as in a heap: fewest successes, and where their probabilities
   * begin. A draw goes through each level of the halving from left to right, so it reads them one
   * after the other.
   */
  private final int[] fewest;

  private final int[] begin;
  private final double[] chance;

  /**
   * Draws for given trials.
   *
   * @param probabilities each between 0 and 1, ends excluded
   * @param successes how many succeed, from 0 to the number of trials
   */
  public ConditionalBernoulli(double[] probabilities, int successes) {
    this.trials = probabilities.length;
    this.successes = successes;
    if (successes < 0 || successes > trials) {
      throw new IllegalArgumentException(successes + " successes of " + trials);
    }
    int nodes = Math.max(2, 4 * Integer.highestOneBit(Math.max(1, trials)));
    fewest = new int[nodes];
    begin = new int[nodes + 1];
    double[][] byNode = new double[nodes][];
    if (successes > 0 && successes < trials) {
      build(1, 0, trials, scaled(probabilities, successes), byNode);
    }
    for (int node = 0; node < nodes; node++) {
      begin[node + 1] = begin[node] + (byNode[node] == null ? 0 : byNode[node].length);
    }
    chance = new double[begin[nodes]];
    for (int node = 0; node < nodes; node++) {
      if (byNode[node] != null) {
        System.arraycopy(byNode[node], 0, chance, begin[node], byNode[node].length);
      }
    }
  }

  private static double[] scaled(double[] probabilities, int successes) {
    double low = 1e-12;
    double high = 1e12;
    for (int i = 0; i < 100; i++) {
      double factor = Math.sqrt(low * high);
      double sum = 0;
      for (double p : probabilities) {
        sum += factor * p / (1 - p + factor * p);
      }
      if (sum < successes) {
        low = factor;
      } else {
        high = factor;
      }
    }
    double factor = Math.sqrt(low * high);
    double[] scaled = new double[probabilities.length];
    for (int i = 0; i < scaled.length; i++) {
      double p = probabilities[i];
      if (!(p > 0 && p < 1)) {
        throw new IllegalArgumentException("a probability of " + p);
      }
      scaled[i] = factor * p / (1 - p + factor * p);
    }
    return scaled;
  }

  private void build(int node, int from, int to, double[] p, double[][] byNode) {
    if (to - from == 1) {
      byNode[node] = new double[] {1 - p[from], p[from]};
      return;
    }
    int middle = (from + to) >>> 1;
    build(2 * node, from, middle, p, byNode);
    build(2 * node + 1, middle, to, p, byNode);
    double[] left = byNode[2 * node];
    double[] right = byNode[2 * node + 1];
    double[] both = new double[left.length + right.length - 1];
    for (int i = 0; i < left.length; i++) {
      for (int j = 0; j < right.length; j++) {
        both[i + j] += left[i] * right[j];
      }
    }
    double most = 0;
    for (double b : both) {
      most = Math.max(most, b);
    }
    int first = 0;
    while (both[first] < NEGLIGIBLE * most) {
      first++;
    }
    int end = both.length;
    while (both[end - 1] < NEGLIGIBLE * most) {
      end--;
    }
    fewest[node] = fewest[2 * node] + fewest[2 * node + 1] + first;
    byNode[node] = Arrays.copyOfRange(both, first, end);
  }

  /**
   * Draws which trials succeed.
   *
   * @param random where the numbers come from
   * @param firstCounter first of the counters used; at most four times the trials are
   * @param into gets the indices of the trials that succeed
   * @param at first place in it
   */
  public void draw(CounterRandom random, long firstCounter, int[] into, int at) {
    if (successes == trials) {
      for (int i = 0; i < trials; i++) {
        into[at + i] = i;
      }
    } else if (successes > 0) {
      split(1, 0, trials, successes, random, firstCounter, into, at);
    }
  }

  private void split(
      int node, int from, int to, int count, CounterRandom random, long base, int[] into, int at) {
    if (count == 0) {
      return;
    }
    if (to - from == count) {
      for (int i = 0; i < count; i++) {
        into[at + i] = from + i;
      }
      return;
    }
    int middle = (from + to) >>> 1;
    int toLeft = leftShare(node, count, random.uniform(base + node));
    split(2 * node, from, middle, toLeft, random, base, into, at);
    split(2 * node + 1, middle, to, count - toLeft, random, base, into, at + toLeft);
  }

  private int leftShare(int node, int count, double uniform) {
    int left = begin[2 * node];
    int right = begin[2 * node + 1];
    int fewestLeft = fewest[2 * node];
    int fewestRight = fewest[2 * node + 1];
    int low = Math.max(fewestLeft, count - fewestRight - (begin[2 * node + 2] - right) + 1);
    int high = Math.min(fewestLeft + (right - left) - 1, count - fewestRight);
    double target = uniform * chance[begin[node] + count - fewest[node]];
    int ofLeft = left - fewestLeft;
    int ofRight = right + count - fewestRight;
    double sum = 0;
    int possible = low;
    for (int share = low; share <= high; share++) {
      double weight = chance[ofLeft + share] * chance[ofRight - share];
      if (weight > 0) {
        possible = share;
      }
      sum += weight;
      if (sum > target) {
        return share;
      }
    }
    return possible;
  }
}
