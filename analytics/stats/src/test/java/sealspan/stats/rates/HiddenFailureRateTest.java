package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;

class HiddenFailureRateTest {

  /** By hand: 2 failures in 10 equal intervals, rate = -ln(1 - .2) per interval = .2231436. */
  @Test
  void equalIntervalsHaveAClosedForm() {
    HiddenFailures unit = equal(365, 10, 2);
    assertEquals(.2231436, 365 * HiddenFailureRate.maximumLikelihood(unit), 5e-8);
    assertEquals(-Math.log(0.8), 365 * HiddenFailureRate.maximumLikelihood(unit), 1e-12);
  }

  /** R survreg, exponential, current status 3 of 10 at t = 1: .356674943938732 (case 06). */
  @Test
  void agreesWithTheCurrentStatusFitOfR() {
    assertEquals(0.35667494393873239, HiddenFailureRate.maximumLikelihood(equal(1, 10, 3)), 1e-13);
  }

  /** With equal intervals the exact interval is Clopper and Pearson's, carried to the rate. */
  @Property(tries = 60, seed = "7")
  void equalIntervalsGiveClopperPearson(
      @ForAll @IntRange(min = 1, max = 30) int tests,
      @ForAll @IntRange(max = 30) int some,
      @ForAll @IntRange(min = 1, max = 4000) int days) {
    int failures = some % (tests + 1);
    Interval share = Share.clopperPearson(failures, tests, 0.95);
    Interval rate = HiddenFailureRate.exactInterval(equal(days, tests, failures), 0.95);
    assertEquals(-Math.log1p(-share.lower()), days * rate.lower(), 1e-9);
    if (failures < tests) {
      assertEquals(-Math.log1p(-share.upper()), days * rate.upper(), 1e-8);
    } else {
      assertEquals(Double.POSITIVE_INFINITY, rate.upper());
    }
  }

  /** Independent: the tails summed over every subset of failing tests. */
  @Property(tries = 50, seed = "7")
  void limitsCutOffTheTailsOfTheNumberOfFailures(
      @ForAll @Size(min = 2, max = 9) List<@IntRange(min = 1, max = 900) Integer> exposures,
      @ForAll @IntRange(max = 8) int some) {
    int[] days = exposures.stream().mapToInt(Integer::intValue).toArray();
    int failures = some % (days.length + 1);
    HiddenFailures unit = firstFail(days, failures);
    Interval interval = HiddenFailureRate.exactInterval(unit, 0.95);
    if (failures > 0) {
      assertEquals(0.025, 1 - atMost(days, interval.lower(), failures - 1), 1e-9);
    } else {
      assertEquals(0, interval.lower());
    }
    if (failures < days.length) {
      assertEquals(0.025, atMost(days, interval.upper(), failures), 1e-9);
    } else {
      assertEquals(Double.POSITIVE_INFINITY, interval.upper());
    }
  }

  /** By hand: no failure in 10 years of 365 days, upper limit -ln(.025) / 3650. */
  @Test
  void withoutFailuresTheRateIsZeroWithAnUpperLimit() {
    HiddenFailures unit = equal(365, 10, 0);
    RateEstimate estimate = HiddenFailureRate.exact(unit, 0.95).orThrow();
    assertEquals(0, estimate.perDay());
    assertEquals(0, estimate.interval().lower());
    assertEquals(3.6888794541139363 / 3650, estimate.interval().upper(), 1e-15);
    assertEquals(3650, estimate.exposureDays());
    // z squared / 2 = 1.9207 by hand
    assertEquals(
        1.920729 / 3650, HiddenFailureRate.likelihoodRatioInterval(unit, 0.95).upper(), 1e-9);
  }

  /** By hand: 3 of 3 failed, P(3 | rate) = .025 at 1 - exp(-365 r) = .025^(1/3). */
  @Test
  void whenEveryTestFailedTheRateIsInfiniteWithALowerLimit() {
    RateEstimate estimate = HiddenFailureRate.exact(equal(365, 3, 3), 0.95).orThrow();
    assertEquals(Double.POSITIVE_INFINITY, estimate.perDay());
    assertEquals(-Math.log1p(-Math.cbrt(0.025)) / 365, estimate.interval().lower(), 1e-12);
    assertEquals(Double.POSITIVE_INFINITY, estimate.interval().upper());
    Interval ratio = HiddenFailureRate.likelihoodRatioInterval(equal(365, 3, 3), 0.95);
    // 3 ln(1 - exp(-365 r)) = -1.920729
    assertEquals(-Math.log1p(-Math.exp(-1.920729 / 3)) / 365, ratio.lower(), 1e-8);
  }

