package sealspan.stats.forecast;

/**
 * A running check of probabilities that may be looked at after every outcome: a bet against them
 * whose fortune is expected not to grow while they are right. The chance that it ever reaches 1/a
 * is then at most a (Ville 1939). The bet is spread over four ways in which the odds may be wrong.
 */
public final class CalibrationMonitor {
  private static final double[] ODDS_RATIOS = {0.5, 2 / 3.0, 1.5, 2};

  private CalibrationMonitor() {}

  /**
   * Where the bet stands.
   *
   * @param fortune what has become of 1
   * @param highest the most it ever was, at least 1
   */
  public record Standing(double fortune, double highest) {
    /** Bound on the chance of this if the probabilities are right, however often one looked. */
    public double chanceAtMost() {
      return 1 / highest;
    }
  }

  /**
   * Follows the bet.
   *
   * @param probabilities the forecasts in the order in which their outcomes became known
   * @param outcomes what happened
   */
  public static Standing follow(double[] probabilities, boolean[] outcomes) {
    ForecastScore.requirePairs(probabilities, outcomes);
    double[] logs = new double[ODDS_RATIOS.length];
    double fortune = 1;
    double highest = 1;
    for (int i = 0; i < outcomes.length; i++) {
      double p = probabilities[i];
      boolean impossible = outcomes[i] ? p == 0 : p == 1;
      for (int k = 0; k < logs.length; k++) {
        double total = 1 - p + p * ODDS_RATIOS[k];
        logs[k] += StrictMath.log((outcomes[i] ? ODDS_RATIOS[k] : 1) / total);
      }
      fortune = impossible ? Double.POSITIVE_INFINITY : mean(logs);
      highest = Math.max(highest, fortune);
      if (impossible) {
        return new Standing(fortune, highest);
      }
    }
    return new Standing(fortune, highest);
  }

  private static double mean(double[] logs) {
    double sum = 0;
    for (double log : logs) {
      sum += StrictMath.exp(Math.min(700, log));
    }
    return sum / logs.length;
  }
}
