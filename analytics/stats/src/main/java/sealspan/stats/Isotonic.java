package sealspan.stats;

/**
 * Weighted isotonic regression by pooling adjacent violators (Ayer, Brunk, Ewing, Reid and
 * Silverman 1955, from memory): the non-decreasing values that are closest to the given ones, in
 * one pass.
 */
public final class Isotonic {
  private Isotonic() {}

  /**
   * Replaces values[from..to) by their regression.
   *
   * @param values the values
   * @param weights their weights, above 0
   */
  public static void regress(double[] values, double[] weights, int from, int to) {
    int n = to - from;
    double[] level = new double[n];
    double[] weight = new double[n];
    int[] size = new int[n];
    int blocks = 0;
    for (int i = from; i < to; i++) {
      level[blocks] = values[i];
      weight[blocks] = weights[i];
      size[blocks] = 1;
      while (blocks > 0 && level[blocks - 1] >= level[blocks]) {
        double sum = weight[blocks - 1] + weight[blocks];
        level[blocks - 1] += (level[blocks] - level[blocks - 1]) * (weight[blocks] / sum);
        weight[blocks - 1] = sum;
        size[blocks - 1] += size[blocks];
        blocks--;
      }
      blocks++;
    }
    int at = from;
    for (int b = 0; b < blocks; b++) {
      for (int i = 0; i < size[b]; i++) {
        values[at++] = level[b];
      }
    }
  }
}
