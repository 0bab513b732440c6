package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.NewtonAscent;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;

class WeibullFitTest {
  private static final String FOLDER = "06_weibull_lognormal_ml/";
  private static final Reference EXPECTED = Reference.read(FOLDER + "expected.csv");

  /**
   * NIST/SEMATECH e-Handbook 8.4.1, Nelson's diesel fans 1982, first valve seats of Nelson 1995; R
   * survreg 3.5-3.
   */
  @Test
  void rightCensoredLivesAgreeWithR() {
    for (String name : new String[] {"nist", "genfan", "first_valve"}) {
      List<Lifetime> lives = known(Reference.read(FOLDER + "input.csv").where("case", name));
      assertAgrees(name, fit(lives));
      ExponentialFit exponential = ExponentialFit.of(lives).orThrow();
      assertEquals(
          EXPECTED.value(name + " exponential mu(log)"), Math.log(exponential.meanDays()), 1e-10);
      assertEquals(EXPECTED.value(name + " exponential loglik"), exponential.logLikelihood(), 1e-9);
      assertEquals(
          EXPECTED.value(name + " exponential se_mu"), exponential.standardErrorLogMean(), 1e-9);
    }
  }

  /** Published: NIST 8.4.1.2 shape 1.7208, scale 606.528, log-likelihood -75.135. */
  @Test
  void agreesWithNist() {
    WeibullFit fit = fit(known(Reference.read(FOLDER + "input.csv").where("case", "nist")));
    assertEquals(1.7208, fit.shape(), 5e-5);
    assertEquals(606.528, fit.scaleDays(), 5e-4);
    assertEquals(-75.135, fit.logLikelihood(), 5e-4);
    assertEquals(20, fit.lives());
    assertEquals(10, fit.ended());
    assertEquals(500, fit.longestDay());
    assertEquals(EXPECTED.value("nist weibull B 10"), fit.quantileDays(0.1), 1e-6);
  }

  /** Published: doi 10.1080/00224065.1997.11979730, shape 2.7540 and scale 67.9188. */
  @Test
  void agreesWithAPublishedCensoredFit() {
    WeibullFit fit = fit(known(Reference.read(FOLDER + "input_jqt1997.csv")));
    assertEquals(2.7540, fit.shape(), 5e-5);
    assertEquals(67.9188, fit.scaleDays(), 5e-5);
  }

  /** Finkelstein and Wolfe 1985, enclosed ends; R survreg interval2. */
  @Test
  void enclosedEndsAgreeWithR() {
    Reference input = Reference.read(FOLDER + "input_interval.csv");
    for (String arm : new String[] {"RT", "RCT"}) {
      assertAgrees("cosmesis " + arm, fit(enclosed(input.where("group", arm), 1)));
    }
  }

  /** R survreg on known, open, left-censored and enclosed ends together. */
  @Test
  void mixedEndsAgreeWithR() {
    List<Lifetime> lives = enclosed(Reference.read(FOLDER + "input_mixed.csv"), 1);
    assertAgrees("mixed", fit(lives));
  }

  /**
   * 400 lives with late entry and yearly looks, hundredths of a year as days; R, own likelihood.
   */
  @Test
  void lateEntryWithEnclosedEndsAgreesWithR() {
    WeibullFit fit = fit(enclosed(Reference.read(FOLDER + "input_inttrunc.csv"), 100));
    assertEquals(EXPECTED.value("inttrunc shape"), fit.shape(), 1e-6);
    assertEquals(EXPECTED.value("inttrunc scale"), fit.scaleDays() / 100, 1e-6);
    assertEquals(EXPECTED.value("inttrunc loglik"), fit.logLikelihood(), 1e-8);
    // R takes the Hessian by differences
    assertEquals(EXPECTED.value("inttrunc se_logshape"), fit.standardErrorLogShape(), 1e-4);
    assertEquals(EXPECTED.value("inttrunc se_logscale"), fit.standardErrorLogScale(), 1e-4);
  }

