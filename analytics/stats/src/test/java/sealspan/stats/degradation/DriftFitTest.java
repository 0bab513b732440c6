package sealspan.stats.degradation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;

class DriftFitTest {
  private static final DriftModel TRUTH = new DriftModel(-1.5e-4, 1e-4, 3e-3, 1.2e-4, .3);

  private static DriftFit fit(List<ReadingRun> runs) {
    return DriftFit.of(runs).orThrow();
  }

  private static double dense(List<ReadingRun> runs, DriftModel model) {
    double sum = 0;
    for (ReadingRun run : runs) {
      if (run.readings().size() > 1) {
        sum += new DenseDrift(run.readings(), model).logLikelihood();
      }
    }
    return sum;
  }

  /** Without shocks the likelihood is that of one normal vector a run; nothing near is better. */
  @Test
  void noNeighbourIsLikelierByTheDenseDistribution() {
    DriftModel quiet = new DriftModel(-1.5e-4, 1e-4, 3e-3, 0, .5);
    List<ReadingRun> runs = new ArrayList<>();
    for (ReadingRun run : InventedRuns.of(quiet, new Random(3), 300, 5)) {
      if (!run.failed()) {
        runs.add(run);
      }
    }
    DriftFit fit = fit(runs);
    double top = dense(runs, fit.model());
    assertEquals(top, fit.logLikelihood(), 1e-6);
    DriftModel m = fit.model();
    for (double f : new double[] {0.97, 1.03}) {
      assertTrue(top >= dense(runs, changed(m, f, 1, 1)), "drift " + f);
      assertTrue(top >= dense(runs, changed(m, 1, f, 1)), "spread " + f);
      assertTrue(top >= dense(runs, changed(m, 1, 1, f)), "wander " + f);
    }
    // The standard error by the curvature of the slow likelihood in the drift alone is no larger.
    double h = fit.driftError() / 10;
    DriftModel up =
        new DriftModel(
            m.driftPerDay() + h,
            m.driftSdPerDay(),
            m.volatilityPerRootDay(),
            0,
            .5,
            m.errorShare(),
            m.biasShare());
    DriftModel down =
        new DriftModel(
            m.driftPerDay() - h,
            m.driftSdPerDay(),
            m.volatilityPerRootDay(),
            0,
            .5,
            m.errorShare(),
            m.biasShare());
    double bend = (dense(runs, up) - 2 * top + dense(runs, down)) / (h * h);
    assertEquals(1 / Math.sqrt(-bend), fit.driftError(), 0.02 * fit.driftError());
  }

  private static DriftModel changed(DriftModel m, double drift, double spread, double wander) {
    return new DriftModel(
        m.driftPerDay() * drift,
        m.driftSdPerDay() * spread,
        m.volatilityPerRootDay() * wander,
        0,
        .5,
        m.errorShare(),
        m.biasShare());
  }

  @Test
  void findsTheTruthOfAnInventedFleet() {
    DriftFit fit = fit(InventedRuns.of(TRUTH, new Random(11), 4_000, 7));
    DriftModel m = fit.model();
    assertEquals(TRUTH.driftPerDay(), m.driftPerDay(), 4 * fit.driftError());
    assertTrue(fit.driftError() < 1e-5, () -> "" + fit);
    assertEquals(TRUTH.driftSdPerDay(), m.driftSdPerDay(), 0.15 * TRUTH.driftSdPerDay());
    assertEquals(TRUTH.volatilityPerRootDay(), m.volatilityPerRootDay(), 4e-4);
    assertEquals(0, Math.log(m.shocksPerDay() / TRUTH.shocksPerDay()), 4 * fit.shockError());
    assertTrue(fit.driftInterval(.95).contains(m.driftPerDay()));
  }

  /** Two readings a year apart in every run: the mean step, whatever the variances. */
  @Test
  void ofTwoReadingsARunTheDriftIsTheMeanStep() {
    Random random = new Random(5);
    List<ReadingRun> runs = new ArrayList<>();
    double sum = 0;
    for (int i = 0; i < 40; i++) {
      double step = -0.05 + 0.2 * random.nextGaussian();
      sum += step;
      runs.add(
          new ReadingRun(
              List.of(InventedRuns.reading(0, 3, 1), InventedRuns.reading(365, 3 + step, 2))));
    }
    assertEquals(sum / 40 / 365, fit(runs).model().driftPerDay(), 1e-8);
  }

