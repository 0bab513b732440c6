package sealspan.stats.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
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
import sealspan.stats.Interval;
import sealspan.stats.rates.HiddenFailureRate;
import sealspan.stats.rates.HiddenFailures;

/** Tests that fail with probability 1 - exp(-rate x days): by hand, and by slow algorithms. */
class HiddenFailureRegressionTest {

  /** By hand: groups of equal exposure have rate -log(1 - share) / days. */
  @Test
  void twoGroupsByHand() {
    double[] failed = {1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0};
    double[] second = new double[20];
    double[] offset = new double[20];
    Arrays.fill(second, 10, 20, 1);
    Arrays.fill(offset, 0, 10, Math.log(2));
    Observations data =
        Observations.of(Design.ofRows(20).constant().column("second", second), failed)
            .offset(offset);
    RegressionFit fit = Regression.fit(Family.CLOGLOG, data).orThrow();
    double first = -Math.log(.8) / 2;
    assertEquals(Math.log(first), fit.coefficient("constant"), 1e-12);
    assertEquals(Math.log(-Math.log(.5) / first), fit.coefficient("second"), 1e-12);
    assertEquals(
        10 * .8 * Math.log(.8) + 10 * .2 * Math.log(.2) + 10 * Math.log(.5),
        fit.logLikelihood(),
        1e-12);
    // Expected information of log rate: n h^2 (1 - p) / p
    double h = -Math.log(.8);
    double k = Math.log(2);
    double variance = .2 / (10 * h * h * .8) + .5 / (10 * k * k * .5);
    assertEquals(Math.sqrt(variance), fit.modelStandardError("second"), 1e-12);
    assertEquals(.5, fit.mean(new double[] {1, 1}, 0), 1e-12);
  }

  /** Another implementation of the same likelihood, for a single unit with unequal exposures. */
  @Property(tries = 100, seed = "5")
  void aConstantAloneIsTheHiddenFailureRate(@ForAll Random random) {
    int n = 3 + random.nextInt(40);
    int[] days = new int[n];
    double[] offset = new double[n];
    double[] response = new double[n];
    boolean[] failed = new boolean[n];
    for (int i = 0; i < n; i++) {
      days[i] = 1 + (int) Math.exp(random.nextDouble() * 8);
      failed[i] = i == 0 || i > 1 && random.nextDouble() < 1 - Math.exp(-days[i] / 500.);
      offset[i] = Math.log(days[i]);
      response[i] = failed[i] ? 1 : 0;
    }
    HiddenFailures unit = HiddenFailures.of(days, failed);
    Observations data = Observations.of(Design.ofRows(n).constant(), response).offset(offset);
    RegressionFit fit = Regression.fit(Family.CLOGLOG, data).orThrow();
    double rate = HiddenFailureRate.maximumLikelihood(unit);
    assertEquals(Math.log(rate), fit.coefficient("constant"), 1e-9);
    Interval profile = ProfiledCoefficient.interval(Family.CLOGLOG, data, "constant", .95);
    Interval other = HiddenFailureRate.likelihoodRatioInterval(unit, .95);
    assertEquals(Math.log(other.lower()), profile.lower(), 1e-7);
    assertEquals(Math.log(other.upper()), profile.upper(), 1e-7);
  }

