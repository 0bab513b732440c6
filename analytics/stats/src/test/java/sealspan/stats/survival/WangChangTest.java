package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;

class WangChangTest {

  /**
   * By hand: unit a has gaps 2 and 4 and an open one, unit b has 3 and an open one, unit c is open
   * at 5. Weights 1/2, 1/2, 1, 1. Day 2: .5 of 3; day 3: 1 of 2.5; day 4: .5 of 1.5.
   */
  @Test
  void workedByHand() {
    WangChang estimate =
        estimate(
            List.of(
                new UnitGaps(new int[] {4, 2}, 9),
                new UnitGaps(new int[] {3}, 1),
                new UnitGaps(new int[0], 5)));
    assertArrayEquals(new int[] {2, 3, 4}, estimate.curve().days());
    assertArrayEquals(new double[] {3, 2.5, 1.5}, estimate.curve().atRisk(), 1e-15);
    assertArrayEquals(new double[] {0.5, 1, 0.5}, estimate.curve().ended(), 1e-15);
    assertArrayEquals(new double[] {5 / 6.0, 0.5, 1 / 3.0}, estimate.curve().survival(), 1e-15);
    assertEquals(3, estimate.units());
    assertEquals(4, estimate.gaps());
    assertEquals(3, estimate.completeGaps());
  }

