package sealspan.stats.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;
import sealspan.stats.Interval;

class FleetRanksTest {
  private static final RateLattice FINE = RateLattice.between(1e-8, 1, 1200);

  /**
   * Invented counts of ten units; the ranks were computed with R 4.2.2 from the closed form for
   * pairs of gamma posteriors, which is also written out here.
   */
  @Test
  void expectedRanksOfGammaPosteriorsAgreeWithThePairs() {
    double[] events = {0, 1, 3, 0, 2, 7, 1, 0, 4, 2};
    double[] exposure = {5, 8, 6, 3, 10, 7, 4, 9, 6, 8};
    double[] expected = {
      7.57473, 6.77361, 3.75299, 6.94095, 6.02125, 1.64116, 5.49033, 8.41228, 2.91443, 5.47828
    };
    double[] shape = new double[10];
    double[] rate = new double[10];
    List<GridPosterior> posteriors = new ArrayList<>();
    RateLattice lattice = RateLattice.between(1e-5, 20, 3000);
    for (int i = 0; i < 10; i++) {
      shape[i] = 1.653677 + events[i];
      rate[i] = 5.3979156 + exposure[i];
      posteriors.add(
          new GridPosterior(
              lattice,
              GridPrior.of(new GammaPrior(shape[i], rate[i]), lattice).alternatives().get(0)));
    }
    FleetRanks ranks = ranks(lattice, posteriors);
    for (int i = 0; i < 10; i++) {
      double pairs = 1;
      for (int j = 0; j < 10; j++) {
        double share = rate[i] / (rate[i] + rate[j]);
        pairs += i == j ? 0 : Beta.regularizedBeta(share, shape[i], shape[j]);
      }
      assertEquals(expected[i], ranks.expected(posteriors.get(i)), 2e-4);
      assertEquals(pairs, ranks.expected(posteriors.get(i)), 2e-4);
    }
    // P(second above first), closed form .6136818
    FleetRanks two = ranks(lattice, posteriors.subList(0, 2));
    assertEquals(1.6136818, two.expected(posteriors.get(0)), 1e-5);
  }

  /** Independent: quadrature in the rate itself, and no closed form. */
  @Test
  void aPosteriorAgreesWithQuadrature() {
    GammaPrior prior = new GammaPrior(1.3, 2500);
    GridScores scores = new GridScores(GridPrior.of(prior, FINE));
    for (HiddenFailures unit : RateShrinkageTest.fleet(30, 1.3, 2500, 100, 8)) {
      GridPosterior posterior = scores.posterior(unit, 0);
      RatePosterior slow = RatePosterior.of(prior, unit);
      assertEquals(slow.meanPerDay(), posterior.meanPerDay(), 1e-4 * slow.meanPerDay());
      for (double c : new double[] {.3, 1, 2, 4}) {
        double limit = c * slow.meanPerDay();
        assertEquals(slow.probabilityAbove(limit), posterior.probabilityAbove(limit), 1e-4);
      }
      Interval interval = posterior.interval(.95);
      assertEquals(.975, slow.probabilityAbove(interval.lower()), 1e-4);
      assertEquals(.025, slow.probabilityAbove(interval.upper()), 1e-4);
    }
  }

  /** Twice the rate is the same as twice every exposure and half the rate. */
  @Test
  void aShiftIsAMultiplierOfExposure() {
    RateLattice lattice = RateLattice.between(1e-6, 1e-1, 961);
    GridScores scores = new GridScores(GridPrior.of(new GammaPrior(2, 1000), lattice));
    int shift = lattice.shift(2);
    double multiplier = Math.exp(shift * lattice.step());
    assertEquals(2, multiplier, .01);
    GridPosterior shifted =
        scores.posterior(new HiddenFailures(new int[] {500, 700}, new int[] {400}), shift);
    GridPrior other = GridPrior.of(new GammaPrior(2, 1000 / multiplier), lattice);
    GridPosterior direct =
        new GridScores(other)
            .posterior(new HiddenFailures(new int[] {500, 700}, new int[] {400}), 0);
    assertEquals(direct.meanPerDay(), shifted.meanPerDay(), 1e-3 * direct.meanPerDay());
  }

