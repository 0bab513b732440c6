package sealspan.stats.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;

class ActionEffectTest {
  private static final double LEVEL = 0.95;

  /** Cases with the values of one covariate or none. */
  private static final class Made {
    final List<double[]> rows = new ArrayList<>();
    final List<Boolean> second = new ArrayList<>();
    final List<Boolean> failed = new ArrayList<>();
    final List<Double> years = new ArrayList<>();
    final List<Integer> units = new ArrayList<>();

    Made add(int cases, int failures, boolean gotSecond, double exposure, double... covariates) {
      for (int i = 0; i < cases; i++) {
        rows.add(covariates);
        second.add(gotSecond);
        failed.add(i < failures);
        years.add(exposure);
        units.add(units.size());
      }
      return this;
    }

    ComparedCases cases() {
      int n = rows.size();
      int p = n == 0 ? 0 : rows.get(0).length;
      List<String> names = new ArrayList<>();
      double[][] columns = new double[p][n];
      boolean[] seconds = new boolean[n];
      boolean[] failures = new boolean[n];
      double[] exposures = new double[n];
      int[] unit = new int[n];
      for (int j = 0; j < p; j++) {
        names.add("covariate " + j);
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < p; j++) {
          columns[j][i] = rows.get(i)[j];
        }
        seconds[i] = second.get(i);
        failures[i] = failed.get(i);
        exposures[i] = years.get(i);
        unit[i] = units.get(i);
      }
      return new ComparedCases(names, columns, seconds, failures, exposures, unit);
    }

