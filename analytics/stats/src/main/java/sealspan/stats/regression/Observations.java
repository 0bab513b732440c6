package sealspan.stats.regression;

import java.util.Arrays;

/**
 * What a regression explains. Only {@code response} and {@code design} are needed; the rest is
 * added with {@link #offset}, {@link #weight} and {@link #cluster}.
 *
 * @param design columns
 * @param response counts, or shares from 0 to 1 (mostly 0 = passed, 1 = failed), one per row
 * @param offset added to the linear predictor, for example the logarithm of the exposure
 * @param weight weight of each row's log-likelihood, at least 0
 * @param cluster number of the row's cluster, at least 0: rows of one cluster, such as one
 *     assembly, are not independent
 */
public record Observations(
    Design design, double[] response, double[] offset, double[] weight, int[] cluster) {
  public Observations {
    int rows = design.rows();
    requireLength("response", response.length, rows);
    requireLength("offset", offset.length, rows);
    requireLength("weight", weight.length, rows);
    requireLength("cluster", cluster.length, rows);
    for (int i = 0; i < rows; i++) {
      if (!Double.isFinite(offset[i])
          || !(weight[i] >= 0 && weight[i] < Double.POSITIVE_INFINITY)
          || cluster[i] < 0) {
        throw new IllegalArgumentException(
            "row "
                + (i + 1)
                + ": offset "
                + offset[i]
                + ", weight "
                + weight[i]
                + " or cluster "
                + cluster[i]
                + " is outside of its domain");
      }
    }
  }

  /** No offset, weight 1, every row its own cluster. */
  public static Observations of(Design design, double[] response) {
    int rows = design.rows();
    double[] ones = new double[rows];
    Arrays.fill(ones, 1);
    int[] own = new int[rows];
    Arrays.setAll(own, i -> i);
    return new Observations(design, response, new double[rows], ones, own);
  }

  /** The same with other columns. */
  public Observations design(Design other) {
    return new Observations(other, response, offset, weight, cluster);
  }

  /** The same with an offset. */
  public Observations offset(double[] values) {
    return new Observations(design, response, values, weight, cluster);
  }

  /** The same with weights. */
  public Observations weight(double[] values) {
    return new Observations(design, response, offset, values, cluster);
  }

  /** The same with clusters, numbered from 0. */
  public Observations cluster(int[] values) {
    return new Observations(design, response, offset, weight, values);
  }

  private static void requireLength(String what, int length, int rows) {
    if (length != rows) {
      throw new IllegalArgumentException(length + " values of " + what + " for " + rows + " rows");
    }
  }
}