  /** Independent: rates drawn from the posteriors and ranked, 40,000 times. */
  @Test
  void worstAndIntervalsAgreeWithDraws() {
    for (int n : new int[] {3, 12, 80}) {
      List<GridPosterior> posteriors = new ArrayList<>();
      GridScores scores = new GridScores(GridPrior.of(new GammaPrior(1.2, 1500), FINE));
      for (HiddenFailures unit : RateShrinkageTest.fleet(n, 1.2, 1500, 100, 4)) {
        posteriors.add(scores.posterior(unit, 0));
      }
      FleetRanks ranks = ranks(scores.lattice(), posteriors);
      int runs = 40_000;
      int[][] drawn = drawnRanks(posteriors, runs, new Random(6));
      for (int i = 0; i < n; i++) {
        int[] mine = drawn[i];
        for (int k : new int[] {1, 2, 5, 10}) {
          double share = Arrays.stream(mine).filter(rank -> rank <= k).count() / (double) runs;
          double got = ranks.probabilityInWorst(k, posteriors.get(i));
          assertEquals(share, got, n < 10 ? .03 : .015, "n " + n + " k " + k);
        }
        RankInterval interval = ranks.interval(posteriors.get(i), .95);
        double below = Arrays.stream(mine).filter(r -> r < interval.lower()).count();
        double above = Arrays.stream(mine).filter(r -> r > interval.upper()).count();
        assertTrue(below / runs < .04 && above / runs < .04);
        double inside = 1 - (below + above) / runs;
        assertTrue(inside >= .93, "inside " + inside);
        assertEquals(
            Arrays.stream(mine).average().orElseThrow(), ranks.expected(posteriors.get(i)), .6);
      }
    }
  }

  /**
   * Independent: every rank is asked, one after the other, in a fleet small enough to table all.
   */
  @Test
  void anIntervalEndsWhereAskingEveryRankFindsIt() {
    for (int n : new int[] {1, 2, 7, 32}) {
      GridScores scores = new GridScores(GridPrior.of(new GammaPrior(1.2, 1500), FINE));
      List<GridPosterior> posteriors = new ArrayList<>();
      for (HiddenFailures unit : RateShrinkageTest.fleet(n, 1.2, 1500, 100, 4)) {
        posteriors.add(scores.posterior(unit, 0));
      }
      FleetRanks ranks = ranks(scores.lattice(), posteriors);
      for (GridPosterior posterior : posteriors) {
        for (double level : new double[] {.5, .95, .999}) {
          RankInterval interval = ranks.interval(posterior, level);
          assertEquals(reaching(ranks, posterior, (1 - level) / 2), interval.lower());
          assertEquals(reaching(ranks, posterior, (1 + level) / 2), interval.upper());
        }
      }
    }
  }

  private static long reaching(FleetRanks ranks, GridPosterior posterior, double probability) {
    long rank = 1;
    while (ranks.probabilityInWorst(rank, posterior) < probability) {
      rank++;
    }
    return rank;
  }

  /** Independent: the exact distribution of a sum of unequal events. */
  @Test
  void theMatchedBinomialIsCloseToTheExactSum() {
    Random random = new Random(1);
    for (int n : new int[] {1, 2, 9, 200, 3000}) {
      double[] p = new double[n];
      for (int i = 0; i < n; i++) {
        p[i] = Math.pow(random.nextDouble(), 3);
      }
      double[] exact = new double[n + 1];
      exact[0] = 1;
      double mean = 0;
      double squares = 0;
      for (int i = 0; i < n; i++) {
        for (int k = i + 1; k > 0; k--) {
          exact[k] = exact[k] * (1 - p[i]) + exact[k - 1] * p[i];
        }
        exact[0] *= 1 - p[i];
        mean += p[i];
        squares += p[i] * p[i];
      }
      double sum = 0;
      for (int k = 0; k <= n; k++) {
        sum += exact[k];
        assertEquals(
            sum, MatchedBinomial.atMost(k, mean, squares, n), n < 10 ? .04 : .01, n + " " + k);
      }
    }
  }

