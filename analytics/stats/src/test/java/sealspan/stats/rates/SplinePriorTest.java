package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;

class SplinePriorTest {
  private static final RateLattice YEARLY = RateLattice.between(.002 / 365.25, 3 / 365.25, 160);

  /** A natural spline is straight beyond its knots and has no bend at the ends. */
  @Test
  void theBasisIsANaturalSpline() {
    double[][] basis = SplineBasis.columns(501, 5);
    for (double[] column : basis) {
      assertEquals(0, Arrays.stream(column).sum() / 501, 1e-9);
      assertEquals(1, Arrays.stream(column).map(x -> x * x).sum() / 501, 1e-9);
      double largest = 0;
      for (int g = 1; g < 500; g++) {
        largest = Math.max(largest, Math.abs(column[g - 1] - 2 * column[g] + column[g + 1]));
      }
      for (int g : new int[] {1, 499}) {
        double bend = Math.abs(column[g - 1] - 2 * column[g] + column[g + 1]);
        assertTrue(bend <= .02 * largest + 1e-12, "bend at an end");
      }
    }
    double cross = 0;
    for (int g = 0; g < 501; g++) {
      cross += basis[1][g] * basis[4][g];
    }
    assertEquals(0, cross / 501, 1e-9);
  }

  /** Independent: the likelihood written out in doubles, climbed without derivatives. */
  @Test
  void agreesWithASearchWithoutDerivatives() {
    List<HiddenFailures> units = RateShrinkageTest.fleet(250, 1.2, 3000, 100, 31);
    GridPriorFit fit = SplinePrior.fit(YEARLY, units).orThrow();
    double[][] basis = SplineBasis.columns(160, 5);
    MultivariateFunction height =
        theta -> {
          double pull = Arrays.stream(theta).map(x -> x * x / 2).sum();
          return slowLogLikelihood(SplineSurface.masses(basis, theta), units) - pull;
        };
    double[] best = new double[5];
    for (int restart = 0; restart < 6; restart++) {
      best =
          new SimplexOptimizer(new SimpleValueChecker(1e-13, 1e-13))
              .optimize(
                  new MaxEval(4_000),
                  new ObjectiveFunction(height),
                  GoalType.MAXIMIZE,
                  new InitialGuess(best),
                  new NelderMeadSimplex(5, .5))
              .getPoint();
    }
    double[] masses = SplineSurface.masses(basis, best);
    assertEquals(slowLogLikelihood(masses, units), fit.logLikelihood(), 1e-3);
    double difference = 0;
    for (int g = 0; g < 160; g++) {
      difference += Math.abs(masses[g] - fit.prior().alternatives().get(0)[g]);
    }
    assertEquals(0, difference, 1e-2);
  }