  /** With one gap per unit the curve and its variance are Kaplan and Meier's, with Greenwood. */
  @Property(tries = 100, seed = "7")
  void oneGapPerUnitIsKaplanMeier(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<UnitGaps> units = new ArrayList<>();
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      int days = 1 + random.nextInt(20);
      boolean ended = random.nextInt(3) > 0;
      units.add(ended ? new UnitGaps(new int[] {days}, 4) : new UnitGaps(new int[0], days));
      lives.add(ended ? Lifetime.ended(0, days) : Lifetime.goingOn(0, days));
    }
    WangChang estimate = estimate(units);
    KaplanMeier km = KaplanMeier.of(lives).orThrow();
    assertArrayEquals(km.curve().survival(), estimate.curve().survival(), 1e-12);
    assertArrayEquals(km.curve().variance(), estimate.curve().variance(), 1e-12);
    PointEstimate own = estimate.restrictedMean(10, 0.95).orThrow();
    PointEstimate other = km.restrictedMean(10, 0.95).orThrow();
    assertEquals(other.value(), own.value(), 1e-10);
    assertEquals(other.standardError(), own.standardError(), 1e-10);
  }

  /**
   * Independent: units weighted 1 +- h in a slow version of the estimator; the squared derivatives
   * sum to the variance (infinitesimal jackknife, Jaeckel 1972).
   */
  @Property(tries = 30, seed = "7")
  void varianceIsThatOfTheJackknife(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<UnitGaps> units = invented(new Random(seed), 12);
    WangChang estimate = estimate(units);
    double h = 1e-5;
    for (int day : new int[] {3, 6, 9}) {
      double[] ones = ones(units.size());
      double share = slow(units, ones, day, false);
      assertEquals(share, estimate.curve().at(day, 0.95).orThrow().value(), 1e-12);
      double variance = 0;
      double meanVariance = 0;
      for (int i = 0; i < units.size(); i++) {
        double[] more = ones(units.size());
        double[] less = ones(units.size());
        more[i] += h;
        less[i] -= h;
        variance +=
            square((slow(units, more, day, false) - slow(units, less, day, false)) / (2 * h));
        meanVariance +=
            square((slow(units, more, day, true) - slow(units, less, day, true)) / (2 * h));
      }
      if (share > 1e-9) {
        assertEquals(
            variance, square(estimate.curve().at(day, 0.95).orThrow().standardError()), 1e-8);
      }
      PointEstimate mean = estimate.restrictedMean(day, 0.95).orThrow();
      assertEquals(slow(units, ones, day, true), mean.value(), 1e-10);
      assertEquals(meanVariance, square(mean.standardError()), 1e-7);
    }
  }

  @Property(tries = 30, seed = "7")
  void orderOfUnitsIsOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<UnitGaps> units = invented(new Random(seed), 40);
    List<UnitGaps> shuffled = new ArrayList<>(units);
    Collections.shuffle(shuffled, new Random(seed + 1L));
    assertArrayEquals(estimate(units).curve().survival(), estimate(shuffled).curve().survival());
    assertArrayEquals(estimate(units).curve().variance(), estimate(shuffled).curve().variance());
  }

  /**
   * Gaps of shape 2 and scale 4 years, rates of units gamma with variance .5, 12 years of watching:
   * the truth is (1 + .5 (6/4)^2)^-2 = .221; pooled gaps say about .17. One large simulated fleet.
   */
  @Test
  void isTrueWherePoolingIsNot() {
    List<UnitGaps> units = frail(20_000, 41);
    double truth = Math.pow(1 + 0.5 * 2.25, -2);
    PointEstimate share = estimate(units).curve().at(6 * 365, 0.95).orThrow();
    assertEquals(truth, share.value(), 3.3 * share.standardError());
    assertTrue(share.standardError() < 0.004);
    List<Lifetime> pooled = new ArrayList<>();
    for (UnitGaps unit : units) {
      for (int days : unit.completeDays()) {
        pooled.add(Lifetime.ended(0, days));
      }
      pooled.add(Lifetime.goingOn(0, unit.openDays()));
    }
    assertEquals(
        0.168, KaplanMeier.of(pooled).orThrow().curve().at(6 * 365, 0.95).orThrow().value(), 0.01);
  }

  /**
   * 95 % intervals of 100 units hold the truth: seeds fixed beforehand, fails only if a binomial
   * test rejects .93 at p &lt; .001 (1000 x .93 - 3.1 sd = 905).
   */
  @Test
  void intervalCoversTheTruth() {
    double truth = Math.pow(1 + 0.5 * 2.25, -2);
    int held = 0;
    for (int run = 0; run < 1000; run++) {
      PointEstimate share = estimate(frail(100, 5000 + run)).curve().at(6 * 365, 0.95).orThrow();
      held += share.interval().contains(truth) ? 1 : 0;
    }
    assertTrue(held >= 905, "held " + held);
  }

  @Test
  void hardInputs() {
    assertInstanceOf(Estimate.NotIdentified.class, WangChang.of(List.of()));
    assertInstanceOf(
        Estimate.NotIdentified.class, WangChang.of(List.of(new UnitGaps(new int[0], 0))));
    WangChang open = estimate(List.of(new UnitGaps(new int[0], 7), new UnitGaps(new int[0], 9)));
    assertEquals(1, open.curve().at(9, 0.95).orThrow().value());
    assertInstanceOf(Estimate.NotIdentified.class, open.curve().median(0.95));
    assertEquals(9, open.restrictedMean(9, 0.95).orThrow().value());
    WangChang atOnce = estimate(Collections.nCopies(7, new UnitGaps(new int[] {8, 8, 8}, 3)));
    assertEquals(0, atOnce.curve().at(8, 0.95).orThrow().value());
    WangChang wide = estimate(List.of(new UnitGaps(new int[] {1, 1_000_000}, 3)));
    assertEquals(500_000.5, wide.restrictedMean(1_000_000, 0.95).orThrow().value(), 1e-6);
    assertThrows(IllegalArgumentException.class, () -> new UnitGaps(new int[] {0}, 3));
  }

  private static WangChang estimate(List<UnitGaps> units) {
    return WangChang.of(units).orThrow();
  }

  private static double square(double x) {
    return x * x;
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    java.util.Arrays.fill(ones, 1);
    return ones;
  }

  private static List<UnitGaps> frail(int count, long seed) {
    Random random = new Random(seed);
    GammaDistribution frailty = new GammaDistribution(2, 0.5);
    List<UnitGaps> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double z = frailty.inverseCumulativeProbability(random.nextDouble());
      List<Integer> complete = new ArrayList<>();
      double left = 12 * 365;
      while (true) {
        double gap = 4 * 365 * Math.sqrt(-Math.log(1 - random.nextDouble()) / z);
        if (gap >= left) {
          break;
        }
        left -= gap;
        complete.add((int) Math.ceil(gap));
      }
      units.add(new UnitGaps(complete.stream().mapToInt(Integer::intValue).toArray(), (int) left));
    }
    return units;
  }

  private static List<UnitGaps> invented(Random random, int count) {
    List<UnitGaps> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int[] complete = new int[random.nextInt(4)];
      for (int k = 0; k < complete.length; k++) {
        complete[k] = 1 + random.nextInt(12);
      }
      units.add(new UnitGaps(complete, 9 + random.nextInt(6)));
    }
    return units;
  }

  /** The estimator written out by its definition; the curve on a day, or the area up to it. */
  private static double slow(List<UnitGaps> units, double[] weights, int day, boolean area) {
    double share = 1;
    double sum = 0;
    for (int t = 1; t <= day; t++) {
      sum += share;
      double atRisk = 0;
      double ended = 0;
      for (int i = 0; i < units.size(); i++) {
        int[] complete = units.get(i).completeDays();
        if (complete.length == 0) {
          atRisk += units.get(i).openDays() >= t ? weights[i] : 0;
        }
        for (int gap : complete) {
          atRisk += gap >= t ? weights[i] / complete.length : 0;
          ended += gap == t ? weights[i] / complete.length : 0;
        }
      }
      share *= atRisk > 0 ? 1 - ended / atRisk : 1;
    }
    return area ? sum : share;
  }
}
