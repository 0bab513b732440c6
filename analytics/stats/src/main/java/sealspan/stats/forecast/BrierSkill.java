package sealspan.stats.forecast;

import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

/** How much better forecasts were than a simple one. */
public final class BrierSkill {
  private static final int FEWEST = 2;

  private BrierSkill() {}

  /**
   * 1 - Brier score / Brier score of the reference: 1 is perfect, 0 no better, below 0 worse. The
   * interval takes the forecasts as independent and the reference's score as known.
   *
   * @param probabilities the forecasts
   * @param reference the simple forecasts, such as the base rate of the type
   * @param outcomes what happened
   */
  public static Estimate<PointEstimate> of(
      double[] probabilities, double[] reference, boolean[] outcomes, double level) {
    ForecastScore.requirePairs(probabilities, outcomes);
    ForecastScore.requirePairs(reference, outcomes);
    int n = outcomes.length;
    if (n < FEWEST) {
      return Estimate.notIdentified(n + " forecasts with an outcome are too few");
    }
    double own = 0;
    double simple = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double y = outcomes[i] ? 1 : 0;
      double a = (probabilities[i] - y) * (probabilities[i] - y);
      double b = (reference[i] - y) * (reference[i] - y);
      own += a;
      simple += b;
      squares += (b - a) * (b - a);
    }
    if (simple == 0) {
      return Estimate.notIdentified("the simple forecasts made no error");
    }
    double gain = (simple - own) / n;
    double variance = Math.max(0, squares - n * gain * gain) / (n - 1) / n;
    double error = Math.sqrt(variance) / (simple / n);
    double skill = 1 - own / simple;
    double reach = Confidence.z(level) * error;
    return Estimate.of(
        new PointEstimate(skill, error, new Interval(skill - reach, skill + reach, level)));
  }
}
