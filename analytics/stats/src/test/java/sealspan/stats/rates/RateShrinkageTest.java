package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;

class RateShrinkageTest {
  private static final Reference EXPECTED = Reference.read("02_gamma_poisson/expected.csv");

  /** Gaver and O'Muircheartaigh 1987, pumps; marginal maximum likelihood in R 4.2.2. */
  @Test
  void countedPriorAgreesWithR() {
    PriorFit fit = counted("02_gamma_poisson/input.csv").orThrow();
    assertEquals(EXPECTED.value("ml_alpha"), fit.prior().shape(), 1e-7);
    assertEquals(EXPECTED.value("ml_beta"), fit.prior().exposureDays(), 1e-7);
    assertEquals(EXPECTED.value("ml_loglik"), fit.logLikelihood(), 1e-9);
    assertEquals(EXPECTED.value("se_log_alpha"), fit.standardErrorLogShape(), 1e-6);
    assertEquals(EXPECTED.value("se_log_beta"), fit.standardErrorLogExposure(), 1e-6);
    List<Map<String, String>> pumps = Reference.read("02_gamma_poisson/input.csv").rows();
    for (int i = 0; i < pumps.size(); i++) {
      GammaPosterior posterior =
          GammaPosterior.of(
              fit.prior(),
              Long.parseLong(pumps.get(i).get("failures")),
              Double.parseDouble(pumps.get(i).get("exposure")));
      assertEquals(EXPECTED.value("post_mean_" + (i + 1)), posterior.meanPerDay(), 1e-7);
      assertEquals(EXPECTED.value("post_q975_" + (i + 1)), posterior.interval(0.95).upper(), 1e-6);
    }
  }

  /** Invented counts of ten units; prior, log-likelihood and posteriors computed with R 4.2.2. */
  @Test
  void countedPosteriorsAgreeWithR() {
    long[] events = {0, 1, 3, 0, 2, 7, 1, 0, 4, 2};
    double[] exposure = {5, 8, 6, 3, 10, 7, 4, 9, 6, 8};
    double[] above = {
      0.02015222,
      0.02439911,
      0.27259788,
      0.04877686,
      0.03677573,
      0.79194512,
      0.11041444,
      0.00327789,
      0.43658399,
      0.07290199
    };
    PriorFit fit = RateShrinkage.fitCounted(events, exposure).orThrow();
    assertEquals(1.653677, fit.prior().shape(), 5e-6);
    assertEquals(5.3979156, fit.prior().exposureDays(), 2e-5);
    assertEquals(-18.55426479, fit.logLikelihood(), 1e-8);
    for (int i = 0; i < events.length; i++) {
      GammaPosterior posterior = GammaPosterior.of(fit.prior(), events[i], exposure[i]);
      assertEquals(above[i], posterior.probabilityAbove(0.5), 2e-6);
    }
  }

  /** R 4.2.2, 60 units of which 31 without an event. */
  @Test
  void countedPriorWithManyZerosAgreesWithR() {
    PriorFit fit = counted("02_gamma_poisson/input_zeros.csv").orThrow();
    assertEquals(EXPECTED.value("zeros_ml_alpha"), fit.prior().shape(), 1e-6);
    assertEquals(EXPECTED.value("zeros_ml_beta"), fit.prior().exposureDays(), 1e-5);
    assertEquals(EXPECTED.value("zeros_ml_loglik"), fit.logLikelihood(), 1e-9);
  }

  /**
   * Hidden failures become counted ones when exposures are short: the same pumps, each exposure cut
   * into many short intervals. Expected values from R, case 02; the cutting costs a little
   * accuracy.
   */
  @Test
  void hiddenPriorApproachesTheCountedPriorOfR() {
    List<HiddenFailures> units = new ArrayList<>();
    for (Map<String, String> row : Reference.read("02_gamma_poisson/input.csv").rows()) {
      int failures = Integer.parseInt(row.get("failures"));
      // thousands of hours, in days of a thousandth of that
      int steps = (int) Math.round(1e6 * Double.parseDouble(row.get("exposure")));
      int[] failed = new int[failures];
      Arrays.fill(failed, 1);
      units.add(new HiddenFailures(new int[] {steps - failures}, failed));
    }
    PriorFit fit = RateShrinkage.fitHidden(units).orThrow();
    assertEquals(EXPECTED.value("ml_alpha"), fit.prior().shape(), 1e-4);
    assertEquals(EXPECTED.value("ml_beta"), fit.prior().exposureDays() / 1e6, 1e-4);
  }

