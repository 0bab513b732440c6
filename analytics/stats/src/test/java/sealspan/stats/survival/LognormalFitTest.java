package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;

class LognormalFitTest {
  private static final String FOLDER = "06_weibull_lognormal_ml/";
  private static final Reference EXPECTED = Reference.read(FOLDER + "expected.csv");

  private static LognormalFit fit(List<Lifetime> lives) {
    return LognormalFit.of(lives).orThrow();
  }

  /** NIST/SEMATECH 8.4.1, Nelson's fans 1982, first valve seats of Nelson 1995; R survreg 3.5-3. */
  @Test
  void knownAndOpenEndsAgreeWithR() {
    for (String name : new String[] {"nist", "genfan", "first_valve"}) {
      assertAgrees(
          name, WeibullFitTest.known(Reference.read(FOLDER + "input.csv").where("case", name)));
    }
  }

  /** Finkelstein and Wolfe 1985, and known, open, early and enclosed ends together; R survreg. */
  @Test
  void enclosedEndsAgreeWithR() {
    Reference input = Reference.read(FOLDER + "input_interval.csv");
    for (String arm : new String[] {"RT", "RCT"}) {
      assertAgrees("cosmesis " + arm, WeibullFitTest.enclosed(input.where("group", arm), 1));
    }
    assertAgrees("mixed", WeibullFitTest.enclosed(Reference.read(FOLDER + "input_mixed.csv"), 1));
  }

  private static void assertAgrees(String name, List<Lifetime> lives) {
    LognormalFit fit = fit(lives);
    String key = name + " lognormal ";
    assertEquals(EXPECTED.value(key + "mu(log)"), fit.mu(), 1e-7);
    assertEquals(EXPECTED.value(key + "sigma"), fit.sigma(), 1e-7);
    assertEquals(EXPECTED.value(key + "loglik"), fit.logLikelihood(), 1e-8);
    assertEquals(EXPECTED.value(key + "se_mu"), fit.standardErrorMu(), 1e-6);
    assertEquals(EXPECTED.value(key + "se_logsigma"), fit.standardErrorLogSigma(), 1e-6);
    for (int percent : new int[] {10, 50}) {
      PointEstimate days = fit.quantileDays(percent / 100.0, 0.95);
      assertEquals(EXPECTED.value(key + "B " + percent), days.value(), 1e-5 * days.value());
      // R's limits are exp(log +- z se): the standard error follows from them.
      double width =
          Math.log(EXPECTED.value(key + "B " + percent + " hi95"))
              - Math.log(EXPECTED.value(key + "B " + percent + " lo95"));
      assertEquals(width / 2 / 1.959963985, days.standardError() / days.value(), 1e-6);
      assertTrue(days.interval().contains(days.value()));
    }
    assertEquals(4 - 2 * fit.logLikelihood(), fit.aic(), 1e-12);
    assertEquals(lives.size(), fit.lives() + fit.leftOut());
  }

  /** By hand: known ends only, so mu and sigma are the mean and the spread of the logarithms. */
  @Test
  void knownEndsAreAverages() {
    LognormalFit fit =
        fit(List.of(Lifetime.ended(0, 10), Lifetime.ended(0, 100), Lifetime.ended(0, 1000)));
    assertEquals(Math.log(100), fit.mu(), 1e-12);
    assertEquals(Math.log(10) * Math.sqrt(2.0 / 3), fit.sigma(), 1e-12);
    assertEquals(0.5, fit.survival(100, 0.95).value(), 1e-12);
    assertEquals(100, fit.medianDays(0.95).value(), 1e-9);
    assertEquals(1, fit.shareBeyond(0));
  }

  /** Independent: hipparchus' normal distribution; derivatives by differences. */
  @Property(tries = 100, seed = "21")
  void derivativesAreThoseOfTheLikelihood(
      @ForAll @IntRange(max = 1_000_000) int seed,
      @ForAll @DoubleRange(min = -0.7, max = 0.7) double dx,
      @ForAll @DoubleRange(min = -1, max = 0.9) double y) {
    List<Lifetime> lives = WeibullFitTest.invented(new Random(seed), 15);
    LognormalLikelihood surface = new LognormalLikelihood(lives);
    double x = Math.log(400) + dx;
    NewtonAscent.Point p = surface.at(x, y);
    double h = 1e-5;
    NewtonAscent.Point right = surface.at(x + h, y);
    NewtonAscent.Point left = surface.at(x - h, y);
    NewtonAscent.Point up = surface.at(x, y + h);
    NewtonAscent.Point down = surface.at(x, y - h);
    double size = 1 + Math.abs(p.value()) + Math.abs(p.hxx()) + Math.abs(p.hyy());
    assertEquals(p.gx(), (right.value() - left.value()) / (2 * h), 1e-6 * size);
    assertEquals(p.gy(), (up.value() - down.value()) / (2 * h), 1e-6 * size);
    assertEquals(p.hxx(), (right.gx() - left.gx()) / (2 * h), 1e-6 * size);
    assertEquals(p.hxy(), (right.gy() - left.gy()) / (2 * h), 1e-6 * size);
    assertEquals(p.hyy(), (up.gy() - down.gy()) / (2 * h), 1e-6 * size);
    assertEquals(slow(x, y, lives), p.value(), 1e-8 * size);
  }

