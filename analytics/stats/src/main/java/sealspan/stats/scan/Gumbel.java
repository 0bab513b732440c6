package sealspan.stats.scan;

import sealspan.stats.Estimate;
import sealspan.stats.RootSearch;

/**
 * The Gumbel distribution of maxima, by maximum likelihood: a tail for p-values smaller than the
 * replicates can count (Abrams, Kulldorff and Kleinman 2010, International Journal of Health
 * Geographics 9:61, found it good for scan statistics).
 *
 * @param location the mode
 * @param scale the scale, more than 0
 */
public record Gumbel(double location, double scale) {
  private static final int FEWEST = 19;

  /** Fits maxima, in any order. */
  public static Estimate<Gumbel> of(double[] maxima) {
    if (maxima.length < FEWEST) {
      return Estimate.notIdentified("a tail needs at least " + FEWEST + " replicates");
    }
    double[] sorted = maxima.clone();
    java.util.Arrays.sort(sorted);
    double least = sorted[0];
    double mean = 0;
    for (double x : sorted) {
      mean += x - least;
    }
    double meanAbove = mean / sorted.length;
    if (!(meanAbove > 0)) {
      return Estimate.notIdentified("all replicates have the same maximum");
    }
    double spread = sorted[sorted.length - 1] - least;
    double scale =
        RootSearch.between(s -> s - meanAbove + tilted(sorted, s), 1e-6 * spread, 4 * spread);
    double sum = 0;
    for (double x : sorted) {
      sum += StrictMath.exp(-(x - least) / scale);
    }
    return Estimate.of(new Gumbel(least - scale * StrictMath.log(sum / sorted.length), scale));
  }

  /** Mean excess over the least, weighted by exp(-excess/scale). */
  private static double tilted(double[] sorted, double scale) {
    double weights = 0;
    double sum = 0;
    for (double x : sorted) {
      double excess = x - sorted[0];
      double weight = StrictMath.exp(-excess / scale);
      weights += weight;
      sum += weight * excess;
    }
    return sum / weights;
  }

  /** Probability of at least x. */
  public double tail(double x) {
    return -StrictMath.expm1(-StrictMath.exp(-(x - location) / scale));
  }
}
