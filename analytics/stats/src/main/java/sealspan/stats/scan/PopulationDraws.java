package sealspan.stats.scan;

import java.util.Arrays;

/** Each case falls into a cell with probability in proportion to what is expected there. */
public final class PopulationDraws implements NullDraws {
  private final double[] upTo;
  private final long seed;

  /** Draws for a grid under a seed. */
  public PopulationDraws(CaseGrid grid, long seed) {
    this.seed = seed;
    this.upTo = grid.expected().clone();
    for (int i = 1; i < upTo.length; i++) {
      upTo[i] += upTo[i - 1];
    }
  }

  @Override
  public void draw(long replicate, int[] cells) {
    CounterRandom random = CounterRandom.of(seed, replicate);
    double all = upTo[upTo.length - 1];
    for (int i = 0; i < cells.length; i++) {
      double at = random.uniform(i) * all;
      int found = Arrays.binarySearch(upTo, at);
      int cell = found < 0 ? -found - 1 : found + 1;
      // Equal sums are cells in which nothing is expected: the first past the point is the one.
      while (cell < upTo.length - 1 && upTo[cell] <= at) {
        cell++;
      }
      cells[i] = cell;
    }
  }
}
