package sealspan.stats.rates;

import java.util.Arrays;

/**
 * What the tests of one unit say about failures that stay hidden until a test finds them: the
 * exposure before each test, in days, kept apart by outcome. Order is of no account; both arrays
 * are kept sorted.
 *
 * @param passedDays exposures that ended in a passed test, each at least 1 day
 * @param failedDays exposures that ended in a failed test, each at least 1 day
 */
public record HiddenFailures(int[] passedDays, int[] failedDays) {
  public HiddenFailures {
    passedDays = sorted(passedDays);
    failedDays = sorted(failedDays);
  }

  /** From the exposure before each test and whether the test failed, arrays of equal length. */
  public static HiddenFailures of(int[] exposureDays, boolean[] failed) {
    if (exposureDays.length != failed.length) {
      throw new IllegalArgumentException(
          exposureDays.length + " exposures but " + failed.length + " outcomes");
    }
    int failures = 0;
    for (boolean each : failed) {
      failures += each ? 1 : 0;
    }
    int[] passedDays = new int[failed.length - failures];
    int[] failedDays = new int[failures];
    int passes = 0;
    failures = 0;
    for (int i = 0; i < failed.length; i++) {
      if (failed[i]) {
        failedDays[failures++] = exposureDays[i];
      } else {
        passedDays[passes++] = exposureDays[i];
      }
    }
    return new HiddenFailures(passedDays, failedDays);
  }

  /** Number of tests. */
  public int tests() {
    return passedDays.length + failedDays.length;
  }

  /** Number of failed tests. */
  public int failures() {
    return failedDays.length;
  }

  /** Exposure that ended in passed tests, days. */
  public long passedTotalDays() {
    return total(passedDays);
  }

  /** Exposure before all tests, days. */
  public long totalDays() {
    return total(passedDays) + total(failedDays);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HiddenFailures that
        && Arrays.equals(passedDays, that.passedDays)
        && Arrays.equals(failedDays, that.failedDays);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(passedDays) + Arrays.hashCode(failedDays);
  }

  @Override
  public String toString() {
    return "HiddenFailures[passed "
        + Arrays.toString(passedDays)
        + ", failed "
        + Arrays.toString(failedDays)
        + "]";
  }

  private static int[] sorted(int[] days) {
    int[] copy = days.clone();
    Arrays.sort(copy);
    if (copy.length > 0 && copy[0] < 1) {
      throw new IllegalArgumentException(
          "a test counts towards a rate only with at least 1 day of exposure, but got " + copy[0]);
    }
    return copy;
  }

  private static long total(int[] days) {
    long sum = 0;
    for (int day : days) {
      sum += day;
    }
    return sum;
  }
}
