package sealspan.stats.rates;

import sealspan.stats.Interval;

/**
 * A constant rate of failure.
 *
 * @param perDay maximum likelihood estimate per day of exposure; 0 without a failure, positive
 *     infinity when every test failed
 * @param interval limits per day; upper limit positive infinity when every test failed
 * @param tests tests with exposure
 * @param failures failed tests among them
 * @param exposureDays total exposure
 */
public record RateEstimate(
    double perDay, Interval interval, int tests, int failures, long exposureDays) {}