  /** Independent: a search without derivatives, and a sandwich from differences of likelihoods. */
  @Property(tries = 20, seed = "5")
  void agreesWithSlowAlgorithms(@ForAll Random random) {
    Family family = Family.values()[random.nextInt(3)];
    Observations data = draw(random, family, 120);
    RegressionFit fit = Regression.fit(family, data).orThrow();
    MultivariateFunction likelihood = b -> slowLogLikelihood(family, data, b, -1);
    double[] slow =
        new SimplexOptimizer(new SimpleValueChecker(1e-15, 1e-15))
            .optimize(
                new MaxEval(20_000),
                new ObjectiveFunction(likelihood),
                GoalType.MAXIMIZE,
                new InitialGuess(new double[] {-1, 0, 0}),
                new NelderMeadSimplex(3))
            .getPoint();
    for (int j = 0; j < 3; j++) {
      assertEquals(slow[j], fit.coefficients()[j], 1e-4);
    }
    assertTrue(likelihood.value(fit.coefficients()) >= likelihood.value(slow) - 1e-9);
    double[][] meat = new double[3][3];
    for (int c = 0; c < 30; c++) {
      double[] score = new double[3];
      for (int j = 0; j < 3; j++) {
        score[j] = slope(family, data, fit.coefficients(), j, c);
      }
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 3; k++) {
          meat[j][k] += score[j] * score[k];
        }
      }
    }
    for (int j = 0; j < 3; j++) {
      double sum = 0;
      for (int k = 0; k < 3; k++) {
        for (int l = 0; l < 3; l++) {
          sum += fit.modelCovariance()[j][k] * meat[k][l] * fit.modelCovariance()[l][j];
        }
      }
      assertEquals(sum, fit.sandwich()[j][j], 1e-6 * sum);
    }
  }

  /** Twice the weight is twice the row. */
  @Property(tries = 20, seed = "5")
  void weightsAreRepeatedRows(@ForAll Random random) {
    Observations data = draw(random, Family.CLOGLOG, 60);
    double[] weight = new double[60];
    Arrays.setAll(weight, i -> i % 3);
    int[] rows =
        java.util.stream.IntStream.range(0, 60)
            .flatMap(i -> java.util.stream.IntStream.range(0, i % 3).map(k -> i))
            .toArray();
    Design design = Design.ofRows(rows.length);
    for (int j = 0; j < 3; j++) {
      double[] values = data.design().values(j);
      design =
          design.column(
              data.design().names().get(j),
              Arrays.stream(rows).mapToDouble(i -> values[i]).toArray());
    }
    Observations repeated =
        Observations.of(design, Arrays.stream(rows).mapToDouble(i -> data.response()[i]).toArray())
            .offset(Arrays.stream(rows).mapToDouble(i -> data.offset()[i]).toArray())
            .cluster(Arrays.stream(rows).map(i -> data.cluster()[i]).toArray());
    Estimate<RegressionFit> weighted = Regression.fit(Family.CLOGLOG, data.weight(weight));
    Estimate<RegressionFit> slow = Regression.fit(Family.CLOGLOG, repeated);
    if (slow instanceof Estimate.Identified<RegressionFit> fit) {
      assertEquals(fit.value().coefficient("x"), weighted.orThrow().coefficient("x"), 1e-9);
      assertEquals(fit.value().sandwich()[1][1], weighted.orThrow().sandwich()[1][1], 1e-9);
      assertEquals(fit.value().deviance(), weighted.orThrow().deviance(), 1e-9);
    } else {
      assertInstanceOf(Estimate.NotIdentified.class, weighted);
    }
  }

  @Test
  void hardInputsGetAPlainWord() {
    Design none = Design.ofRows(0).constant();
    assertEquals(
        Estimate.notIdentified("there is no observation"),
        Regression.fit(Family.CLOGLOG, Observations.of(none, new double[0])));
    Design two = Design.ofRows(2).constant();
    assertEquals(
        Estimate.notIdentified("none of the 2 observations failed"),
        Regression.fit(Family.CLOGLOG, Observations.of(two, new double[] {0, 0})));
    assertEquals(
        Estimate.notIdentified("all of the 2 observations failed"),
        Regression.fit(Family.LOGISTIC, Observations.of(two, new double[] {1, 1})));
    assertEquals(
        Estimate.notIdentified("the column twice follows from the columns before it"),
        Regression.fit(
            Family.LOGISTIC,
            Observations.of(two.column("twice", new double[] {2, 2}), new double[] {0, 1})));
    RegressionFit one =
        Regression.fit(
                Family.LOGISTIC, Observations.of(two, new double[] {0, 1}).cluster(new int[2]))
            .orThrow();
    assertInstanceOf(Estimate.NotIdentified.class, one.clustered("constant", .95));
  }

  /** Exposures from a day to a million days, and columns in very different units. */
  @Test
  void wideRangesDoNotDisturbTheFit() {
    Random random = new Random(11);
    int n = 4_000;
    double[] x = new double[n];
    double[] offset = new double[n];
    double[] failed = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = 1e6 * random.nextGaussian();
      offset[i] = random.nextDouble() * Math.log(1e6);
      double hazard = Math.exp(-7 + .5e-6 * x[i] + offset[i]);
      failed[i] = random.nextDouble() < -Math.expm1(-hazard) ? 1 : 0;
    }
    Observations data =
        Observations.of(Design.ofRows(n).constant().column("x", x), failed).offset(offset);
    RegressionFit fit = Regression.fit(Family.CLOGLOG, data).orThrow();
    double se = fit.modelStandardError("x");
    assertTrue(se > 0 && se < .05e-6);
    assertEquals(.5e-6, fit.coefficient("x"), 4 * se);
    assertEquals(-7, fit.coefficient("constant"), 4 * fit.modelStandardError("constant"));
  }

  private static Observations draw(Random random, Family family, int n) {
    double[] x = new double[n];
    double[] z = new double[n];
    double[] offset = new double[n];
    double[] response = new double[n];
    int[] cluster = new int[n];
    for (int i = 0; i < n; i++) {
      x[i] = random.nextGaussian();
      z[i] = random.nextInt(2);
      offset[i] = random.nextGaussian() / 2;
      cluster[i] = i % 30;
      double mean = family.mean(-.5 + .6 * x[i] - .4 * z[i] + offset[i]);
      response[i] =
          family == Family.POISSON
              ? (int) (mean + random.nextDouble())
              : random.nextDouble() < mean ? 1 : 0;
    }
    return Observations.of(Design.ofRows(n).constant().column("x", x).column("z", z), response)
        .offset(offset)
        .cluster(cluster);
  }

  /** The likelihood as written in a textbook; of one cluster, or of all for -1. */
  private static double slowLogLikelihood(
      Family family, Observations data, double[] b, int cluster) {
    double sum = 0;
    for (int i = 0; i < data.response().length; i++) {
      if (cluster >= 0 && data.cluster()[i] != cluster) {
        continue;
      }
      double eta = data.offset()[i];
      for (int j = 0; j < b.length; j++) {
        eta += b[j] * data.design().values(j)[i];
      }
      double y = data.response()[i];
      double p =
          switch (family) {
            case LOGISTIC -> Math.exp(eta) / (1 + Math.exp(eta));
            case CLOGLOG -> 1 - Math.exp(-Math.exp(eta));
            case POISSON -> 0;
          };
      sum +=
          family == Family.POISSON
              ? y * eta - Math.exp(eta)
              : y == 1 ? Math.log(p) : Math.log(1 - p);
    }
    return sum;
  }

  private static double slope(
      Family family, Observations data, double[] at, int column, int cluster) {
    double[] up = at.clone();
    double[] down = at.clone();
    up[column] += 1e-5;
    down[column] -= 1e-5;
    return (slowLogLikelihood(family, data, up, cluster)
            - slowLogLikelihood(family, data, down, cluster))
        / 2e-5;
  }
}