  /** Independent: the marginal likelihood by signed gamma integrals, searched around the fit. */
  @Test
  void hiddenPriorMaximisesTheMarginalLikelihood() {
    List<HiddenFailures> units = fleet(300, 1.4, 2200, 3, 17);
    PriorFit fit = RateShrinkage.fitHidden(units).orThrow();
    double best = slowLogLikelihood(fit.prior(), units);
    assertEquals(best, fit.logLikelihood(), 1e-6);
    for (double turn = 0; turn < 2 * Math.PI; turn += 0.2) {
      for (double radius : new double[] {1e-3, 0.05, 0.5}) {
        GammaPrior other =
            new GammaPrior(
                fit.prior().shape() * Math.exp(radius * Math.cos(turn)),
                fit.prior().exposureDays() * Math.exp(radius * Math.sin(turn)));
        assertTrue(slowLogLikelihood(other, units) < best + 1e-8);
      }
    }
  }

  /** Independent: curvature of the slow likelihood by differences gives the standard errors. */
  @Test
  void standardErrorsMatchTheCurvature() {
    List<HiddenFailures> units = fleet(300, 1.4, 2200, 3, 18);
    PriorFit fit = RateShrinkage.fitHidden(units).orThrow();
    double h = 1e-3;
    double[][] at = new double[3][3];
    for (int i = -1; i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        at[i + 1][j + 1] =
            slowLogLikelihood(
                new GammaPrior(
                    fit.prior().shape() * Math.exp(i * h),
                    fit.prior().exposureDays() * Math.exp(j * h)),
                units);
      }
    }
    double xx = (at[2][1] - 2 * at[1][1] + at[0][1]) / (h * h);
    double yy = (at[1][2] - 2 * at[1][1] + at[1][0]) / (h * h);
    double xy = (at[2][2] - at[2][0] - at[0][2] + at[0][0]) / (4 * h * h);
    double determinant = xx * yy - xy * xy;
    assertEquals(Math.sqrt(-yy / determinant), fit.standardErrorLogShape(), 2e-3);
    assertEquals(Math.sqrt(-xx / determinant), fit.standardErrorLogExposure(), 2e-3);
  }

  /** Simulated with a known prior: the fit lies within four standard errors of it. */
  @Test
  void findsThePriorOfASimulatedFleet() {
    List<HiddenFailures> units = fleet(20_000, 1.5, 3000, 100, 5);
    PriorFit fit = RateShrinkage.fitHidden(units).orThrow();
    assertEquals(Math.log(1.5), Math.log(fit.prior().shape()), 4 * fit.standardErrorLogShape());
    assertEquals(
        Math.log(3000), Math.log(fit.prior().exposureDays()), 4 * fit.standardErrorLogExposure());
    assertTrue(fit.standardErrorLogShape() < 0.1);
  }

  @Test
  void orderOfUnitsIsOfNoAccount() {
    List<HiddenFailures> units = fleet(500, 1, 2000, 100, 9);
    List<HiddenFailures> shuffled = new ArrayList<>(units);
    Collections.shuffle(shuffled, new Random(3));
    assertEquals(RateShrinkage.fitHidden(units), RateShrinkage.fitHidden(shuffled));
  }

  /** Case 02: units that differ less than chance have no finite shape; no event, no prior. */
  @Test
  void saysWhyThereIsNoPrior() {
    assertBecause(
        "no more than chance",
        RateShrinkage.fitCounted(new long[] {2, 2, 2, 2, 2}, new double[] {10, 10, 10, 10, 10}));
    assertBecause(
        "none of the 4 units",
        RateShrinkage.fitCounted(new long[] {0, 0, 0, 0}, new double[] {10, 20, 5, 8}));
    assertBecause("none of the 0 units", RateShrinkage.fitHidden(List.of()));
    assertBecause(
        "none of the 0 units",
        RateShrinkage.fitHidden(List.of(new HiddenFailures(new int[0], new int[0]))));
    HiddenFailures allFailed = new HiddenFailures(new int[0], new int[] {365, 365});
    assertBecause("only 1 units", RateShrinkage.fitHidden(List.of(allFailed)));
    assertBecause("every test failed", RateShrinkage.fitHidden(Collections.nCopies(9, allFailed)));
    HiddenFailures mixed = new HiddenFailures(new int[] {365, 365}, new int[] {365});
    assertBecause(
        "only 4 failures",
        RateShrinkage.fitHidden(
            List.of(mixed, mixed, mixed, mixed, new HiddenFailures(new int[] {9}, new int[0]))));
    assertBecause("no more than chance", RateShrinkage.fitHidden(Collections.nCopies(50, mixed)));
  }

  /** Small fleets of any kind: a reason, or a finite prior; never an exception. */
  @Property(tries = 300, seed = "7")
  void smallFleetsNeverBreakIt(
      @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(max = 12) int count) {
    Random random = new Random(seed);
    List<HiddenFailures> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int[] passed = new int[random.nextInt(4)];
      int[] failed = new int[random.nextInt(1 + random.nextInt(25))];
      Arrays.setAll(passed, k -> 1 + random.nextInt(1 << random.nextInt(20)));
      Arrays.setAll(failed, k -> 1 + random.nextInt(1 << random.nextInt(20)));
      units.add(new HiddenFailures(passed, failed));
    }
    if (RateShrinkage.fitHidden(units) instanceof Estimate.Identified<PriorFit> identified) {
      PriorFit fit = identified.value();
      assertTrue(Double.isFinite(fit.logLikelihood()) && fit.standardErrorLogShape() > 0);
      for (HiddenFailures unit : units) {
        assertTrue(RatePosterior.of(fit.prior(), unit).meanPerDay() > 0);
      }
    }
    for (HiddenFailures unit : units) {
      if (HiddenFailureRate.exact(unit, 0.95)
          instanceof Estimate.Identified<RateEstimate> identified) {
        assertTrue(identified.value().perDay() >= 0);
        assertTrue(
            HiddenFailureRate.likelihoodRatioInterval(unit, 0.95)
                .contains(identified.value().perDay()));
      }
    }
  }

  private static Estimate<PriorFit> counted(String path) {
    List<Map<String, String>> rows = Reference.read(path).rows();
    return RateShrinkage.fitCounted(
        rows.stream().mapToLong(row -> Long.parseLong(row.get("failures"))).toArray(),
        rows.stream().mapToDouble(row -> Double.parseDouble(row.get("exposure"))).toArray());
  }

  private static void assertBecause(String words, Estimate<PriorFit> estimate) {
    Estimate.NotIdentified<?> reason = assertInstanceOf(Estimate.NotIdentified.class, estimate);
    assertTrue(reason.because().contains(words), reason.because());
  }

  private static double slowLogLikelihood(GammaPrior prior, List<HiddenFailures> units) {
    double sum = 0;
    for (HiddenFailures unit : units) {
      sum += new ByInclusion(prior, unit).logMarginal();
    }
    return sum;
  }

  /** Invented: about yearly tests, 1 to 14 of them, at most so many failures. */
  static List<HiddenFailures> fleet(
      int units, double shape, double exposure, int mostFailures, long seed) {
    Random random = new Random(seed);
    List<HiddenFailures> fleet = new ArrayList<>();
    while (fleet.size() < units) {
      double rate =
          new org.hipparchus.distribution.continuous.GammaDistribution(shape, 1 / exposure)
              .inverseCumulativeProbability(random.nextDouble());
      int tests = 1 + random.nextInt(14);
      int[] days = new int[tests];
      boolean[] failed = new boolean[tests];
      int failures = 0;
      for (int k = 0; k < tests; k++) {
        days[k] = 335 + random.nextInt(61);
        failed[k] = random.nextDouble() < 1 - Math.exp(-rate * days[k]);
        failures += failed[k] ? 1 : 0;
      }
      if (failures <= mostFailures) {
        fleet.add(HiddenFailures.of(days, failed));
      }
    }
    return fleet;
  }
}
