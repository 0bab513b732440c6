package sealspan.stats.rates;

import org.hipparchus.special.Gamma;
import sealspan.stats.Confidence;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/** The rate of events that are counted when they happen, such as replacements or visits. */
public final class CountedRate {
  private CountedRate() {}

  /**
   * Exact interval for a Poisson rate (Garwood 1936, Biometrika 28).
   *
   * @param events number of events, at least 0
   * @param exposure time at risk, above 0, in the unit that the rate is per
   * @param level two-sided level
   */
  public static Interval garwood(long events, double exposure, double level) {
    if (events < 0 || !(exposure > 0)) {
      throw new IllegalArgumentException(
          "a rate needs at least 0 events and an exposure above 0, but got "
              + events
              + " and "
              + exposure);
    }
    double tail = Confidence.tail(level);
    double lower = events == 0 ? 0 : meanWithTailAbove(events, tail);
    double upper = events == 0 ? -StrictMath.log(tail) : meanWithTailBelow(events, tail);
    return new Interval(lower / exposure, upper / exposure, level);
  }

  /** The mean at which at least this many events have probability tail. */
  private static double meanWithTailAbove(long events, double tail) {
    return StrictMath.exp(
        RootSearch.around(
            u -> Gamma.regularizedGammaP(events, StrictMath.exp(u)) - tail,
            StrictMath.log(events),
            step(events)));
  }

  /** The mean at which at most this many events have probability tail. */
  private static double meanWithTailBelow(long events, double tail) {
    return StrictMath.exp(
        RootSearch.around(
            u -> Gamma.regularizedGammaQ(events + 1.0, StrictMath.exp(u)) - tail,
            StrictMath.log(events + 1.0),
            step(events)));
  }

  private static double step(long events) {
    return 3 / Math.sqrt(events);
  }
}
