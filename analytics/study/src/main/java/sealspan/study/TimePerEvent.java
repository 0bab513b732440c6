package sealspan.study;

import sealspan.stats.Interval;
import sealspan.stats.rates.CountedRate;

/**
 * The time watched for every event, with its exact 95 % interval (Garwood 1936). It takes events as
 * independent, which those of one assembly are not: then the interval is too narrow.
 *
 * @param perEvent time for one event, in the unit of the time watched; null without events
 * @param lower lower end
 * @param upper upper end; null without events, which leave it open
 */
public record TimePerEvent(Double perEvent, double lower, Double upper) {
  private static final double LEVEL = .95;

  /** The time per event of some events, at least 0, in a time watched, above 0. */
  public static TimePerEvent of(long events, double watched) {
    Interval rate = CountedRate.garwood(events, watched, LEVEL);
    return events == 0
        ? new TimePerEvent(null, 1 / rate.upper(), null)
        : new TimePerEvent(watched / events, 1 / rate.upper(), 1 / rate.lower());
  }
}