  @Test
  void orderDecidesNothingAndUnitsOfTheReadingsScale() {
    List<ReadingRun> runs = InventedRuns.of(TRUTH, new Random(2), 80, 6);
    DriftFit fit = fit(runs);
    List<ReadingRun> shuffled = new ArrayList<>(runs);
    Collections.shuffle(shuffled, new Random(9));
    assertEquals(fit, fit(shuffled));
    for (double scale : new double[] {1e-3, 1e3}) {
      DriftModel other = fit(runs.stream().map(run -> scaled(run, scale)).toList()).model();
      assertEquals(fit.model().driftPerDay(), other.driftPerDay() / scale, 1e-7);
      assertEquals(fit.model().volatilityPerRootDay(), other.volatilityPerRootDay() / scale, 1e-5);
      assertEquals(fit.model().shocksPerDay(), other.shocksPerDay(), 1e-7);
    }
  }

  /** Readings without any bias, once of a gauge for each unit, once of one gauge for all. */
  @Test
  void oneGaugeForAllDoesNotTellHowLargeItsBiasIs() {
    Random random = new Random(3);
    List<ReadingRun> many = new ArrayList<>();
    List<ReadingRun> one = new ArrayList<>();
    for (int unit = 0; unit < 60; unit++) {
      List<GaugedReading> readings = new ArrayList<>();
      List<GaugedReading> shared = new ArrayList<>();
      for (int year = 0; year < 6; year++) {
        double value = 3 - 0.05 * year + 0.06 * random.nextGaussian();
        readings.add(InventedRuns.reading(365 * year, value, 6 * unit + year));
        shared.add(InventedRuns.reading(365 * year, value, year));
      }
      many.add(new ReadingRun(readings));
      one.add(new ReadingRun(shared));
    }
    DriftModel told = fit(many).model();
    assertEquals(told.errorShare(), told.biasShare());
    assertTrue(told.biasShare() < 0.9, () -> "" + told);
    assertEquals(1, fit(one).model().biasShare());
    assertTrue(fit(one).driftError() > 2 * fit(many).driftError());
  }

  /** The same fleet read by one gauge without and with biases of known size: both wander alike. */
  @Test
  void whatOneGaugeDoesToAllUnitsDoesNotHideHowLevelsWander() {
    double[] bias = {0.1, -0.08, 0.12, 0, -0.11, 0.07, -0.05, 0.09};
    List<ReadingRun> without = new ArrayList<>();
    List<ReadingRun> with = new ArrayList<>();
    Random random = new Random(6);
    for (int unit = 0; unit < 200; unit++) {
      List<GaugedReading> plainly = new ArrayList<>();
      List<GaugedReading> off = new ArrayList<>();
      double level = 4;
      for (int year = 0; year < bias.length; year++) {
        level += -0.05 + 0.06 * random.nextGaussian();
        double value = level + 0.06 * random.nextGaussian();
        plainly.add(InventedRuns.reading(365 * year, value, year));
        off.add(InventedRuns.reading(365 * year, value + bias[year], year));
      }
      without.add(new ReadingRun(plainly));
      with.add(new ReadingRun(off));
    }
    DriftModel plain = fit(without).model();
    DriftModel found = fit(with).model();
    assertEquals(0.06 / Math.sqrt(365), plain.volatilityPerRootDay(), 5e-4);
    assertEquals(plain.volatilityPerRootDay(), found.volatilityPerRootDay(), 1e-4);
    assertEquals(plain.errorShare(), found.errorShare(), 0.03);
    // A trend in the biases, here 0.002 a year by least squares, is not told from drift.
    assertEquals(plain.driftPerDay(), found.driftPerDay(), 0.02 / 365);
    assertTrue(Math.abs(found.driftPerDay() + 0.05 / 365) < 2 * fit(with).driftError());
  }

  private static ReadingRun scaled(ReadingRun run, double by) {
    return new ReadingRun(
        run.readings().stream()
            .map(
                r ->
                    new GaugedReading(
                        r.day(),
                        r.value() * by,
                        r.seen(),
                        r.limit() * by,
                        new GaugeError(
                            r.error().ownVariance() * by * by, r.error().biasVariance() * by * by),
                        0,
                        r.gaugePeriod()))
            .toList());
  }

