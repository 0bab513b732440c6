package sealspan.study;

import sealspan.stats.Interval;
import sealspan.stats.rates.Share;

/**
 * A share of cases with its exact 95 % interval (Clopper and Pearson 1934). It takes the cases as
 * independent, which repeated tests of one assembly are not: then the interval is too narrow.
 *
 * @param hits cases counted
 * @param cases all cases, at least 1
 * @param lower lower end, 0 to 1
 * @param upper upper end, 0 to 1
 */
public record ExactShare(long hits, long cases, double lower, double upper) {
  private static final double LEVEL = .95;

  /** The share of some counts; fails with IllegalArgumentException unless 0 <= hits <= cases. */
  public static ExactShare of(long hits, long cases) {
    Interval interval = Share.clopperPearson(hits, cases, LEVEL);
    return new ExactShare(hits, cases, interval.lower(), interval.upper());
  }
}
