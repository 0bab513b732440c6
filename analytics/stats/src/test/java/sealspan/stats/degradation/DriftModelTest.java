package sealspan.stats.degradation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Reference;

class DriftModelTest {
  private static final DriftModel USUAL = new DriftModel(-1e-4, 6e-5, 3e-3, 0, .5);

  /**
   * Worked out beforehand with R's pnorm: level 6.1 +- .05, limit 5, a step of one unit of time.
   */
  @Test
  void goldenValues() {
    LevelState state = new LevelState(0, 6.1, 0.05, -0.35, 0, 0);
    LevelForecast next = state.ahead(1, new DriftModel(-0.35, 0, 0.3, 0, 0.5));
    assertEquals(0.03854994, next.probabilityReadingBelow(5, new GaugeError(0.04, 0), 0), 5e-9);
    assertEquals(0.02251044, next.probabilityBelow(5), 5e-9);
  }

  @Test
  void aRoundedReadingFailsWhereItRoundsBelowTheLimit() {
    LevelForecast next = new LevelForecast(1.2, 0.01);
    GaugeError exact = new GaugeError(0, 0);
    assertEquals(next.probabilityBelow(0.95), next.probabilityReadingBelow(1.0, exact, 0.1), 1e-12);
    assertEquals(next.probabilityBelow(1.1), next.probabilityReadingBelow(1.05, exact, 0.2), 1e-12);
    assertEquals(1, new LevelForecast(0.9, 0).probabilityBelow(1));
    assertEquals(0, new LevelForecast(1.0, 0).probabilityBelow(1));
  }

  /** By hand: two readings with gauges of their own, no drift, no wander: their mean. */
  @Test
  void workedByHand() {
    DriftModel still = new DriftModel(0, 0, 0, 0, .5);
    LevelState state =
        still.follow(
            new ReadingRun(
                List.of(InventedRuns.reading(0, 2.0, 1), InventedRuns.reading(365, 1.6, 2))));
    assertEquals(1.8, state.level(), 1e-12);
    assertEquals(InventedRuns.ERROR.variance() / 2, state.levelVariance(), 1e-12);
    // The same gauge between two calibrations: its bias does not average out.
    LevelState shared =
        still.follow(
            new ReadingRun(
                List.of(InventedRuns.reading(0, 2.0, 1), InventedRuns.reading(1, 1.6, 1))));
    assertEquals(1.8, shared.level(), 1e-12);
    assertEquals(.003 + .004 / 2, shared.levelVariance(), 1e-12);
  }

  @Property(tries = 200, seed = "1")
  void equalsTheDenseNormalDistribution(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    ReadingRun run = InventedRuns.run(USUAL, random, 2 + random.nextInt(6));
    if (run.readings().size() < 2) {
      return;
    }
    DenseDrift dense = new DenseDrift(run.readings(), USUAL);
    double fast =
        new DriftLikelihood(List.of(run), USUAL.unreadableShare())
            .at(
                new DriftLikelihood.Place(
                    USUAL.driftPerDay(),
                    Math.pow(USUAL.driftSdPerDay(), 2),
                    Math.pow(USUAL.volatilityPerRootDay(), 2),
                    0,
                    1));
    assertEquals(dense.logLikelihood(), fast, 1e-8);
    LevelState state = USUAL.follow(run);
    int last = run.last().day() - run.readings().get(0).day();
    double[] now = dense.levelOn(last);
    assertEquals(now[0], state.level(), 1e-5);
    assertEquals(now[1], state.levelVariance(), 1e-7);
    // Extrapolated, the dense way knows of drift and wander alike.
    double[] later = dense.levelOn(last + 400);
    LevelForecast ahead = state.ahead(400, USUAL);
    assertEquals(later[0], ahead.mean(), 1e-5);
    assertEquals(later[1], ahead.variance(), 1e-7);
  }

