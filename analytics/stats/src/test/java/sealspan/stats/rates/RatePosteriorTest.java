package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import sealspan.stats.Interval;

class RatePosteriorTest {

  /** Without a failure the posterior is gamma(shape, exposure + passed days): closed form. */
  @Property(tries = 200, seed = "7")
  void withoutFailuresItIsGamma(
      @ForAll @DoubleRange(min = 0.02, max = 300) double shape,
      @ForAll @IntRange(min = 1, max = 1_000_000) int days) {
    GammaPrior prior = new GammaPrior(shape, 2000);
    RatePosterior posterior =
        RatePosterior.of(prior, new HiddenFailures(new int[] {days}, new int[0]));
    GammaPosterior closed = GammaPosterior.of(prior, 0, days);
    assertEquals(closed.meanPerDay(), posterior.meanPerDay(), 4e-8 * closed.meanPerDay());
    for (double p : new double[] {0.025, 0.5, 0.975}) {
      double quantile = posterior.quantile(p);
      if (quantile > 1e-200) {
        assertEquals(p, 1 - closed.probabilityAbove(quantile), 3e-7);
      }
    }
    double limit = closed.meanPerDay();
    assertEquals(closed.probabilityAbove(limit), posterior.probabilityAbove(limit), 3e-7);
  }

  /** Independent: the signed sum of gamma integrals. */
  @Property(tries = 200, seed = "7")
  void agreesWithTheExpansionForAFewFailures(
      @ForAll @DoubleRange(min = 0.3, max = 20) double shape,
      @ForAll @Size(max = 6) List<@IntRange(min = 1, max = 2000) Integer> passed,
      @ForAll @Size(min = 1, max = 3) List<@IntRange(min = 100, max = 2000) Integer> failed) {
    GammaPrior prior = new GammaPrior(shape, 1500);
    HiddenFailures unit = new HiddenFailures(array(passed), array(failed));
    RatePosterior posterior = RatePosterior.of(prior, unit);
    ByInclusion slow = new ByInclusion(prior, unit);
    assertEquals(slow.mean(), posterior.meanPerDay(), 2e-6 * slow.mean());
    for (double c : new double[] {0.3, 1, 2}) {
      double limit = c * slow.mean();
      assertEquals(slow.probabilityAbove(limit), posterior.probabilityAbove(limit), 3e-7);
    }
    Interval interval = posterior.interval(0.95);
    assertEquals(0.975, slow.probabilityAbove(interval.lower()), 3e-7);
    assertEquals(0.025, slow.probabilityAbove(interval.upper()), 3e-7);
  }

  /** By hand: shape 1, exposure 1, one failed test of 1 day: density 2 (exp(-x) - exp(-2x)). */
  @Test
  void workedByHand() {
    RatePosterior posterior =
        RatePosterior.of(new GammaPrior(1, 1), new HiddenFailures(new int[0], new int[] {1}));
    assertEquals(2 * (1 - 0.25), posterior.meanPerDay(), 3e-7);
    double tail = 2 * Math.exp(-2) - Math.exp(-4);
    assertEquals(tail, posterior.probabilityAbove(2), 3e-7);
    assertEquals(2, posterior.quantile(1 - tail), 1e-6);
    assertEquals(1, posterior.probabilityAbove(0));
  }

  @Test
  void withoutTestsItIsThePrior() {
    GammaPrior prior = new GammaPrior(1.6, 1900);
    RatePosterior posterior = RatePosterior.of(prior, new HiddenFailures(new int[0], new int[0]));
    assertEquals(prior.meanPerDay(), posterior.meanPerDay(), 1e-9);
  }

  @Test
  void staysFiniteOnHardUnits() {
    int[] many = new int[400];
    java.util.Arrays.fill(many, 365);
    HiddenFailures[] units = {
      new HiddenFailures(new int[0], many),
      new HiddenFailures(many, many),
      new HiddenFailures(new int[] {1_000_000}, new int[] {1, 1, 1_000_000}),
      new HiddenFailures(new int[0], new int[] {1})
    };
    for (double shape : new double[] {0.01, 1, 1e4}) {
      for (HiddenFailures unit : units) {
        RatePosterior posterior = RatePosterior.of(new GammaPrior(shape, 1000 * shape), unit);
        Interval interval = posterior.interval(0.95);
        assertTrue(posterior.meanPerDay() > 0 && Double.isFinite(posterior.meanPerDay()));
        assertTrue(interval.lower() < interval.upper() && Double.isFinite(interval.upper()));
      }
    }
  }

  /** Published: Gaver and O'Muircheartaigh 1987 pumps; posterior computed in R (qgamma). */
  @Test
  void countedPosteriorAgreesWithR() {
    GammaPosterior posterior =
        GammaPosterior.of(new GammaPrior(0.8222686496886461, 1.2589544433707187), 5, 94.32);
    assertEquals(0.060915801847762054, posterior.meanPerDay(), 1e-15);
    Interval interval = posterior.interval(0.95);
    assertEquals(0.02193324320930384, interval.lower(), 1e-12);
    assertEquals(0.11945755486799199, interval.upper(), 1e-12);
  }

  static int[] array(List<Integer> values) {
    return values.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * Closed forms: E exp(-rate d) of a gamma distribution is (b / (b + d))^a; a failed exposure f
   * takes away the share that would have passed it, so that two such terms stand over two.
   */
  @Test
  void probabilityOfAFailureIsTheClosedForm() {
    GammaPrior prior = new GammaPrior(1.7, 9_000);
    HiddenFailures passed = new HiddenFailures(new int[] {365, 400}, new int[0]);
    HiddenFailures failed = new HiddenFailures(new int[] {365, 400}, new int[] {380});
    for (double days : new double[] {0, 1, 365, 4_000, 1e6}) {
      assertEquals(
          1 - survived(765, days) / survived(765, 0),
          RatePosterior.of(prior, passed).probabilityWithin(days),
          1e-7);
      double with = survived(765, days) - survived(765 + 380, days);
      double without = survived(765, 0) - survived(765 + 380, 0);
      assertEquals(
          1 - with / without, RatePosterior.of(prior, failed).probabilityWithin(days), 1e-7);
    }
  }

  private static double survived(double exposure, double more) {
    return Math.pow(9_000 / (9_000 + exposure + more), 1.7);
  }
}