    ActionEffect effect() {
      return ActionEffect.of(cases(), LEVEL).orThrow();
    }
  }

  /**
   * By hand: 16 of 40 and 15 of 60 failed after one year each. Without covariates the risks are the
   * shares; the variance of the first is .4 * .6 / 40, times 100/99 for 100 units, times 40/39
   * because each of 40 cases decides a fortieth of its own fit.
   */
  @Test
  void withoutCovariatesTheRisksAreTheShares() {
    ActionEffect effect = new Made().add(40, 16, false, 1).add(60, 15, true, 1).effect();
    ActionEffect.Risks risks = effect.comparable();
    assertEquals(0.4, risks.first().value(), 1e-12);
    assertEquals(0.25, risks.second().value(), 1e-12);
    assertEquals(0.15, risks.difference().value(), 1e-12);
    assertEquals(1.6, risks.ratio().value(), 1e-12);
    double first = 0.4 * 0.6 / 40 * 100 / 99 * 40 / 39;
    double second = 0.25 * 0.75 / 60 * 100 / 99 * 60 / 59;
    assertEquals(Math.sqrt(first), risks.first().standardError(), 1e-10);
    assertEquals(Math.sqrt(first + second), risks.difference().standardError(), 1e-10);
    assertEquals(0.4, effect.all().first().value(), 1e-10);
    assertEquals(40, effect.effectiveFirst(), 1e-9);
    assertEquals(1, effect.comparableShare());
  }

  /** By hand: a share s that failed within two years is a risk of 1 - sqrt(1 - s) in one. */
  @Test
  void twoYearsAreBroughtToOne() {
    ActionEffect effect = new Made().add(100, 36, false, 2).add(100, 19, true, 2).effect();
    assertEquals(1 - Math.sqrt(0.64), effect.comparable().first().value(), 1e-10);
    assertEquals(1 - Math.sqrt(0.81), effect.comparable().second().value(), 1e-10);
    assertEquals(0.1, effect.all().difference().value(), 1e-10);
  }

  /**
   * By hand: the young fail after 10 % of first and 5 % of second actions, the old after 40 % and
   * 20 %. 900 of 1200 young and 200 of 800 old got the first, so that its share as it happened, 170
   * of 1100, is about that of the second, 135 of 900. The chance of the second is .25 and .75, so
   * the overlap weight is .1875 for all: risks (1200 * .1 + 800 * .4) / 2000 = .22 and .11. The
   * ridges move the third decimal of so many cases by less than one.
   */
  @Test
  void theChoiceByIndicationIsTakenOut() {
    ActionEffect effect =
        new Made()
            .add(900, 90, false, 1, 0)
            .add(300, 15, true, 1, 0)
            .add(200, 80, false, 1, 1)
            .add(600, 120, true, 1, 1)
            .effect();
    assertEquals(0.22, effect.comparable().first().value(), 1e-3);
    assertEquals(0.11, effect.comparable().second().value(), 1e-3);
    assertEquals(0.22, effect.all().first().value(), 1e-3);
    Balance balance = effect.balance().get(0);
    assertEquals(200 / 1100.0, balance.firstMean(), 1e-12);
    assertEquals(600 / 900.0, balance.secondMean(), 1e-12);
    double variance = (2 / 11.0 * 9 / 11.0 + 2 / 3.0 * 1 / 3.0) / 2;
    assertEquals((2 / 3.0 - 2 / 11.0) / Math.sqrt(variance), balance.before(), 1e-9);
    assertEquals(0, balance.after(), 0.005);
    // By hand: weights .25 for 900 and .75 for 200 of the first group.
    assertEquals(375 * 375 / (900 * 0.0625 + 200 * 0.5625), effect.effectiveFirst(), 2);
    assertTrue(effect.comparable().difference().interval().lower() > 0.07);
  }

  private static final int DRAWN = 900;

  /** Three covariates, units of three cases with a common frailty, exposures from .6 to 1.8. */
  private static Made drawn(long seed, int cases) {
    Random random = new Random(seed);
    Made made = new Made();
    double frailty = 1;
    for (int i = 0; i < cases; i++) {
      if (i % 3 == 0) {
        frailty = 0.5 + random.nextDouble();
      }
      double a = random.nextGaussian();
      double b = random.nextGaussian();
      double c = random.nextBoolean() ? 1 : 0;
      boolean second = random.nextDouble() < 1 / (1 + Math.exp(-(0.8 * a - 0.5 * c)));
      double years = 0.6 + 1.2 * random.nextDouble();
      double hazard = 0.3 * frailty * Math.exp(0.5 * a - 0.3 * b + (second ? -0.7 : 0));
      boolean failed = random.nextDouble() < -Math.expm1(-hazard * years);
      made.add(1, failed ? 1 : 0, second, years, a, b, c);
      made.units.set(i, i / 3);
    }
    return made;
  }

  /** The same estimate by another way: plain gradient ascent, bisection, sums written out. */
  @Test
  void agreesWithASlowAlgorithm() {
    ComparedCases cases = drawn(11, DRAWN).cases();
    double[] slow = SlowEffect.risks(cases);
    ActionEffect.Risks risks = ActionEffect.of(cases, LEVEL).orThrow().comparable();
    assertEquals(slow[0], risks.first().value(), 1e-7);
    assertEquals(slow[1], risks.second().value(), 1e-7);
  }

  /** The standard errors against drawing units with replacement and fitting all anew, 400 times. */
  @Test
  void standardErrorsAreThoseOfABootstrapByUnit() {
    Made made = drawn(12, DRAWN);
    PointEstimate difference = made.effect().comparable().difference();
    Random random = new Random(13);
    int draws = 400;
    double sum = 0;
    double squares = 0;
    for (int draw = 0; draw < draws; draw++) {
      Made again = new Made();
      for (int u = 0; u < DRAWN / 3; u++) {
        int from = 3 * random.nextInt(DRAWN / 3);
        for (int i = from; i < from + 3; i++) {
          again.add(
              1,
              made.failed.get(i) ? 1 : 0,
              made.second.get(i),
              made.years.get(i),
              made.rows.get(i));
          again.units.set(again.units.size() - 1, u);
        }
      }
      double value = again.effect().comparable().difference().value();
      sum += value;
      squares += value * value;
    }
    double deviation = Math.sqrt((squares - sum * sum / draws) / (draws - 1));
    // The error of a standard deviation of 400 draws is 3.5 %; 4 of these, and the ridge.
    assertEquals(1, difference.standardError() / deviation, 0.15);
  }

  /** Without a ridge the weighted means would be equal (Li, Morgan, Zaslavsky 2018, theorem 3). */
  @Test
  void weightsBalanceTheMeans() {
    for (Balance balance : drawn(14, 3_000).effect().balance()) {
      assertTrue(Math.abs(balance.after()) < 0.01, balance.toString());
    }
  }

  @Test
  void theOrderOfCasesDecidesNothing() {
    Made made = drawn(15, DRAWN);
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < DRAWN; i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(16));
    Made shuffled = new Made();
    for (int i : order) {
      shuffled.add(
          1, made.failed.get(i) ? 1 : 0, made.second.get(i), made.years.get(i), made.rows.get(i));
      shuffled.units.set(shuffled.units.size() - 1, made.units.get(i));
    }
    Interval one = made.effect().comparable().difference().interval();
    Interval other = shuffled.effect().comparable().difference().interval();
    assertEquals(one.lower(), other.lower(), 1e-10);
    assertEquals(one.upper(), other.upper(), 1e-10);
  }

  @Test
  void aCovariateThatDoesNotVaryChangesNothing() {
    Made made = drawn(17, DRAWN);
    Made with = drawn(17, DRAWN);
    with.rows.replaceAll(row -> new double[] {row[0], row[1], row[2], 7});
    assertEquals(
        made.effect().comparable().difference().value(),
        with.effect().comparable().difference().value(),
        1e-12);
    assertEquals(0, with.effect().balance().get(3).after());
  }

  @Test
  void saysWhyThereIsNoFigure() {
    assertNot("no case got the first action", new Made());
    assertNot("no case got the second action", new Made().add(50, 20, false, 1));
    assertNot("no case got the first action", new Made().add(50, 20, true, 1));
    assertNot(
        "none of 50 cases failed after the first action",
        new Made().add(50, 0, false, 1).add(50, 0, true, 1));
    assertNot(
        "none of 50 cases held after the first action",
        new Made().add(50, 50, false, 1).add(50, 50, true, 1));
    assertNot(
        "only 4 of 50 cases failed after the second action",
        new Made().add(50, 20, false, 1).add(50, 4, true, 1));
    Made oneUnit = new Made().add(50, 20, false, 1).add(50, 20, true, 1);
    oneUnit.units.replaceAll(u -> 0);
    assertNot("the cases belong to only 1 units", oneUnit);
    assertNot("no comparable cases", new Made().add(100, 20, false, 1, 0).add(100, 20, true, 1, 1));
    Made apart = new Made();
    for (int i = 0; i < 400; i++) {
      apart.add(1, i % 3 == 0 ? 1 : 0, i >= 200, 1, i);
    }
    assertNot("no comparable cases", apart);
  }

  private static void assertNot(String because, Made made) {
    Estimate<ActionEffect> effect = ActionEffect.of(made.cases(), LEVEL);
    assertTrue(
        effect instanceof Estimate.NotIdentified<ActionEffect> none
            && none.because().contains(because),
        effect.toString());
  }

  /** Exposures over a range of 10^6 and covariates over one of 10^9 stay numbers. */
  @Test
  void hardScalesGiveNumbers() {
    Made made = drawn(18, DRAWN);
    for (int i = 0; i < DRAWN; i++) {
      made.years.set(i, i % 100 == 0 ? 1e-3 : i % 101 == 0 ? 1e3 : made.years.get(i));
      made.rows.set(i, new double[] {1e9 * made.rows.get(i)[0], made.rows.get(i)[1], i});
    }
    ActionEffect.Risks risks = made.effect().comparable();
    for (PointEstimate one : List.of(risks.first(), risks.second(), risks.difference())) {
      assertTrue(Double.isFinite(one.value()) && Double.isFinite(one.standardError()));
      assertTrue(one.interval().contains(one.value()));
    }
  }

  @Test
  void refusesWhatIsNoCase() {
    Made zero = new Made().add(1, 1, true, 0);
    assertThrows(IllegalArgumentException.class, zero::cases);
    Made infinite = new Made().add(2, 1, true, 1, Double.NaN);
    assertThrows(IllegalArgumentException.class, infinite::cases);
  }

  /**
   * VanderWeele and Ding 2017 work it out for a risk ratio of 3.9 with limits 1.8 and 8.7: 7.26 and
   * 3.0 (from memory). A protective ratio counts as its inverse.
   */
  @Test
  void tippingPoint() {
    PointEstimate ratio = new PointEstimate(3.9, 0, new Interval(1.8, 8.7, LEVEL));
    assertEquals(7.26, TippingPoint.of(ratio).ofEstimate(), 0.005);
    assertEquals(3.0, TippingPoint.of(ratio).ofLimit(), 1e-12);
    PointEstimate below = new PointEstimate(1 / 3.9, 0, new Interval(1 / 8.7, 1 / 1.8, LEVEL));
    assertEquals(7.26, TippingPoint.of(below).ofEstimate(), 0.005);
    assertEquals(3.0, TippingPoint.of(below).ofLimit(), 1e-9);
    PointEstimate holdsOne = new PointEstimate(1.2, 0, new Interval(0.8, 1.9, LEVEL));
    assertEquals(1, TippingPoint.of(holdsOne).ofLimit());
    assertThrows(IllegalArgumentException.class, () -> TippingPoint.of(0));
  }
}
