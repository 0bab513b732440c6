package sealspan.stats.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;

class StratifiedRegressionTest {
  private static final String CASE = "14_count_logit_regression/";

  /** By hand: 3 of 10 failed with and 2 of 20 without, all tested after one year. */
  @Test
  void oneStratumByHand() {
    double[] failed = new double[30];
    double[] exposed = new double[30];
    Arrays.fill(exposed, 0, 10, 1);
    Arrays.fill(failed, 0, 3, 1);
    Arrays.fill(failed, 10, 12, 1);
    Observations data = Observations.of(Design.ofRows(30).column("exposed", exposed), failed);
    StratifiedFit fit = StratifiedRegression.fit(Family.CLOGLOG, data, new int[30]).orThrow();
    assertEquals(Math.log(Math.log(.7) / Math.log(.9)), fit.coefficient("exposed"), 1e-10);
    assertEquals(30 - 2, fit.degreesOfFreedom());
    // One row in two strata more, in which nothing or everything failed, changes nothing.
    double[] more = Arrays.copyOf(failed, 34);
    more[32] = 1;
    more[33] = 1;
    double[] exposedToo = Arrays.copyOf(exposed, 34);
    exposedToo[30] = 1;
    exposedToo[32] = 1;
    int[] stratum = new int[34];
    Arrays.fill(stratum, 30, 32, 5);
    Arrays.fill(stratum, 32, 34, 7);
    StratifiedFit same =
        StratifiedRegression.fit(
                Family.CLOGLOG,
                Observations.of(Design.ofRows(34).column("exposed", exposedToo), more),
                stratum)
            .orThrow();
    assertEquals(fit.coefficient("exposed"), same.coefficient("exposed"), 1e-12);
    assertEquals(30, same.rows().length);
    assertEquals(1, same.strata());
  }

  /** R 4.2.2, glm with a factor of zones, reference case 14. */
  @Test
  void countsByZoneAgreeWithR() {
    Reference file = Reference.read(CASE + "input_lag.csv");
    Design design = Design.ofRows(file.rows().size());
    for (String name : List.of("turb0", "turb1", "turb2", "turb3")) {
      design = design.column(name, RegressionTest.column(file, name));
    }
    Observations data =
        Observations.of(design, RegressionTest.column(file, "fouled"))
            .offset(
                Arrays.stream(RegressionTest.column(file, "exposure"))
                    .map(StrictMath::log)
                    .toArray());
    int[] zone =
        Arrays.stream(RegressionTest.column(file, "zone")).mapToInt(z -> (int) z).toArray();
    StratifiedFit fit = StratifiedRegression.fit(Family.POISSON, data, zone).orThrow();
    Reference expected = Reference.read(CASE + "expected.csv");
    for (String name : List.of("turb0", "turb1", "turb2", "turb3")) {
      assertEquals(expected.value("lag zone-FE " + name), fit.coefficient(name), 1e-9);
    }
  }

  /** Beside the ordinary regression with a column for every stratum. */
  @Test
  void eliminatedConstantsAreThoseOfColumns() {
    for (Family family : List.of(Family.POISSON, Family.CLOGLOG)) {
      Random random = new Random(11);
      int n = 600;
      double[] x = new double[n];
      double[] z = new double[n];
      double[] y = new double[n];
      double[] offset = new double[n];
      int[] stratum = new int[n];
      String[] names = new String[n];
      int[] cluster = new int[n];
      for (int i = 0; i < n; i++) {
        stratum[i] = random.nextInt(9);
        names[i] = "s" + stratum[i];
        cluster[i] = random.nextInt(40);
        x[i] = random.nextInt(2);
        z[i] = random.nextGaussian() + stratum[i];
        offset[i] = Math.log(.5 + random.nextDouble());
        double hazard = Math.exp(offset[i] - 2 + .7 * x[i] + .1 * z[i]);
        y[i] = random.nextDouble() < -Math.expm1(-hazard) ? 1 : 0;
      }
      Design slim = Design.ofRows(n).column("x", x).column("z", z);
      Observations data = Observations.of(slim, y).offset(offset);
      StratifiedFit fit = StratifiedRegression.fit(family, data, stratum).orThrow();
      RegressionFit wide =
          Regression.fit(
                  family, data.design(slim.constant().factor("s", names, "s0")).cluster(cluster))
              .orThrow();
      for (String name : List.of("x", "z")) {
        assertEquals(wide.coefficient(name), fit.coefficient(name), 1e-8);
        assertEquals(
            wide.modelStandardError(name), fit.modelBased(name, .95).standardError(), 1e-8);
        PointEstimate expected = wide.clustered(name, .95).orThrow();
        PointEstimate found = fit.clustered(name, cluster, .95).orThrow();
        assertEquals(expected.standardError(), found.standardError(), 1e-8);
        assertEquals(expected.interval().upper(), found.interval().upper(), 1e-7);
        Interval wideProfile =
            ProfiledCoefficient.interval(family, data.design(wideDesign(slim, names)), name, .95);
        Interval profile = StratifiedRegression.profile(family, data, stratum, name, .95);
        assertEquals(wideProfile.lower(), profile.lower(), 1e-6);
        assertEquals(wideProfile.upper(), profile.upper(), 1e-6);
      }
      assertEquals(wide.pearson(), fit.pearson(), 1e-6);
      assertEquals(wide.clusters(), fit.clusters(cluster));
    }
  }