  /** R survreg: one end at 2, open at 3 and 4. */
  @Test
  void oneEndCanBeEnough() {
    WeibullFit fit =
        fit(List.of(Lifetime.ended(0, 2), Lifetime.goingOn(0, 3), Lifetime.goingOn(0, 4)));
    assertEquals(1.973468573, fit.shape(), 1e-8);
    assertEquals(5.420247692, fit.scaleDays(), 1e-8);
  }

  /**
   * By hand: ends at 2 and 4 days, one open at 6: mean 12 / 2; limits where 2 ln(r) - 12 r falls.
   */
  @Test
  void exponentialWorkedByHand() {
    ExponentialFit fit =
        ExponentialFit.of(
                List.of(Lifetime.ended(0, 2), Lifetime.ended(0, 4), Lifetime.goingOn(0, 6)))
            .orThrow();
    assertEquals(6, fit.meanDays(), 1e-10);
    assertEquals(-2 * Math.log(6) - 2, fit.logLikelihood(), 1e-12);
    assertEquals(Math.sqrt(0.5), fit.standardErrorLogMean(), 1e-9);
    Interval interval = fit.meanDays(0.95).interval();
    for (double mean : new double[] {interval.lower(), interval.upper()}) {
      assertEquals(-2 * Math.log(6) - 2 - 1.9207294, -2 * Math.log(mean) - 12 / mean, 1e-6);
    }
    // Case 06: 3 of 10 had ended when looked at on day 1: rate -ln(.7)
    ExponentialFit looked =
        ExponentialFit.of(
                List.of(Lifetime.endedWithin(0, 0, 1).times(3), Lifetime.goingOn(0, 1).times(7)))
            .orThrow();
    assertEquals(-Math.log(0.7), 1 / looked.meanDays(), 1e-10);
  }

  /** Independent: derivatives by differences, at random places and for random lives. */
  @Property(tries = 100, seed = "7")
  void derivativesAreThoseOfTheLikelihood(
      @ForAll @IntRange(max = 1_000_000) int seed,
      @ForAll @DoubleRange(min = -0.7, max = 0.7) double dx,
      @ForAll @DoubleRange(min = -0.7, max = 0.9) double y) {
    WeibullLikelihood surface = new WeibullLikelihood(invented(new Random(seed), 15));
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
    assertEquals(slow(x, y, invented(new Random(seed), 15)), p.value(), 1e-9 * size);
  }

  /**
   * Independent: profiles by plain search over the other parameter, on a likelihood written anew.
   */
  @Test
  void profileLimitsAgreeWithASearch() {
    List<Lifetime> lives = invented(new Random(3), 60);
    WeibullFit fit = fit(lives);
    double depth = fit.logLikelihood() - 1.9207294;
    Interval shape = fit.shape(0.95).interval();
    for (double limit : new double[] {shape.lower(), shape.upper()}) {
      assertEquals(depth, highest(x -> slow(x, Math.log(limit), lives), 3, 9), 1e-5);
    }
    Interval scale = fit.scaleDays(0.95).interval();
    for (double limit : new double[] {scale.lower(), scale.upper()}) {
      assertEquals(depth, highest(y -> slow(Math.log(limit), y, lives), -2, 3), 1e-5);
    }
    PointEstimate share = fit.survival(365, 0.95);
    assertEquals(Math.exp(-Math.pow(365 / fit.scaleDays(), fit.shape())), share.value(), 1e-12);
    for (double limit : new double[] {share.interval().lower(), share.interval().upper()}) {
      double logHazard = Math.log(-Math.log(limit));
      assertEquals(
          depth,
          highest(y -> slow(Math.log(365) - logHazard * Math.exp(-y), y, lives), -2, 3),
          1e-5);
    }
    PointEstimate mean = fit.meanDays(0.95);
    for (double limit : new double[] {mean.interval().lower(), mean.interval().upper()}) {
      assertEquals(
          depth,
          highest(
              y ->
                  slow(
                      Math.log(limit) - org.hipparchus.special.Gamma.logGamma(1 + Math.exp(-y)),
                      y,
                      lives),
              -2,
              3),
          1e-5);
    }
  }

