package sealspan.stats.degradation;

import java.util.Comparator;

/**
 * One reading of one component.
 *
 * @param day day of the reading
 * @param value what was read; for AT_OR_BELOW the greatest value that it may have been
 * @param seen whether the value itself was read
 * @param limit least value that passes; negative infinity for none
 * @param error error of the gauge
 * @param step the value is rounded to multiples of it; 0 for none
 * @param gaugePeriod readings of the same text, one after the other, share the gauge's bias: those
 *     of one gauge between two calibrations, also over several units
 */
public record GaugedReading(
    int day,
    double value,
    Seen seen,
    double limit,
    GaugeError error,
    double step,
    String gaugePeriod) {

  /** What is known of the value. */
  public enum Seen {
    MEASURED,
    /** It leaked, did not open, or read nothing: the value lies at or below the number. */
    AT_OR_BELOW
  }

  static final Comparator<GaugedReading> ORDER =
      Comparator.comparingInt(GaugedReading::day)
          .thenComparingDouble(GaugedReading::value)
          .thenComparing(GaugedReading::seen)
          .thenComparingDouble(GaugedReading::limit)
          .thenComparingDouble(r -> r.error.ownVariance())
          .thenComparingDouble(r -> r.error.biasVariance())
          .thenComparingDouble(GaugedReading::step)
          .thenComparing(GaugedReading::gaugePeriod);

  public GaugedReading {
    if (!Double.isFinite(value) || Double.isNaN(limit) || !(step >= 0)) {
      throw new IllegalArgumentException(
          "a reading needs a number, a limit and a step of at least 0, but got "
              + value
              + ", "
              + limit
              + " and "
              + step);
    }
  }

  /** The same reading as it would be had the gauge read higher; it passes or fails as before. */
  GaugedReading raised(double by) {
    return new GaugedReading(day, value + by, seen, limit + by, error, step, gaugePeriod);
  }

  /** The same reading as a gauge without that bias would have given it. */
  GaugedReading withoutBias(double bias) {
    GaugeError own = new GaugeError(error.ownVariance(), 0);
    return new GaugedReading(day, value - bias, seen, limit - bias, own, step, gaugePeriod);
  }

  /** Whether it fails. */
  public boolean fails() {
    return seen == Seen.AT_OR_BELOW || value < limit;
  }

  /**
   * Variance of the reading about level and bias: its own error and that of rounding.
   *
   * @param errorShare share of the gauge's variance that applies
   */
  double ownVariance(double errorShare) {
    return errorShare * error.ownVariance() + step * step / 12;
  }
}
