package sealspan.stats;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Tail probabilities of several questions asked at once, raised so that those below a bound hold,
 * in expectation, no greater share of wrong claims than the bound.
 */
public final class AdjustedProbabilities {
  private AdjustedProbabilities() {}

  /**
   * Benjamini and Hochberg 1995, J. Royal Statistical Society B 57:289: for questions that are
   * independent or positively dependent.
   *
   * @param p one probability, 0 to 1, for each question
   * @return adjusted ones in the same order
   */
  public static double[] benjaminiHochberg(double[] p) {
    return stepUp(p, 1);
  }

  /** Benjamini and Yekutieli 2001, Annals of Statistics 29:1165: for any dependence. */
  public static double[] benjaminiYekutieli(double[] p) {
    double harmonic = 0;
    for (int k = 1; k <= p.length; k++) {
      harmonic += 1.0 / k;
    }
    return stepUp(p, harmonic);
  }

  private static double[] stepUp(double[] p, double factor) {
    for (double each : p) {
      if (!(each >= 0 && each <= 1)) {
        throw new IllegalArgumentException("a probability lies between 0 and 1, not at " + each);
      }
    }
    int[] falling =
        IntStream.range(0, p.length)
            .boxed()
            .sorted((a, b) -> Double.compare(p[b], p[a]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] adjusted = new double[p.length];
    Arrays.fill(adjusted, 1);
    double least = 1;
    for (int k = 0; k < falling.length; k++) {
      int rank = p.length - k;
      least = Math.min(least, factor * p.length / rank * p[falling[k]]);
      adjusted[falling[k]] = least;
    }
    return adjusted;
  }
}