  /** lme4 by maximum likelihood; the drifts of the units by REML (folder 15, SOURCE.txt). */
  @Test
  void mixedModelsOfReference15() {
    Reference expected = Reference.read("15_lmm_drift/expected.csv");
    assertMixed(expected, "sleep", rows("input_sleepstudy.csv", "Subject", "Days", "Reaction"));
    assertMixed(expected, "gauge", rows("input_gauge.csv", "gauge", "t", "err"));
    // One random level for each batch, no drift.
    Map<String, List<double[]>> batches = rows("input_dyestuff.csv", "Batch", null, "Yield");
    double deviance = 0;
    for (List<double[]> batch : batches.values()) {
      LevelFilter filter = new LevelFilter();
      filter.begin(
          expected.value("dyestuff ML (Intercept)"),
          Math.pow(expected.value("dyestuff ML sd/corr Batch (Intercept) NA"), 2),
          0,
          0,
          0);
      double own = Math.pow(expected.value("dyestuff ML sd/corr Residual NA NA"), 2);
      deviance += deviance(filter, batch, own);
    }
    assertEquals(expected.value("dyestuff ML deviance"), deviance, 1e-6);
  }

  private static void assertMixed(
      Reference expected, String name, Map<String, List<double[]>> units) {
    double deviance = 0;
    for (List<double[]> unit : units.values()) {
      deviance += deviance(begun(expected, name + " ML"), unit, residual(expected, name + " ML"));
    }
    assertEquals(expected.value(name + " ML deviance"), deviance, 1e-6);
    Reference drifts = Reference.read("15_lmm_drift/expected_" + name + "_blup.csv");
    String key = drifts.rows().get(0).containsKey("gauge") ? "gauge" : "subject";
    String slope = slope(name);
    for (Map<String, String> row : drifts.rows()) {
      LevelFilter filter = begun(expected, name + " REML");
      deviance(filter, units.get(row.get(key)), residual(expected, name + " REML"));
      double own = filter.state(0).driftPerDay() - expected.value(name + " REML " + slope);
      assertEquals(Double.parseDouble(row.get("b1")), own, 1e-4 * Math.abs(own) + 1e-6);
    }
  }

  private static String slope(String name) {
    return name.equals("sleep") ? "Days" : "t";
  }

  private static LevelFilter begun(Reference expected, String fit) {
    String name = fit.substring(0, fit.indexOf(' '));
    String unit = fit + " sd/corr " + (name.equals("sleep") ? "Subject " : "gauge ");
    double level = expected.value(unit + "(Intercept) NA");
    double drift = expected.value(unit + slope(name) + " NA");
    double correlation = expected.value(unit + "(Intercept) " + slope(name));
    LevelFilter filter = new LevelFilter();
    filter.begin(
        expected.value(fit + " (Intercept)"),
        level * level,
        expected.value(fit + " " + slope(name)),
        drift * drift,
        correlation * level * drift);
    return filter;
  }

  private static double residual(Reference expected, String fit) {
    return Math.pow(expected.value(fit + " sd/corr Residual NA NA"), 2);
  }

  private static double deviance(LevelFilter filter, List<double[]> unit, double own) {
    double time = 0;
    double sum = 0;
    for (double[] point : unit) {
      filter.advance(point[0] - time, 0);
      time = point[0];
      double variance = filter.variance(own);
      double residual = point[1] - filter.mean();
      sum += Math.log(2 * Math.PI * variance) + residual * residual / variance;
      filter.take(point[1], own);
    }
    return sum;
  }

  private static Map<String, List<double[]>> rows(
      String file, String unit, String time, String value) {
    Map<String, List<double[]>> units = new TreeMap<>();
    for (Map<String, String> row : Reference.read("15_lmm_drift/" + file).rows()) {
      double at = time == null ? 0 : Double.parseDouble(row.get(time));
      units
          .computeIfAbsent(row.get(unit), u -> new ArrayList<>())
          .add(new double[] {at, Double.parseDouble(row.get(value))});
    }
    return units;
  }

