package sealspan.stats.survival;

import sealspan.stats.Interval;

/**
 * The day by which half of the lives have ended.
 *
 * @param day the first day on which the curve is at or below one half; where the curve is exactly
 *     one half over a flat step this is the left end of the step
 * @param interval first days on which the lower and the upper limit of the curve are at or below
 *     one half (Brookmeyer and Crowley 1982); upper infinite when the upper limit stays above
 */
public record Median(int day, Interval interval) {}