  private static double slow(double x, double y, List<Lifetime> lives) {
    NormalDistribution normal = new NormalDistribution(x, Math.exp(y));
    double sum = 0;
    for (Lifetime life : lives) {
      int lower = Math.max(life.entryDay(), life.lowerDay());
      boolean silent = life.open() ? lower == life.entryDay() : life.upperDay() <= life.entryDay();
      if (silent) {
        continue;
      }
      double one =
          life.exact()
              ? normal.logDensity(Math.log(lower)) - Math.log(lower)
              : Math.log(
                  between(normal, lower, life.open() ? Double.POSITIVE_INFINITY : life.upperDay()));
      double watched = between(normal, life.entryDay(), Double.POSITIVE_INFINITY);
      sum += life.count() * (one - Math.log(watched));
    }
    return sum;
  }

  /** The share between two days, taken on the side of the mean where it is exact. */
  private static double between(NormalDistribution normal, double from, double to) {
    double a = Math.log(from);
    double b = Math.log(to);
    double mean = normal.getMean();
    return a > mean
        ? normal.cumulativeProbability(2 * mean - a) - normal.cumulativeProbability(2 * mean - b)
        : normal.cumulativeProbability(b) - normal.cumulativeProbability(a);
  }

  /** Independent: at a profile limit the best fit with that quantity lies 1.92 lower. */
  @Test
  void profileLimitsAgreeWithASearch() {
    List<Lifetime> lives = WeibullFitTest.invented(new Random(3), 60);
    LognormalFit fit = fit(lives);
    double depth = fit.logLikelihood() - 1.9207294;
    for (double limit : ends(fit.sigma(0.95).interval())) {
      assertEquals(depth, WeibullFitTest.highest(x -> slow(x, Math.log(limit), lives), 3, 9), 1e-5);
    }
    for (double limit : ends(fit.medianDays(0.95).interval())) {
      assertEquals(
          depth, WeibullFitTest.highest(y -> slow(Math.log(limit), y, lives), -2, 3), 1e-5);
    }
    for (double limit : ends(fit.meanDays(0.95).interval())) {
      assertEquals(
          depth,
          WeibullFitTest.highest(
              y -> slow(Math.log(limit) - Math.exp(2 * y) / 2, y, lives), -2, 1.5),
          1e-5);
    }
    for (double limit : ends(fit.quantileDays(0.1, 0.95).interval())) {
      assertEquals(
          depth,
          WeibullFitTest.highest(
              y -> slow(Math.log(limit) + 1.2815515655446004 * Math.exp(y), y, lives), -2, 2),
          1e-5);
    }
    PointEstimate share = fit.survival(365, 0.95);
    assertEquals(fit.shareBeyond(365), share.value(), 1e-14);
    assertTrue(share.interval().contains(share.value()));
  }

  private static double[] ends(Interval interval) {
    return new double[] {interval.lower(), interval.upper()};
  }

  /** Independent: the area beyond the longest day by small steps. */
  @Test
  void shareExtrapolatedIsTheAreaBeyondTheData() {
    LognormalFit fit =
        fit(WeibullFitTest.known(Reference.read(FOLDER + "input.csv").where("case", "nist")));
    double area = 0;
    double beyond = 0;
    for (int day = 0; day < 200_000; day++) {
      double share = (fit.shareBeyond(day) + fit.shareBeyond(day + 1)) / 2;
      area += share;
      beyond += day >= 500 ? share : 0;
    }
    assertEquals(area, fit.meanDays(0.95).value(), 0.5);
    assertEquals(beyond / area, fit.shareOfMeanBeyondLongestDay(), 1e-3);
  }

  @Test
  void saysWhatTheDataDoNotFix() {
    assertBecause("none of the 0 lives has been seen to end", List.of());
    assertBecause("none of the 2 lives", List.of(Lifetime.goingOn(0, 5).times(2)));
    assertBecause("too close together", List.of(Lifetime.ended(0, 5), Lifetime.ended(0, 5)));
    assertBecause("ends", List.of(Lifetime.endedWithin(0, 0, 5).times(7)));
    assertBecause("ends", List.of(Lifetime.endedWithin(0, 3, 5).times(7)));
  }

  private static void assertBecause(String part, List<Lifetime> lives) {
    String because =
        assertInstanceOf(Estimate.NotIdentified.class, LognormalFit.of(lives)).because();
    assertTrue(because.contains(part), because);
  }

  /** Times over a range of a million, and order of no account. */
  @Property(tries = 30, seed = "22")
  void scaleAndOrderAreOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = WeibullFitTest.invented(new Random(seed), 30);
    if (!(LognormalFit.of(lives) instanceof Estimate.Identified<LognormalFit> found)) {
      return;
    }
    List<Lifetime> scaled = new ArrayList<>();
    for (Lifetime life : lives) {
      scaled.add(
          new Lifetime(
              life.entryDay() * 1_000,
              life.lowerDay() * 1_000,
              life.open() ? Lifetime.NEVER : life.upperDay() * 1_000,
              life.count()));
    }
    Collections.shuffle(scaled, new Random(seed));
    LognormalFit other = fit(scaled);
    assertEquals(found.value().mu() + Math.log(1_000), other.mu(), 1e-7);
    assertEquals(found.value().sigma(), other.sigma(), 1e-7);
  }
}
