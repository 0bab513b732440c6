package sealspan.stats.forecast;

import org.hipparchus.special.Erf;
import sealspan.stats.Estimate;

/**
 * Scores of a set of probabilities against what happened.
 *
 * @param n number of forecasts
 * @param happened how many of them came true
 * @param meanProbability mean of the probabilities
 * @param brier mean squared distance of probability and outcome, 0 best (Brier 1950)
 * @param logScore mean of minus the log of the probability given to what happened, 0 best; infinite
 *     where something happened that was said to be impossible
 * @param spiegelhalterZ standard normal where the probabilities are right (Spiegelhalter 1986); 0
 *     where all are 0 or 1
 */
public record ForecastScore(
    int n,
    int happened,
    double meanProbability,
    double brier,
    double logScore,
    double spiegelhalterZ) {

  /**
   * Scores forecasts.
   *
   * @param probabilities each from 0 to 1
   * @param outcomes whether it happened
   */
  public static Estimate<ForecastScore> of(double[] probabilities, boolean[] outcomes) {
    requirePairs(probabilities, outcomes);
    int n = probabilities.length;
    if (n == 0) {
      return Estimate.notIdentified("no forecast has been followed by an outcome");
    }
    int happened = 0;
    double total = 0;
    double brier = 0;
    double log = 0;
    double surprise = 0;
    double variance = 0;
    for (int i = 0; i < n; i++) {
      double p = probabilities[i];
      double y = outcomes[i] ? 1 : 0;
      happened += outcomes[i] ? 1 : 0;
      total += p;
      brier += (p - y) * (p - y);
      log -= outcomes[i] ? StrictMath.log(p) : StrictMath.log1p(-p);
      surprise += (y - p) * (1 - 2 * p);
      variance += (1 - 2 * p) * (1 - 2 * p) * p * (1 - p);
    }
    return Estimate.of(
        new ForecastScore(
            n,
            happened,
            total / n,
            brier / n,
            log / n,
            variance > 0 ? surprise / Math.sqrt(variance) : 0));
  }

  /** Two-sided p-value of {@link #spiegelhalterZ}: small where the probabilities are wrong. */
  public double calibrationPValue() {
    return Erf.erfc(Math.abs(spiegelhalterZ) / Math.sqrt(2));
  }

  static void requirePairs(double[] probabilities, boolean[] outcomes) {
    if (probabilities.length != outcomes.length) {
      throw new IllegalArgumentException(
          probabilities.length + " probabilities but " + outcomes.length + " outcomes");
    }
    for (double p : probabilities) {
      if (!(p >= 0 && p <= 1)) {
        throw new IllegalArgumentException("a probability lies between 0 and 1, but got " + p);
      }
    }
  }
}
