package sealspan.stats.rates;

import org.hipparchus.analysis.UnivariateFunction;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.RootSearch;

/**
 * The rate of one unit whose failures are found only at tests: a test after d days of exposure
 * fails with probability 1 - exp(-rate x d). A failure is not a dated event, so failures divided by
 * exposure is not this rate (2 failures in 10 yearly tests: .2231 a year, not .2).
 */
public final class HiddenFailureRate {
  private HiddenFailureRate() {}

  /** Maximum likelihood estimate with the exact interval; not identified without a test. */
  public static Estimate<RateEstimate> exact(HiddenFailures unit, double level) {
    return estimate(unit, exactInterval(unit, level));
  }

  /**
   * Maximum likelihood estimate with the interval of rates that the likelihood ratio does not
   * reject; for pooled data, where the exact interval would cost too much. Not identified without a
   * test.
   */
  public static Estimate<RateEstimate> likelihoodRatio(HiddenFailures unit, double level) {
    return estimate(unit, likelihoodRatioInterval(unit, level));
  }

  private static Estimate<RateEstimate> estimate(HiddenFailures unit, Interval interval) {
    if (unit.tests() == 0) {
      return Estimate.notIdentified("there is no test with exposure");
    }
    return Estimate.of(
        new RateEstimate(
            maximumLikelihood(unit), interval, unit.tests(), unit.failures(), unit.totalDays()));
  }

  /**
   * The maximum likelihood rate per day: 0 without failures (and without tests), positive infinity
   * when every test failed.
   */
  public static double maximumLikelihood(HiddenFailures unit) {
    long passed = unit.passedTotalDays();
    int failures = unit.failures();
    if (failures == 0) {
      return 0;
    }
    if (passed == 0) {
      return Double.POSITIVE_INFINITY;
    }
    double lower = StrictMath.log((double) failures / unit.totalDays());
    double upper = StrictMath.log((double) failures / passed);
    // The bounds follow from 1 - x <= x / (exp(x) - 1) <= 1; a hair more guards against rounding.
    return StrictMath.exp(
        RootSearch.between(u -> slope(unit, passed, u), lower - 1e-9, upper + 1e-9));
  }

  /**
   * Exact two-sided interval per day for unequal exposures: inverts the tails of the distribution
   * of the number of failures, half of the error in each. Without failures: from 0 to
   * -ln(tail)/exposure; when every test failed: no upper limit; without tests: from 0 to infinity.
   * It rests on the number of failures alone: if just the tests after very short exposures failed,
   * it can miss the maximum likelihood rate, and a constant rate is then doubtful. Work of order
   * tests x min(failures, passes): meant for one unit, not for a pooled fleet.
   */
  public static Interval exactInterval(HiddenFailures unit, double level) {
    double tail = Confidence.tail(level);
    int tests = unit.tests();
    int failures = unit.failures();
    if (tests == 0) {
      return new Interval(0, Double.POSITIVE_INFINITY, level);
    }
    int[] days = allDays(unit);
    double start = StrictMath.log((failures + 0.5) / unit.totalDays());
    double lower = 0;
    if (failures > 0) {
      UnivariateFunction f =
          u -> 1 - PoissonBinomial.atMost(days, StrictMath.exp(u), failures - 1) - tail;
      lower = StrictMath.exp(RootSearch.around(f, start, 0.5));
    }
    double upper = Double.POSITIVE_INFINITY;
    if (failures == 0) {
      upper = -StrictMath.log(tail) / unit.totalDays();
    } else if (failures < tests) {
      UnivariateFunction f = u -> PoissonBinomial.atMost(days, StrictMath.exp(u), failures) - tail;
      upper = StrictMath.exp(RootSearch.around(f, start, 0.5));
    }
    return new Interval(lower, upper, level);
  }

  /** Rates per day whose log-likelihood lies within z squared / 2 of the maximum. */
  public static Interval likelihoodRatioInterval(HiddenFailures unit, double level) {
    double z = Confidence.z(level);
    long passed = unit.passedTotalDays();
    if (unit.tests() == 0) {
      return new Interval(0, Double.POSITIVE_INFINITY, level);
    }
    if (unit.failures() == 0) {
      return new Interval(0, z * z / 2 / passed, level);
    }
    double rate = maximumLikelihood(unit);
    boolean allFailed = Double.isInfinite(rate);
    double target = (allFailed ? 0 : logLikelihood(unit, passed, StrictMath.log(rate))) - z * z / 2;
    UnivariateFunction f = u -> logLikelihood(unit, passed, u) - target;
    double top = allFailed ? StrictMath.log(40.0 / unit.failedDays()[0]) : StrictMath.log(rate);
    double lower = StrictMath.exp(outward(f, top, -1));
    double upper = allFailed ? Double.POSITIVE_INFINITY : StrictMath.exp(outward(f, top, 1));
    return new Interval(lower, upper, level);
  }

  private static double outward(UnivariateFunction f, double top, int direction) {
    double step = 0.25;
    while (f.value(top + direction * step) > 0) {
      step *= 2;
    }
    double far = top + direction * step;
    return RootSearch.between(f, Math.min(top, far), Math.max(top, far));
  }

  /** Log-likelihood at rate exp(u). */
  static double logLikelihood(HiddenFailures unit, long passedTotalDays, double u) {
    double rate = StrictMath.exp(u);
    double sum = -rate * passedTotalDays;
    for (int day : unit.failedDays()) {
      sum += StrictMath.log(-StrictMath.expm1(-rate * day));
    }
    return sum;
  }

  /** Derivative of the log-likelihood by u, at rate exp(u). */
  static double slope(HiddenFailures unit, long passedTotalDays, double u) {
    double rate = StrictMath.exp(u);
    double sum = -rate * passedTotalDays;
    for (int day : unit.failedDays()) {
      sum += rate * day / StrictMath.expm1(rate * day);
    }
    return sum;
  }

  private static int[] allDays(HiddenFailures unit) {
    int[] days = new int[unit.tests()];
    System.arraycopy(unit.passedDays(), 0, days, 0, unit.passedDays().length);
    System.arraycopy(unit.failedDays(), 0, days, unit.passedDays().length, unit.failures());
    return days;
  }
}