  /** The moments of a normal level, cut off by a reading at most 0, by adding up on a fine grid. */
  @Test
  void aReadingWithoutNumberMovesTheLevelAsMomentsSay() {
    for (double mean : new double[] {-0.3, 0.1, 0.8, 3}) {
      LevelFilter filter = new LevelFilter();
      double variance = 0.09;
      filter.begin(mean, variance, 0, 0, 0);
      double own = 0.02;
      filter.takeAtMost(0, own);
      double mass = 0;
      double first = 0;
      double second = 0;
      for (double x = mean - 6; x < mean + 3; x += 1e-4) {
        double weight =
            Math.exp(-(x - mean) * (x - mean) / (2 * variance)) * Bell.below(-x / Math.sqrt(own));
        mass += weight;
        first += weight * x;
        second += weight * x * x;
      }
      assertEquals(first / mass, filter.mean(), 1e-6);
      assertEquals(second / mass - Math.pow(first / mass, 2), filter.variance(0), 1e-6);
    }
  }

  @Test
  void farTailsAreFinite() {
    assertEquals(-804.608442, Bell.logBelow(-40), 1e-6); // R: pnorm(-40, log.p = TRUE)
    assertEquals(Bell.logBelow(-29.999999), Bell.logBelow(-30.000001), 1e-4);
    assertEquals(Bell.inverseMills(-29.999999), Bell.inverseMills(-30.000001), 1e-5);
    LevelFilter filter = new LevelFilter();
    filter.begin(1e4, 1e-6, 0, 0, 0);
    filter.takeAtMost(0, 1e-6);
    assertTrue(Double.isFinite(filter.mean()) && filter.variance(0) >= 0);
  }

  @Test
  void tellsADriftFromAShock() {
    DriftModel model = new DriftModel(-3e-4, 1e-4, 3e-3, 1e-4, .5);
    ReadingRun slow =
        new ReadingRun(
            List.of(
                InventedRuns.reading(0, 1.2, 1),
                InventedRuns.reading(365, 1.1, 2),
                InventedRuns.reading(730, 0.95, 3)));
    assertTrue(model.gradualShare(slow) > 0.9, () -> "" + model.gradualShare(slow));
    ReadingRun sudden =
        new ReadingRun(List.of(InventedRuns.reading(0, 1.9, 1), InventedRuns.reading(365, 0.3, 2)));
    assertTrue(model.gradualShare(sudden) < 1e-6);
    ReadingRun leaked =
        new ReadingRun(
            List.of(
                InventedRuns.reading(0, 1.9, 1),
                new GaugedReading(
                    365, 0, GaugedReading.Seen.AT_OR_BELOW, 1, InventedRuns.ERROR, 0, "G2")));
    assertTrue(model.gradualShare(leaked) < 1e-6);
    assertEquals(0, model.gradualShare(new ReadingRun(List.of(InventedRuns.reading(0, .4, 1)))));
    assertThrows(
        IllegalArgumentException.class,
        () -> model.gradualShare(new ReadingRun(List.of(InventedRuns.reading(0, 2, 1)))));
    assertNull(
        model.follow(
            new ReadingRun(
                List.of(
                    new GaugedReading(
                        5, 0, GaugedReading.Seen.AT_OR_BELOW, 1, InventedRuns.ERROR, 0, "G1")))));
  }

  /**
   * Independent: the end of the path is normal; given an end above the limit, a Brownian bridge
   * went below it with probability exp(-2 a x / (s^2 t)) (reflection principle).
   */
  @Test
  void firstPassageIsThatOfTheBridge() {
    double[][] cases = {{0.8, -3e-4, 2e-2, 365}, {0.3, 2e-4, 1e-2, 700}, {2, -5e-3, 1e-2, 365}};
    for (double[] c : cases) {
      double variance = c[2] * c[2] * c[3];
      double mean = c[0] + c[1] * c[3];
      double sd = Math.sqrt(variance);
      double sum = 0;
      double step = 1e-4;
      for (double z = -10 + step / 2; z < 10; z += step) {
        double x = mean + sd * z;
        double crossed = x < 0 ? 1 : Math.exp(-2 * c[0] * x / variance);
        sum += step * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) * crossed;
      }
      assertEquals(sum, FirstPassage.probability(c[0], c[1], c[2], c[3]), 1e-6);
    }
    assertEquals(1, FirstPassage.probability(0, 0, 1, 1));
    assertEquals(0, FirstPassage.probability(1, 0, 0, 100));
    assertEquals(1, FirstPassage.probability(1, -.02, 0, 100));
    assertEquals(0, FirstPassage.probability(1, 1e6, 1e-3, 1e6), 1e-12);
  }
}