  @Test
  void withoutTestsThereIsNoRate() {
    HiddenFailures none = new HiddenFailures(new int[0], new int[0]);
    assertInstanceOf(Estimate.NotIdentified.class, HiddenFailureRate.exact(none, 0.95));
    assertEquals(Double.POSITIVE_INFINITY, HiddenFailureRate.exactInterval(none, 0.95).upper());
  }

  @Test
  void refusesATestWithoutExposure() {
    assertThrows(
        IllegalArgumentException.class, () -> new HiddenFailures(new int[] {0}, new int[0]));
  }

  /** Independent: a fine search over rates finds nothing better. */
  @Test
  void noRateIsMoreLikely() {
    HiddenFailures unit =
        new HiddenFailures(new int[] {1, 400, 730, 1_000_000}, new int[] {1, 365, 90_000});
    double best = HiddenFailureRate.maximumLikelihood(unit);
    double likelihood = logLikelihood(unit, best);
    for (int i = -4000; i <= 4000; i++) {
      assertTrue(logLikelihood(unit, best * Math.exp(i / 500.0)) <= likelihood + 1e-9);
    }
  }

  /** Independent: the log-likelihood, written out again, falls by z squared / 2 at both limits. */
  @Test
  void likelihoodRatioLimitsLieAtTheRightDepth() {
    HiddenFailures unit = new HiddenFailures(new int[] {300, 420, 365, 380}, new int[] {365, 200});
    Interval interval = HiddenFailureRate.likelihoodRatioInterval(unit, 0.95);
    double depth = logLikelihood(unit, HiddenFailureRate.maximumLikelihood(unit)) - 1.9207294;
    assertEquals(depth, logLikelihood(unit, interval.lower()), 1e-6);
    assertEquals(depth, logLikelihood(unit, interval.upper()), 1e-6);
  }

  /** Exact means: over all outcomes, the interval holds the true rate with at least its level. */
  @Test
  void coversTheTrueRateAtLeastAtItsLevel() {
    int[] days = {40, 365, 365, 380, 720, 1500};
    for (double rate : new double[] {1e-5, 2e-4, 1e-3, 5e-3}) {
      double covered = 0;
      for (int failures = 0; failures <= days.length; failures++) {
        double probability = atMost(days, rate, failures) - atMost(days, rate, failures - 1);
        Interval interval = HiddenFailureRate.exactInterval(firstFail(days, failures), 0.95);
        covered += interval.contains(rate) ? probability : 0;
      }
      assertTrue(covered >= 0.95, "covered " + covered + " at " + rate);
    }
  }

  @Test
  void orderOfTestsIsOfNoAccount() {
    int[] days = {365, 20, 730, 400};
    boolean[] failed = {false, true, false, true};
    int[] turned = {400, 730, 20, 365};
    boolean[] turnedFailed = {true, false, true, false};
    assertEquals(
        HiddenFailureRate.exact(HiddenFailures.of(days, failed), 0.95),
        HiddenFailureRate.exact(HiddenFailures.of(turned, turnedFailed), 0.95));
  }

  private static HiddenFailures equal(int days, int tests, int failures) {
    int[] all = new int[tests];
    Arrays.fill(all, days);
    return firstFail(all, failures);
  }

  private static HiddenFailures firstFail(int[] days, int failures) {
    return new HiddenFailures(
        Arrays.copyOfRange(days, failures, days.length), Arrays.copyOf(days, failures));
  }

  private static double logLikelihood(HiddenFailures unit, double rate) {
    double sum = 0;
    for (int days : unit.passedDays()) {
      sum -= rate * days;
    }
    for (int days : unit.failedDays()) {
      sum += Math.log(-Math.expm1(-rate * days));
    }
    return sum;
  }

  /** P(at most this many failures), by adding up every pattern of outcomes. */
  private static double atMost(int[] days, double rate, int most) {
    double sum = 0;
    for (int pattern = 0; pattern < 1 << days.length; pattern++) {
      if (Integer.bitCount(pattern) <= most) {
        double probability = 1;
        for (int i = 0; i < days.length; i++) {
          double pass = Math.exp(-rate * days[i]);
          probability *= (pattern >> i & 1) == 1 ? 1 - pass : pass;
        }
        sum += probability;
      }
    }
    return sum;
  }
}