  @Test
  void hardInputsGiveNumbersOrAPlainReason() {
    assertBecause("0 steps", List.of());
    assertBecause("1 steps", InventedRuns.of(TRUTH, new Random(1), 1, 2));
    List<ReadingRun> sameDay = new ArrayList<>();
    List<ReadingRun> constant = new ArrayList<>();
    List<ReadingRun> allFail = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      sameDay.add(
          new ReadingRun(List.of(InventedRuns.reading(4, 2, 1), InventedRuns.reading(4, 2, 1))));
      constant.add(
          new ReadingRun(List.of(InventedRuns.reading(0, 2, 1), InventedRuns.reading(365, 2, 2))));
      allFail.add(
          new ReadingRun(
              List.of(
                  InventedRuns.reading(0, 2, 1),
                  new GaugedReading(
                      365, 0, GaugedReading.Seen.AT_OR_BELOW, 1, InventedRuns.ERROR, 0, "G2"))));
    }
    assertBecause("days apart", sameDay);
    DriftModel still = fit(constant).model();
    assertEquals(0, still.driftPerDay(), 1e-6);
    assertEquals(0, still.volatilityPerRootDay(), 1e-9);
    DriftFit failed = fit(allFail);
    assertTrue(
        Double.isFinite(failed.model().shocksPerDay() + failed.model().driftPerDay())
            && Double.isFinite(failed.logLikelihood()),
        failed::toString);
    // Exact gauges and readings that never change.
    GaugeError exact = new GaugeError(0, 0);
    List<ReadingRun> exactly =
        constant.stream()
            .map(
                run ->
                    new ReadingRun(
                        run.readings().stream()
                            .map(
                                r ->
                                    new GaugedReading(
                                        r.day(), 2, r.seen(), 1, exact, 0, r.gaugePeriod()))
                            .toList()))
            .toList();
    assertEquals(0, fit(exactly).model().driftPerDay(), 1e-6);
  }

  private static void assertBecause(String part, List<ReadingRun> runs) {
    Estimate<DriftFit> estimate = DriftFit.of(runs);
    String because = assertInstanceOf(Estimate.NotIdentified.class, estimate).because();
    assertTrue(because.contains(part), because);
  }

  /**
   * One gauge for all: its bias in the later year moves every unit alike, so the mean step keeps
   * the variance of two biases however many units there are. By hand, over a year apart: variance
   * of the mean step = 2 biases + (2 errors + wander) / units.
   */
  @Test
  void gaugesThatAllUnitsShareLimitWhatIsKnownOfTheMeanDrift() {
    Random random = new Random(15);
    List<ReadingRun> runs = new ArrayList<>();
    for (int i = 0; i < 500; i++) {
      double step = -0.05 + Math.sqrt(2 * .004 + .01) * random.nextGaussian();
      runs.add(
          new ReadingRun(
              List.of(InventedRuns.reading(0, 3, 1), InventedRuns.reading(365, 3 + step, 2))));
    }
    double error = Math.sqrt(2 * .003 + (2 * .004 + .01) / 500) / 365;
    assertEquals(error, fit(runs).driftError(), 0.03 * error);
  }

  /** A wrong tens digit in one of a hundred readings must not pass for drift or wander. */
  @Test
  void slipsInWritingDoNotRuleTheFit() {
    List<ReadingRun> runs = InventedRuns.of(TRUTH, new Random(21), 1_500, 6);
    Random random = new Random(22);
    List<ReadingRun> slipped = new ArrayList<>();
    for (ReadingRun run : runs) {
      List<GaugedReading> readings = new ArrayList<>(run.readings());
      int at = random.nextInt(readings.size());
      if (random.nextInt(15) == 0 && !readings.get(at).fails()) {
        GaugedReading r = readings.get(at);
        readings.set(at, InventedRuns.reading(r.day(), r.value() + 10, 1_000_000 + slipped.size()));
      }
      slipped.add(new ReadingRun(readings));
    }
    DriftModel clean = fit(runs).model();
    DriftModel model = fit(slipped).model();
    assertEquals(clean.volatilityPerRootDay(), model.volatilityPerRootDay(), 4e-4);
    assertEquals(clean.driftPerDay(), model.driftPerDay(), 1e-5);
    assertEquals(clean.driftSdPerDay(), model.driftSdPerDay(), 3e-5);
    ReadingRun afterwards =
        new ReadingRun(
            List.of(
                InventedRuns.reading(0, 1.9, 1),
                InventedRuns.reading(365, 11.8, 2),
                InventedRuns.reading(730, 1.8, 3)));
    assertEquals(1.8, TRUTH.follow(afterwards).level(), 0.05);
  }
}
