package sealspan.stats.scan;

/**
 * How large zones may grow.
 *
 * @param largestShare largest share of all expected cases, over all periods, from 0 (out) to 1
 * @param mostPlaces most places, at least 1
 */
public record ZoneLimits(double largestShare, int mostPlaces) {
  public ZoneLimits {
    if (!(largestShare > 0 && largestShare <= 1) || mostPlaces < 1) {
      throw new IllegalArgumentException(largestShare + " of the cases, " + mostPlaces + " places");
    }
  }

  /**
   * The most expected cases that a zone may have, with room for rounding.
   *
   * @param weight expected cases of each place
   */
  double mostWeight(double[] weight) {
    double total = 0;
    for (double w : weight) {
      total += w;
    }
    return largestShare * total * (1 + 1e-12);
  }
}
