package sealspan.stats.rates;

import java.util.Arrays;

/**
 * A list of units that are claimed to exceed a limit, as long as it can be while the expected share
 * of wrong claims stays within a bound (Newton, Noueiry, Sarkar and Ahlquist 2004, Biostatistics
 * 5:155): the running mean of the sorted probabilities of being wrong.
 *
 * @param listed units on the list
 * @param cutoff a unit is on the list when its probability of being wrong is at most this; below 0
 *     for an empty list
 * @param expectedShare expected share of wrong claims on the list
 */
public record FalseDiscovery(int listed, double cutoff, double expectedShare) {

  /**
   * The list for a bound.
   *
   * @param wrong for each unit the probability that it does not exceed the limit
   * @param bound share of wrong claims to allow, 0 to 1
   */
  public static FalseDiscovery of(double[] wrong, double bound) {
    double[] sorted = wrong.clone();
    Arrays.sort(sorted);
    FalseDiscovery longest = new FalseDiscovery(0, -1, 0);
    double sum = 0;
    for (int k = 0; k < sorted.length; k++) {
      sum += sorted[k];
      boolean tied = k + 1 < sorted.length && sorted[k + 1] == sorted[k];
      if (!tied && sum <= bound * (k + 1)) {
        longest = new FalseDiscovery(k + 1, sorted[k], sum / (k + 1));
      }
    }
    return longest;
  }

  /** Whether a unit with this probability of being wrong is on the list. */
  public boolean lists(double wrong) {
    return wrong <= cutoff;
  }
}
