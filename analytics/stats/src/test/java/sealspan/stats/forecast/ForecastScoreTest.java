package sealspan.stats.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

class ForecastScoreTest {
  private static final double[] FIVE = {.1, .1, .1, .6, .6};
  private static final boolean[] CAME = {false, true, false, true, true};

  /**
   * By hand. Squared misses .01, .81, .01, .16, .16: mean .23. Shares 1/3 of three and 1 of two,
   * base .6: reliability .6 (.1 - 1/3)^2 + .4 (.4)^2, resolution .6 (4/15)^2 + .4 (.4)^2.
   */
  @Test
  void workedByHand() {
    ForecastScore score = ForecastScore.of(FIVE, CAME).orThrow();
    assertEquals(.23, score.brier(), 1e-15);
    assertEquals(3, score.happened());
    assertEquals(.3, score.meanProbability(), 1e-15);
    assertEquals(
        -(2 * Math.log(.9) + Math.log(.1) + 2 * Math.log(.6)) / 5, score.logScore(), 1e-15);
    // (y-p)(1-2p): -.08, .72, -.08, -.08, -.08; variance 3 x .64 x .09 + 2 x .04 x .24.
    assertEquals(.4 / Math.sqrt(.192), score.spiegelhalterZ(), 1e-12);
    BrierParts parts = BrierParts.murphy(FIVE, CAME).orThrow();
    assertEquals(.6 * 49 / 900 + .4 * .16, parts.reliability(), 1e-15);
    assertEquals(.6 * 16 / 225 + .4 * .16, parts.resolution(), 1e-15);
    assertEquals(.24, parts.uncertainty(), 1e-15);
    assertEquals(.23, parts.brier(), 1e-15);
  }

  /**
   * Finley's tornado forecasts of 1884, yes or no: 28 hits, 72 false alarms, 23 misses, 2680
   * rightly quiet (Murphy 1996, Weather and Forecasting 11:3; from memory). Half the Brier score of
   * a yes or no is the share of wrong ones.
   */
  @Test
  void finleysTornadoes() {
    double[] said = new double[2803];
    boolean[] came = new boolean[2803];
    for (int i = 0; i < 2803; i++) {
      said[i] = i < 100 ? 1 : 0;
      came[i] = i < 28 || i >= 100 && i < 123;
    }
    ForecastScore score = ForecastScore.of(said, came).orThrow();
    assertEquals(95 / 2803.0, score.brier(), 1e-12);
    assertTrue(Double.isInfinite(score.logScore()));
    assertEquals(score.brier(), BrierParts.murphy(said, came).orThrow().brier(), 1e-12);
    // Never a tornado: 51 of 2803 wrong, so the skill is below 0 (Gilbert 1884).
    PointEstimate skill = BrierSkill.of(said, new double[2803], came, .95).orThrow();
    assertEquals(1 - 95 / 51.0, skill.value(), 1e-12);
    assertTrue(skill.interval().upper() < 0);
  }

  /** Independent: the greatest of the least means (min-max formula of isotonic regression). */
  @Property(tries = 100, seed = "4")
  void pooledCurveIsTheMinMaxFormula(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    int n = 1 + random.nextInt(30);
    double[] p = new double[n];
    boolean[] y = new boolean[n];
    for (int i = 0; i < n; i++) {
      p[i] = random.nextInt(12) / 12.0;
      y[i] = random.nextDouble() < .2 + p[i] / 2;
    }
    Reliability curve = Reliability.of(p, y).orThrow();
    double squares = 0;
    int counted = 0;
    for (Reliability.Block block : curve.blocks()) {
      counted += block.n();
      for (double at : p) {
        if (at >= block.lowest() && at <= block.highest()) {
          assertEquals(minMax(p, y, at), block.share(), 1e-12);
        }
      }
      squares += block.n() * block.share() * (1 - block.share());
    }
    assertEquals(n, counted);
    BrierParts parts = BrierParts.corp(p, y).orThrow();
    double brier = ForecastScore.of(p, y).orThrow().brier();
    assertEquals(brier, parts.brier(), 1e-12);
    assertEquals(brier - squares / n, parts.reliability(), 1e-12);
    assertTrue(parts.resolution() >= -1e-12);
    // Pooling takes nothing that distinct probabilities alone would not show.
    assertTrue(parts.resolution() <= BrierParts.murphy(p, y).orThrow().resolution() + 1e-12);
  }

  private static double minMax(double[] p, boolean[] y, double at) {
    double greatest = Double.NEGATIVE_INFINITY;
    for (double from : p) {
      if (from > at) {
        continue;
      }
      double least = Double.POSITIVE_INFINITY;
      for (double to : p) {
        if (to >= at) {
          double hits = 0;
          double cases = 0;
          for (int i = 0; i < p.length; i++) {
            if (p[i] >= from && p[i] <= to) {
              cases++;
              hits += y[i] ? 1 : 0;
            }
          }
          least = Math.min(least, hits / cases);
        }
      }
      greatest = Math.max(greatest, least);
    }
    return greatest;
  }

