package sealspan.stats.exposure;

import sealspan.stats.Interval;

/**
 * How often outcomes come in a window beside the days outside of all windows.
 *
 * @param name name of the window
 * @param outcomes outcomes in it, of units that tell something
 * @param days their watched days in it
 * @param ratio ratio of the rates; 0 without an outcome in the window, positive infinity where
 *     every outcome lies in it
 * @param interval exact for one window without bands, else by the profile of the likelihood
 */
public record WindowRatio(String name, int outcomes, long days, double ratio, Interval interval) {}