  private static Design wideDesign(Design slim, String[] names) {
    return slim.constant().factor("s", names, "s0");
  }

  /** Beside the likelihood given the totals of the strata, searched by narrowing an interval. */
  @Test
  void countsAreThoseOfTheLikelihoodGivenTotals() {
    Random random = new Random(3);
    int n = 200;
    double[] x = random.doubles(n).toArray();
    double[] atRisk = random.doubles(n, .2, 3).toArray();
    double[] y = new double[n];
    int[] stratum = new int[n];
    for (int i = 0; i < n; i++) {
      stratum[i] = i / 4;
      double mean = atRisk[i] * Math.exp(.8 * x[i] + random.nextInt(2));
      for (double at = -Math.log(random.nextDouble()); at < mean; ) {
        y[i]++;
        at -= Math.log(random.nextDouble());
      }
    }
    Observations data =
        Observations.of(Design.ofRows(n).column("x", x), y)
            .offset(Arrays.stream(atRisk).map(Math::log).toArray());
    StratifiedFit fit = StratifiedRegression.fit(Family.POISSON, data, stratum).orThrow();
    double low = -5;
    double high = 5;
    while (high - low > 1e-9) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      if (given(y, atRisk, x, stratum, a) < given(y, atRisk, x, stratum, b)) {
        low = a;
      } else {
        high = b;
      }
    }
    assertEquals(low, fit.coefficient("x"), 1e-6);
    double h = 1e-4;
    double bend =
        (given(y, atRisk, x, stratum, low + h)
                - 2 * given(y, atRisk, x, stratum, low)
                + given(y, atRisk, x, stratum, low - h))
            / (h * h);
    assertEquals(1 / Math.sqrt(-bend), fit.modelBased("x", .95).standardError(), 1e-4);
  }

  private static double given(double[] y, double[] atRisk, double[] x, int[] stratum, double b) {
    double sum = 0;
    for (int s = 0; s <= stratum[stratum.length - 1]; s++) {
      double weights = 0;
      for (int i = 0; i < y.length; i++) {
        weights += stratum[i] == s ? atRisk[i] * Math.exp(b * x[i]) : 0;
      }
      for (int i = 0; i < y.length; i++) {
        sum += stratum[i] == s ? y[i] * Math.log(atRisk[i] * Math.exp(b * x[i]) / weights) : 0;
      }
    }
    return sum;
  }

  @Test
  void whatCannotBeTold() {
    double[] x = {0, 0, 1, 1, 0, 0, 1, 1};
    int[] stratum = {0, 0, 0, 0, 1, 1, 1, 1};
    Design design = Design.ofRows(8).column("x", x);
    double[] none = new double[8];
    double[] apart = {1, 0, 0, 0, 0, 1, 0, 0};
    assertEquals(
        Estimate.notIdentified("there is no stratum with an event"),
        StratifiedRegression.fit(Family.POISSON, Observations.of(design, none), stratum));
    double[] all = {1, 1, 1, 1, 1, 1, 1, 1};
    assertEquals(
        Estimate.notIdentified("there is no stratum with an event"),
        StratifiedRegression.fit(Family.CLOGLOG, Observations.of(design, all), stratum));
    assertEquals(
        Estimate.notIdentified(
            "the outcomes are separated by x, so the likelihood has no highest point"),
        StratifiedRegression.fit(Family.POISSON, Observations.of(design, apart), stratum));
    assertEquals(
        Estimate.notIdentified("within strata, the column x follows from the columns before it"),
        StratifiedRegression.fit(
            Family.POISSON, Observations.of(design, apart), new int[] {0, 0, 1, 1, 0, 0, 1, 1}));
    // By hand: two events beside as many days with none: 2 x 2 x log(1 + exp(b)) = 3.8415.
    Interval profile =
        StratifiedRegression.profile(
            Family.POISSON, Observations.of(design, apart), stratum, "x", .95);
    assertEquals(Double.NEGATIVE_INFINITY, profile.lower());
    assertEquals(Math.log(Math.expm1(3.841459 / 4)), profile.upper(), 1e-6);
    assertThrows(
        IllegalArgumentException.class,
        () -> StratifiedRegression.fit(Family.LOGISTIC, Observations.of(design, apart), stratum));
    StratifiedFit single =
        StratifiedRegression.fit(
                Family.POISSON,
                Observations.of(design, new double[] {1, 0, 1, 1, 0, 1, 0, 1}),
                stratum)
            .orThrow();
    assertEquals(
        Estimate.notIdentified(
            "there are too few clusters for a standard error that allows for dependence: 1"),
        single.clustered("x", new int[8], .95));
    assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5, 6, 7}, single.rows());
  }
}