  /** Of a tenth of bad units more is found by any shrinkage than by raw rates; seed fixed. */
  @Test
  void findsABadMinorityThatRawRatesMiss() {
    Random random = new Random(2);
    int n = 20_000;
    double[] truth = new double[n];
    List<HiddenFailures> units = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      truth[i] = (random.nextDouble() < .1 ? .45 : .05) * Math.exp(.3 * random.nextGaussian());
      int tests = 1 + random.nextInt(14);
      boolean[] failed = new boolean[tests];
      for (int k = 0; k < tests; k++) {
        failed[k] = random.nextDouble() < 1 - Math.exp(-truth[i]);
      }
      int[] days = new int[tests];
      Arrays.fill(days, 365);
      units.add(HiddenFailures.of(days, failed));
    }
    GridPriorFit fit = SplinePrior.fit(YEARLY, units).orThrow();
    GridScores scores = new GridScores(fit.prior());
    double mean = Arrays.stream(truth).average().orElseThrow();
    assertEquals(mean, fit.prior().meanPerDay() * 365, .03 * mean);
    double[] shrunk = new double[n];
    double[] raw = new double[n];
    double error = 0;
    double rawError = 0;
    for (int i = 0; i < n; i++) {
      shrunk[i] = scores.posterior(units.get(i), 0).meanPerDay() * 365;
      raw[i] = Math.min(3, HiddenFailureRate.maximumLikelihood(units.get(i)) * 365);
      error += Math.pow(shrunk[i] - truth[i], 2) / n;
      rawError += Math.pow(raw[i] - truth[i], 2) / n;
    }
    assertTrue(error < .2 * rawError, error + " against " + rawError);
    assertTrue(worstFound(truth, shrunk, 200) > worstFound(truth, raw, 200));
  }

  static int worstFound(double[] truth, double[] score, int k) {
    Integer[] byTruth = order(truth);
    Integer[] byScore = order(score);
    List<Integer> worst = Arrays.asList(byTruth).subList(0, k);
    return (int) Arrays.asList(byScore).subList(0, k).stream().filter(worst::contains).count();
  }

  private static Integer[] order(double[] values) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(values[b], values[a]));
    return order;
  }

  @Test
  void orderOfUnitsIsOfNoAccount() {
    List<HiddenFailures> units = RateShrinkageTest.fleet(300, 1, 2000, 100, 9);
    List<HiddenFailures> shuffled = new ArrayList<>(units);
    Collections.shuffle(shuffled, new Random(3));
    assertArrayEquals(
        SplinePrior.fit(YEARLY, units).orThrow().prior().alternatives().get(0),
        SplinePrior.fit(YEARLY, shuffled).orThrow().prior().alternatives().get(0));
  }

  /** Few units: ten alternatives, and wider intervals than with the prior taken as known. */
  @Test
  void aFewUnitsLeaveThePriorOpen() {
    List<HiddenFailures> units = RateShrinkageTest.fleet(40, 1, 2000, 100, 9);
    GridPrior open = SplinePrior.fit(YEARLY, units).orThrow().prior();
    assertEquals(10, open.alternatives().size());
    double[] mean = new double[160];
    for (double[] masses : open.alternatives()) {
      assertEquals(1, Arrays.stream(masses).sum(), 1e-12);
      for (int g = 0; g < 160; g++) {
        mean[g] += masses[g] / 10;
      }
    }
    assertEquals(new GridPrior(YEARLY, List.of(mean)).meanPerDay(), open.meanPerDay(), 1e-12);
  }

  /** By definition of the maximum no prior is better; one unit puts all mass at its own rate. */
  @Test
  void theNonparametricPriorIsTheHighest() {
    List<HiddenFailures> units = RateShrinkageTest.fleet(400, 1.2, 3000, 100, 31);
    GridPriorFit spline = SplinePrior.fit(YEARLY, units).orThrow();
    GridPriorFit highest = NonparametricPrior.fit(YEARLY, units, .01).orThrow();
    assertTrue(highest.logLikelihood() > spline.logLikelihood());
    assertTrue(highest.furthestFromTop() < 5);
    double[] masses = highest.prior().alternatives().get(0);
    assertEquals(slowLogLikelihood(masses, units), highest.logLikelihood(), 1e-3);
    HiddenFailures one = new HiddenFailures(new int[] {365, 365}, new int[] {365});
    GridPriorFit single = NonparametricPrior.fit(YEARLY, List.of(one), 1e-6).orThrow();
    assertEquals(
        HiddenFailureRate.maximumLikelihood(one),
        single.prior().meanPerDay(),
        .1 * HiddenFailureRate.maximumLikelihood(one));
  }

  /** Merging with rounding, as for a very large fleet, hardly moves the prior. */
  @Test
  void roundingForManyUnitsHardlyMovesIt() {
    List<HiddenFailures> units = RateShrinkageTest.fleet(3_000, 1, 2000, 100, 5);
    List<UnitGroup> exact = UnitGroup.merged(units);
    List<UnitGroup> rounded = UnitGroup.merged(units, exact.size() / 2);
    assertTrue(rounded.size() <= exact.size() / 2);
    assertEquals(3_000, rounded.stream().mapToLong(UnitGroup::count).sum());
    List<HiddenFailures> coarse = new ArrayList<>();
    for (UnitGroup group : rounded) {
      int[] passed =
          group.passedTotalDays() == 0 ? new int[0] : new int[] {(int) group.passedTotalDays()};
      HiddenFailures unit = new HiddenFailures(passed, group.failedDays());
      coarse.addAll(Collections.nCopies((int) group.count(), unit));
    }
    double mean = SplinePrior.fit(YEARLY, units).orThrow().prior().meanPerDay();
    double other = SplinePrior.fit(YEARLY, coarse).orThrow().prior().meanPerDay();
    assertEquals(mean, other, .01 * mean);
  }

  /** Any small fleet: a reason or proper numbers, never an exception, never NaN. */
  @Property(tries = 200, seed = "7")
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
    Estimate<GridPriorFit> estimate = SplinePrior.fit(YEARLY, units);
    if (units.stream().allMatch(unit -> unit.tests() == 0)) {
      assertInstanceOf(Estimate.NotIdentified.class, estimate);
      return;
    }
    GridPriorFit fit = estimate.orThrow();
    assertTrue(Double.isFinite(fit.logLikelihood()));
    GridScores scores = new GridScores(fit.prior());
    FleetSums sums = new FleetSums(scores.lattice());
    List<GridPosterior> posteriors = new ArrayList<>();
    for (HiddenFailures unit : units) {
      posteriors.add(scores.posterior(unit, random.nextInt(201) - 100));
      sums.add(posteriors.get(posteriors.size() - 1));
    }
    FleetRanks ranks = new FleetRanks(sums);
    double total = 0;
    for (GridPosterior posterior : posteriors) {
      assertTrue(posterior.meanPerDay() > 0 && Double.isFinite(posterior.meanPerDay()));
      assertTrue(posterior.interval(.95).lower() < posterior.interval(.95).upper());
      double worst = ranks.probabilityInWorst(3, posterior);
      assertTrue(worst >= 0 && worst <= 1);
      RankInterval interval = ranks.interval(posterior, .95);
      assertTrue(1 <= interval.lower() && interval.lower() <= interval.upper());
      assertTrue(interval.upper() <= count);
      total += ranks.expected(posterior);
    }
    assertEquals(count * (count + 1) / 2.0, total, 1e-9);
  }

  private static double slowLogLikelihood(double[] masses, List<HiddenFailures> units) {
    double sum = 0;
    for (HiddenFailures unit : units) {
      double marginal = 0;
      for (int g = 0; g < masses.length; g++) {
        double rate = .002 / 365.25 * Math.pow(1500, g / 159.0);
        double likelihood = masses[g];
        for (int days : unit.passedDays()) {
          likelihood *= Math.exp(-rate * days);
        }
        for (int days : unit.failedDays()) {
          likelihood *= 1 - Math.exp(-rate * days);
        }
        marginal += likelihood;
      }
      sum += Math.log(marginal);
    }
    return sum;
  }
}