  @Test
  void aUnitCanBeTakenOutOfTheFleetExactly() {
    GridScores scores = new GridScores(GridPrior.of(new GammaPrior(1, 2000), FINE));
    FleetSums all = new FleetSums(scores.lattice());
    FleetSums without = new FleetSums(scores.lattice());
    List<HiddenFailures> units = RateShrinkageTest.fleet(50, 1, 2000, 100, 21);
    for (int i = units.size() - 1; i >= 0; i--) {
      all.add(scores.posterior(units.get(i), 0));
    }
    for (int i = 1; i < units.size(); i++) {
      without.add(scores.posterior(units.get(i), 0));
    }
    all.remove(scores.posterior(units.get(0), 0));
    assertEquals(without.units(), all.units());
    for (int g = 0; g < scores.lattice().nodes(); g++) {
      assertEquals(without.mass(g), all.mass(g));
      assertEquals(without.square(g), all.square(g));
    }
  }

  /** By hand: running means .01, .03, .1, .15. */
  @Test
  void theListOfClaimsEndsWhereItsExpectedErrorPassesTheBound() {
    double[] wrong = {.3, .05, .01, .24};
    assertEquals(new FalseDiscovery(3, .24, .3 / 3), FalseDiscovery.of(wrong, .1 + 1e-12));
    assertEquals(4, FalseDiscovery.of(wrong, .2).listed());
    assertEquals(new FalseDiscovery(0, -1, 0), FalseDiscovery.of(wrong, .001));
    assertEquals(new FalseDiscovery(0, -1, 0), FalseDiscovery.of(new double[0], .1));
    // Units that are tied stand or fall together.
    assertEquals(1, FalseDiscovery.of(new double[] {.01, .15, .15}, .1).listed());
  }

  private static FleetRanks ranks(RateLattice lattice, List<GridPosterior> posteriors) {
    FleetSums sums = new FleetSums(lattice);
    List<GridPosterior> shuffled = new ArrayList<>(posteriors);
    Collections.shuffle(shuffled, new Random(1));
    shuffled.forEach(sums::add);
    return new FleetRanks(sums);
  }

  private static int[][] drawnRanks(List<GridPosterior> posteriors, int runs, Random random) {
    int n = posteriors.size();
    double[][] upTo = new double[n][];
    for (int i = 0; i < n; i++) {
      long[] whole = posteriors.get(i).wholeMasses();
      upTo[i] = new double[whole.length];
      double sum = 0;
      for (int g = 0; g < whole.length; g++) {
        sum += whole[g] / (double) (1L << 40);
        upTo[i][g] = sum;
      }
    }
    int[][] ranks = new int[n][runs];
    for (int run = 0; run < runs; run++) {
      double[] rate = new double[n];
      for (int i = 0; i < n; i++) {
        int at = Arrays.binarySearch(upTo[i], random.nextDouble());
        // a little noise, so that no two are tied
        rate[i] = (at < 0 ? -at - 1 : at) + random.nextDouble();
      }
      double[] sorted = rate.clone();
      Arrays.sort(sorted);
      for (int i = 0; i < n; i++) {
        ranks[i][run] = n - Arrays.binarySearch(sorted, rate[i]);
      }
    }
    return ranks;
  }

  /** Published: incomplete gamma at (2, 2) = 1 - 3 exp(-2), any table. */
  @Test
  void aGammaPriorKeepsItsMassOnTheLattice() {
    double[] masses = GridPrior.of(new GammaPrior(2, 1), FINE).alternatives().get(0);
    assertEquals(1, Arrays.stream(masses).sum(), 1e-12);
    assertEquals(1 - 3 * Math.exp(-2), Gamma.regularizedGammaP(2, 2), 1e-12);
  }
}
