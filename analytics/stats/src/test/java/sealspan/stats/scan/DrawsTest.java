package sealspan.stats.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;

class DrawsTest {
  /**
   * The published sequence of SplitMix64 from seed 1234567 begins with these numbers (test vector
   * that ships with many implementations, from memory); here it is read by counter.
   */
  @Test
  void countersReadTheSequenceOfSplitMix64() throws Exception {
    var constructor = CounterRandom.class.getDeclaredConstructor(long.class);
    constructor.setAccessible(true);
    CounterRandom random = constructor.newInstance(1_234_567L);
    assertEquals(6_457_827_717_110_365_317L, random.bits(0));
    assertEquals(3_203_168_211_198_807_973L, random.bits(1));
  }

  @Test
  void streamsDifferAndFillTheirRange() {
    assertNotEquals(CounterRandom.of(1, 2).bits(3), CounterRandom.of(2, 1).bits(3));
    assertEquals(CounterRandom.of(1, 2).bits(3), CounterRandom.of(1, 2).bits(3));
    int[] tenths = new int[10];
    for (int stream = 0; stream < 1_000; stream++) {
      CounterRandom random = CounterRandom.of(77, stream);
      for (int i = 0; i < 100; i++) {
        tenths[(int) (10 * random.uniform(i))]++;
      }
    }
    double square = 0;
    for (int t : tenths) {
      square += (t - 10_000.0) * (t - 10_000.0) / 10_000;
    }
    // Chi squared with 9 degrees of freedom exceeds 27.88 with probability .001 (from memory).
    assertTrue(square < 27.88, "chi squared " + square);
  }

  /** Frequencies of all subsets of six trials against the conditional law, worked out in full. */
  @Test
  void drawsSubsetsByTheConditionalLaw() {
    double[] p = {.1, .5, .3, .8, .05, .4};
    for (int successes = 0; successes <= 6; successes++) {
      double[] law = new double[64];
      double all = 0;
      for (int set = 0; set < 64; set++) {
        if (Integer.bitCount(set) == successes) {
          law[set] = 1;
          for (int i = 0; i < 6; i++) {
            law[set] *= (set >> i & 1) == 1 ? p[i] : 1 - p[i];
          }
          all += law[set];
        }
      }
      ConditionalBernoulli draws = new ConditionalBernoulli(p, successes);
      int n = 40_000;
      int[] seen = new int[64];
      int[] into = new int[successes];
      for (int r = 0; r < n; r++) {
        draws.draw(CounterRandom.of(5, r), 0, into, 0);
        int set = 0;
        for (int i : into) {
          set |= 1 << i;
        }
        assertEquals(successes, Integer.bitCount(set));
        seen[set]++;
      }
      for (int set = 0; set < 64; set++) {
        double share = law[set] / all;
        assertEquals(share, seen[set] / (double) n, 4.5 * Math.sqrt(share * (1 - share) / n));
      }
    }
  }

  /** Shares of inclusion of many trials against a recursion over the number of successes. */
  @Test
  void drawsManyTrialsAsOftenAsTheyShould() {
    int n = 400;
    int successes = 37;
    double[] p = new double[n];
    Random random = new Random(3);
    for (int i = 0; i < n; i++) {
      p[i] = 0.01 + 0.2 * random.nextDouble();
    }
    ConditionalBernoulli draws = new ConditionalBernoulli(p, successes);
    int[] into = new int[successes];
    int[] seen = new int[n];
    int replicates = 5_000;
    for (int r = 0; r < replicates; r++) {
      draws.draw(CounterRandom.of(9, r), 0, into, 0);
      for (int i : into) {
        seen[i]++;
      }
    }
    double square = 0;
    for (int i = 0; i < n; i++) {
      double share = inclusion(p, i, successes);
      double variance = replicates * share * (1 - share);
      square += Math.pow(seen[i] - replicates * share, 2) / variance;
    }
    // About chi squared with n - 1 degrees of freedom: mean 399, standard deviation 28.2.
    assertTrue(Math.abs(square - (n - 1)) < 4 * Math.sqrt(2.0 * (n - 1)), "sum " + square);
  }

  private static double inclusion(double[] p, int one, int successes) {
    double[] others = new double[successes + 1];
    others[0] = 1;
    for (int i = 0; i < p.length; i++) {
      if (i != one) {
        for (int k = successes; k >= 0; k--) {
          others[k] = others[k] * (1 - p[i]) + (k > 0 ? others[k - 1] * p[i] : 0);
        }
      }
    }
    double with = p[one] * others[successes - 1];
    return with / (with + (1 - p[one]) * others[successes]);
  }

  @Test
  void casesOfAPopulationFallInProportion() {
    CaseGrid grid = CaseGrid.ofPopulation(new int[] {10, 0, 20}, new double[] {1, 0, 3});
    PopulationDraws draws = new PopulationDraws(grid, 4);
    int[] cells = new int[30];
    int[] seen = new int[3];
    for (int r = 0; r < 1_000; r++) {
      draws.draw(r, cells);
      for (int cell : cells) {
        seen[cell]++;
      }
    }
    assertEquals(0, seen[1]);
    assertEquals(7_500, seen[0], 4 * Math.sqrt(30_000 * .25 * .75));
  }

  /** Tail from methods: location 6.765114, scale .989881 give .005037 at 12 (checked in R). */
  @Test
  void theGumbelTailIsThatOfTheReference() {
    assertEquals(0.005037116, new Gumbel(6.765114, 0.9898813).tail(12), 1e-8);
  }

  /** No grid of parameters about the fit has a larger likelihood. */
  @Test
  void theGumbelFitIsTheMostLikely() {
    double[] sample = new double[400];
    CounterRandom random = CounterRandom.of(8, 0);
    for (int i = 0; i < sample.length; i++) {
      sample[i] = 7 - 1.3 * Math.log(-Math.log(random.uniform(i)));
    }
    Gumbel fit = Gumbel.of(sample).orThrow();
    assertEquals(7, fit.location(), 0.25);
    assertEquals(1.3, fit.scale(), 0.2);
    double best = likelihood(sample, fit);
    for (double dl = -0.01; dl <= 0.011; dl += 0.01) {
      for (double ds = -0.01; ds <= 0.011; ds += 0.01) {
        Gumbel other = new Gumbel(fit.location() + dl, fit.scale() + ds);
        assertTrue(likelihood(sample, other) <= best + 1e-9);
      }
    }
    double[] same = new double[50];
    Arrays.fill(same, 3);
    assertTrue(Gumbel.of(same) instanceof Estimate.NotIdentified<Gumbel>);
    assertTrue(Gumbel.of(new double[5]) instanceof Estimate.NotIdentified<Gumbel>);
  }

  private static double likelihood(double[] sample, Gumbel g) {
    double sum = 0;
    for (double x : sample) {
      double z = (x - g.location()) / g.scale();
      sum -= Math.log(g.scale()) + z + Math.exp(-z);
    }
    return sum;
  }
}
