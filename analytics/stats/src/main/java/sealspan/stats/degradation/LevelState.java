package sealspan.stats.degradation;

import sealspan.stats.Confidence;
import sealspan.stats.Interval;

/**
 * What is known of the true level of one component and of its drift: jointly normal.
 *
 * @param day the day that it holds for
 * @param level mean of the level
 * @param levelVariance its variance
 * @param driftPerDay mean of the drift, a day
 * @param driftVariance its variance
 * @param covariance of level and drift
 */
public record LevelState(
    int day,
    double level,
    double levelVariance,
    double driftPerDay,
    double driftVariance,
    double covariance) {

  /** The level after some days, at least 0. */
  public LevelForecast ahead(int days, DriftModel model) {
    double variance =
        levelVariance
            + days * (2 * covariance + days * driftVariance)
            + days * model.volatilityPerRootDay() * model.volatilityPerRootDay();
    return new LevelForecast(level + driftPerDay * days, Math.max(0, variance));
  }

  /** Interval of the level on the day. */
  public Interval levelInterval(double confidence) {
    return interval(level, levelVariance, confidence);
  }

  /** Interval of the drift a day. */
  public Interval driftInterval(double confidence) {
    return interval(driftPerDay, driftVariance, confidence);
  }

  private static Interval interval(double mean, double variance, double confidence) {
    double reach = Confidence.z(confidence) * Math.sqrt(Math.max(0, variance));
    return new Interval(mean - reach, mean + reach, confidence);
  }
}