  @Test
  void bandsHoldRightForecastsAndNotWrongOnes() {
    Random random = new Random(8);
    int n = 2_000;
    double[] right = new double[n];
    double[] wrong = new double[n];
    boolean[] y = new boolean[n];
    for (int i = 0; i < n; i++) {
      right[i] = random.nextInt(20) / 20.0;
      wrong[i] = right[i] / 2;
      y[i] = random.nextDouble() < right[i];
    }
    assertTrue(outside(right, y) <= 0.15);
    assertTrue(outside(wrong, y) >= 0.5);
    Reliability curve = Reliability.of(right, y).orThrow();
    assertEquals(curve.bands(right, 100, .9), curve.bands(right, 100, .9));
    assertTrue(ForecastScore.of(right, y).orThrow().calibrationPValue() > .01);
    assertTrue(ForecastScore.of(wrong, y).orThrow().calibrationPValue() < 1e-6);
  }

  private static double outside(double[] p, boolean[] y) {
    Reliability curve = Reliability.of(p, y).orThrow();
    List<Interval> bands = curve.bands(p, 200, .99);
    double outside = 0;
    for (int i = 0; i < bands.size(); i++) {
      outside += bands.get(i).contains(curve.blocks().get(i).share()) ? 0 : 1;
    }
    return outside / bands.size();
  }

  /** By hand: p = .5 and an event: odds ratios r turn 1 into 2 r / (1 + r). */
  @Test
  void theBetIsWorkedByHandAndFairWhileForecastsAreRight() {
    CalibrationMonitor.Standing one =
        CalibrationMonitor.follow(new double[] {.5}, new boolean[] {true});
    assertEquals((2 / 3.0 + .8 + 1.2 + 4 / 3.0) / 4, one.fortune(), 1e-12);
    assertEquals(1, one.highest(), 1e-12);
    assertEquals(
        Double.POSITIVE_INFINITY,
        CalibrationMonitor.follow(new double[] {0}, new boolean[] {true}).fortune());
    // Ville: at most 1 in 20 right series ever reach 20; 2,000 series, binomial bound at p = .001.
    Random random = new Random(77);
    int alarms = 0;
    int wrongAlarms = 0;
    for (int series = 0; series < 2_000; series++) {
      double[] p = new double[400];
      double[] half = new double[400];
      boolean[] y = new boolean[400];
      for (int i = 0; i < p.length; i++) {
        p[i] = .02 + .2 * random.nextDouble();
        half[i] = p[i] / 2;
        y[i] = random.nextDouble() < p[i];
      }
      alarms += CalibrationMonitor.follow(p, y).highest() >= 20 ? 1 : 0;
      wrongAlarms += CalibrationMonitor.follow(half, y).highest() >= 20 ? 1 : 0;
    }
    assertTrue(alarms <= 132, "alarms " + alarms);
    assertTrue(wrongAlarms >= 1_900, "of wrong forecasts " + wrongAlarms);
  }

  @Test
  void skillIsTheGainOnTheReference() {
    double[] base = {.6, .6, .6, .6, .6};
    PointEstimate skill = BrierSkill.of(FIVE, base, CAME, .95).orThrow();
    assertEquals(1 - .23 / .24, skill.value(), 1e-12);
    List<Double> gains = new ArrayList<>();
    for (double gain : new double[] {.36 - .01, .16 - .81, .36 - .01, 0, 0}) {
      gains.add(gain);
    }
    double mean = gains.stream().mapToDouble(g -> g).average().orElseThrow();
    double variance = gains.stream().mapToDouble(g -> (g - mean) * (g - mean)).sum() / 4 / 5;
    assertEquals(Math.sqrt(variance) / .24, skill.standardError(), 1e-12);
  }

  @Test
  void hardInputs() {
    assertInstanceOf(Estimate.NotIdentified.class, ForecastScore.of(new double[0], new boolean[0]));
    assertInstanceOf(Estimate.NotIdentified.class, Reliability.of(new double[0], new boolean[0]));
    assertInstanceOf(Estimate.NotIdentified.class, BrierParts.corp(new double[0], new boolean[0]));
    assertInstanceOf(
        Estimate.NotIdentified.class,
        BrierSkill.of(new double[] {0, 0}, new double[2], new boolean[2], .9));
    assertEquals(
        0,
        ForecastScore.of(new double[] {0, 1}, new boolean[] {false, true})
            .orThrow()
            .spiegelhalterZ());
    assertThrows(
        IllegalArgumentException.class,
        () -> ForecastScore.of(new double[] {Double.NaN}, new boolean[1]));
    assertThrows(
        IllegalArgumentException.class, () -> ForecastScore.of(new double[1], new boolean[2]));
    assertEquals(
        1, Reliability.of(new double[] {.3}, new boolean[] {true}).orThrow().blocks().size());
  }
}
