package sealspan.study.practice;

import sealspan.event.Means;

/**
 * When the yearly tests are made: zone by zone through the year, site by site within a window of 30
 * days; irrigation after the winter.
 */
public record TestRoute(
    @Means("share of visits that are late") double lateShare,
    @Means("mean lateness of those, days; never more than 240") double lateDays,
    @Means("share of yearly tests that are never made") double missedShare,
    @Means("share of visits without access; a second visit follows") double noAccessShare,
    @Means("share of discharging relief valves that are seen and reported before the test")
        double dischargeSeenShare,
    @Means("positions given up a year") double removedPerYear,
    @Means("positions whose owner changes a year") double ownerChangesPerYear,
    @Means("share of positions that are first installed during the record") double newShare,
    @Means("greatest age of the others when the record begins, years") double oldestYears,
    @Means("of these, share whose install day is known") double installDayKnown,
    @Means("whether irrigation is laid up from November to March") LayUp layUp) {

  /** Whether irrigation is laid up in winter. */
  public enum LayUp {
    WINTER,
    NONE
  }

  /** Mostly punctual, with the usual exceptions. */
  public static TestRoute usual() {
    return new TestRoute(0.12, 50, 0.02, 0.04, 0.05, 0.005, 0.01, 0.1, 25, 0.7, LayUp.WINTER);
  }

  /** Every position is new when the record begins, and every test is made in its month. */
  public static TestRoute punctual() {
    return new TestRoute(0, 0, 0, 0, 0, 0, 0, 0, 0, 1, LayUp.NONE);
  }
}