  /**
   * By hand for shape 1: share of the mean beyond t is exp(-t / mean); checked by area otherwise.
   */
  @Test
  void shareExtrapolatedIsTheAreaBeyondTheData() {
    WeibullFit fit = fit(known(Reference.read(FOLDER + "input.csv").where("case", "nist")));
    double area = 0;
    double beyond = 0;
    for (double t = 0.5; t < 6000; t++) {
      double share = Math.exp(-Math.pow(t / fit.scaleDays(), fit.shape()));
      area += share;
      beyond += t > fit.longestDay() ? share : 0;
    }
    assertEquals(area, fit.meanDays(0.95).value(), 1e-2);
    assertEquals(beyond / area, fit.shareOfMeanBeyondLongestDay(), 1e-5);
  }

  @Property(tries = 30, seed = "7")
  void orderAndMergingAreOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 40);
    List<Lifetime> split = new ArrayList<>();
    for (Lifetime life : lives) {
      split.add(life.times(1));
      if (life.count() > 1) {
        split.add(life.times(life.count() - 1));
      }
    }
    Collections.shuffle(split, new Random(seed));
    if (WeibullFit.of(lives) instanceof Estimate.Identified<WeibullFit> one) {
      WeibullFit other = fit(split);
      assertEquals(one.value().shape(), other.shape());
      assertEquals(one.value().scaleDays(0.9), other.scaleDays(0.9));
    } else {
      assertInstanceOf(Estimate.NotIdentified.class, WeibullFit.of(split));
    }
  }

  /** The same lives a thousand times longer: same shape, scale a thousand times longer. */
  @Test
  void longTimesOnlyChangeTheScale() {
    List<Lifetime> lives = invented(new Random(8), 50);
    List<Lifetime> longer = new ArrayList<>();
    for (Lifetime life : lives) {
      longer.add(
          new Lifetime(
              life.entryDay() * 1000,
              life.lowerDay() * 1000,
              life.open() ? Lifetime.NEVER : life.upperDay() * 1000,
              life.count()));
    }
    assertEquals(fit(lives).shape(), fit(longer).shape(), 1e-9);
    assertEquals(1000 * fit(lives).scaleDays(), fit(longer).scaleDays(), 1e-4);
  }

  @Test
  void saysWhyThereIsNoFit() {
    assertBecause("none of the 0 lives", List.of());
    assertBecause("none of the 0 lives", List.of(Lifetime.ended(5, 5)));
    // R survreg returns NA without an error here
    assertBecause(
        "none of the 4 lives",
        List.of(
            Lifetime.goingOn(0, 1),
            Lifetime.goingOn(0, 2),
            Lifetime.goingOn(0, 3),
            Lifetime.goingOn(0, 4)));
    assertBecause("too close together", List.of(Lifetime.ended(0, 5)));
    assertBecause(
        "too close together", List.of(Lifetime.ended(0, 5).times(9), Lifetime.goingOn(0, 5)));
    assertBecause(
        "too roughly",
        List.of(Lifetime.endedWithin(0, 0, 365).times(4), Lifetime.goingOn(0, 365).times(9)));
    assertBecause("too roughly", List.of(Lifetime.endedWithin(0, 0, 365).times(4)));
    assertInstanceOf(
        Estimate.NotIdentified.class,
        WeibullFit.of(
            List.of(
                Lifetime.endedWithin(0, 365, 730).times(4), Lifetime.goingOn(0, 730).times(9))));
    assertInstanceOf(
        Estimate.NotIdentified.class,
        ExponentialFit.of(List.of(Lifetime.endedWithin(0, 0, 365).times(4))));
    assertInstanceOf(
        Estimate.NotIdentified.class, ExponentialFit.of(List.of(Lifetime.goingOn(0, 4))));
  }

  @Test
  void widelySpreadEndsStayFinite() {
    WeibullFit fit = fit(List.of(Lifetime.ended(0, 1), Lifetime.ended(0, 1_000_000)));
    assertTrue(fit.shape() > 0.05 && fit.shape() < 0.5);
    Interval shape = fit.shape(0.95).interval();
    assertTrue(shape.lower() >= 0 && shape.lower() < fit.shape() && fit.shape() < shape.upper());
    PointEstimate share = fit.survival(1000, 0.95);
    assertTrue(share.interval().contains(share.value()));
    assertThrows(IllegalArgumentException.class, () -> fit.survival(0, 0.95));
  }

  /**
   * Yearly looks at 150 lives of shape 1.8 and scale 7 years: 95 % profile intervals of S(5 years)
   * hold the truth. Seeds fixed beforehand; fails only if a binomial test rejects .93 at p &lt;
   * .001 (400 x .93 - 3.1 sd = 356).
   */
  @Test
  void intervalCoversTheTruth() {
    double truth = Math.exp(-Math.pow(5 / 7.0, 1.8));
    int held = 0;
    for (int run = 0; run < 400; run++) {
      Random random = new Random(9000 + run);
      List<Lifetime> lives = new ArrayList<>();
      for (int i = 0; i < 150; i++) {
        double end = 7 * 365 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.8);
        int looks = 3 + random.nextInt(7);
        int before = (int) (end / 365);
        lives.add(
            before < looks
                ? Lifetime.endedWithin(0, 365 * before, 365 * (before + 1))
                : Lifetime.goingOn(0, 365 * looks));
      }
      held += fit(lives).survival(5 * 365, 0.95).interval().contains(truth) ? 1 : 0;
    }
    assertTrue(held >= 356, "held " + held);
  }

  /**
   * Few lives of any kind: a reason, or finite numbers inside their intervals; never an exception.
   */
  @Property(tries = 1000, seed = "7")
  void fewLivesNeverBreakIt(
      @ForAll @IntRange(max = 1_000_000) int seed, @ForAll @IntRange(max = 6) int count) {
    List<Lifetime> lives = invented(new Random(seed), count);
    if (WeibullFit.of(lives) instanceof Estimate.Identified<WeibullFit> identified) {
      WeibullFit fit = identified.value();
      assertInside(fit.shape(0.95));
      assertInside(fit.scaleDays(0.95));
      assertInside(fit.meanDays(0.95));
      assertInside(fit.survival(300, 0.95));
      double beyond = fit.shareOfMeanBeyondLongestDay();
      assertTrue(beyond >= 0 && beyond <= 1, "share beyond " + beyond);
    }
    if (ExponentialFit.of(lives) instanceof Estimate.Identified<ExponentialFit> identified) {
      assertInside(identified.value().meanDays(0.95));
    }
  }

  private static void assertInside(PointEstimate estimate) {
    assertTrue(Double.isFinite(estimate.value()), estimate.toString());
    assertTrue(estimate.standardError() >= 0, estimate.toString());
    assertTrue(estimate.interval().contains(estimate.value()), estimate.toString());
  }

  private static void assertAgrees(String name, WeibullFit fit) {
    assertEquals(EXPECTED.value(name + " weibull shape"), fit.shape(), 1e-7 * fit.shape());
    assertEquals(EXPECTED.value(name + " weibull scale"), fit.scaleDays(), 1e-7 * fit.scaleDays());
    assertEquals(EXPECTED.value(name + " weibull loglik"), fit.logLikelihood(), 1e-8);
    assertEquals(EXPECTED.value(name + " weibull se_mu"), fit.standardErrorLogScale(), 1e-6);
    assertEquals(EXPECTED.value(name + " weibull se_logsigma"), fit.standardErrorLogShape(), 1e-6);
  }

  private static void assertBecause(String words, List<Lifetime> lives) {
    Estimate.NotIdentified<?> reason =
        assertInstanceOf(Estimate.NotIdentified.class, WeibullFit.of(lives));
    assertTrue(reason.because().contains(words), reason.because());
  }

  private static WeibullFit fit(List<Lifetime> lives) {
    return WeibullFit.of(lives).orThrow();
  }

  static List<Lifetime> known(Reference input) {
    List<Lifetime> lives = new ArrayList<>();
    for (Map<String, String> row : input.rows()) {
      int time = (int) Math.round(Double.parseDouble(row.get("time")));
      lives.add(
          row.get("status").equals("1") ? Lifetime.ended(0, time) : Lifetime.goingOn(0, time));
    }
    return lives;
  }

  static List<Lifetime> enclosed(Reference input, int daysPerUnit) {
    List<Lifetime> lives = new ArrayList<>();
    for (Map<String, String> row : input.rows()) {
      int entry = row.containsKey("entry") ? days(row.get("entry"), daysPerUnit) : 0;
      int lower = row.get("left").equals("NA") ? 0 : days(row.get("left"), daysPerUnit);
      int upper =
          row.get("right").equals("NA") ? Lifetime.NEVER : days(row.get("right"), daysPerUnit);
      lives.add(new Lifetime(entry, lower, upper, 1));
    }
    return lives;
  }

  private static int days(String value, int daysPerUnit) {
    return (int) Math.round(daysPerUnit * Double.parseDouble(value));
  }

  static List<Lifetime> invented(Random random, int count) {
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int entry = random.nextInt(3) == 0 ? 1 + random.nextInt(100) : 0;
      int day = entry + 1 + random.nextInt(700);
      Lifetime life =
          switch (random.nextInt(4)) {
            case 0 -> Lifetime.ended(entry, day);
            case 1 -> Lifetime.goingOn(entry, day);
            case 2 -> Lifetime.endedWithin(entry, entry, day);
            default -> Lifetime.endedWithin(entry, day, day + 1 + random.nextInt(300));
          };
      lives.add(life.times(1 + random.nextInt(3)));
    }
    return lives;
  }

  /** The log-likelihood by its definition, by survival shares rather than hazards. */
  private static double slow(double logScale, double logShape, List<Lifetime> lives) {
    double shape = Math.exp(logShape);
    double scale = Math.exp(logScale);
    double sum = 0;
    for (Lifetime life : lives) {
      double lower = share(life.lowerDay(), shape, scale);
      double here;
      if (life.open()) {
        here = lower;
      } else if (life.exact()) {
        here = shape / scale * Math.pow(life.lowerDay() / scale, shape - 1) * lower;
      } else {
        here = lower - share(life.upperDay(), shape, scale);
      }
      sum += life.count() * Math.log(here / share(life.entryDay(), shape, scale));
    }
    return sum;
  }

  private static double share(double day, double shape, double scale) {
    return Math.exp(-Math.pow(day / scale, shape));
  }

  /** The highest value of a function with one peak, by golden section. */
  static double highest(java.util.function.DoubleUnaryOperator f, double lower, double upper) {
    double ratio = (Math.sqrt(5) - 1) / 2;
    double a = lower;
    double b = upper;
    while (b - a > 1e-9) {
      double left = b - ratio * (b - a);
      double right = a + ratio * (b - a);
      double atLeft = f.applyAsDouble(left);
      double atRight = f.applyAsDouble(right);
      if (atLeft > atRight || Double.isNaN(atRight)) {
        b = right;
      } else {
        a = left;
      }
    }
    return f.applyAsDouble((a + b) / 2);
  }
}
