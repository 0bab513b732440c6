package sealspan.stats.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;

/** Against R 4.2.2 (glm, sandwich 3.0-2), reference case 14. */
class RegressionTest {
  private static final String CASE = "14_count_logit_regression/";
  private static final List<Map<String, String>> EXPECTED =
      Reference.read(CASE + "expected.csv").rows();

  /** Also McCullagh and Nelder 1989, 6.3.2 (from memory): -.54, .33, .70, .82, .38; 38.7 on 25. */
  @Test
  void countsOfShipsAgreeWithR() {
    RegressionFit fit = Regression.fit(Family.POISSON, ships()).orThrow();
    Map<String, String> names =
        Map.of(
            "constant", "(Intercept)",
            "type=B", "typeB",
            "type=C", "typeC",
            "type=D", "typeD",
            "type=E", "typeE",
            "year=65", "year65",
            "year=70", "year70",
            "year=75", "year75",
            "period=75", "period75");
    agree("ships ", fit, names);
    assertEquals(-.54, fit.coefficient("type=B"), .005);
    assertEquals(.70, fit.coefficient("year=65"), .005);
    assertEquals(38.7, fit.deviance(), .05);
    assertEquals(expected("ships quasi dispersion"), fit.pearson() / fit.degreesOfFreedom(), 1e-9);
  }

  /** Also Hosmer and Lemeshow (from memory): deviance 201.28, smoke .939. */
  @Test
  void lowBirthWeightAgreesWithR() {
    Reference file = Reference.read(CASE + "input_birthwt.csv");
    Design design = Design.ofRows(file.rows().size()).constant();
    for (String name : List.of("age", "lwt", "smoke", "ptl", "ht", "ui", "ftv")) {
      design = design.column(name, column(file, name));
    }
    design = design.factor("race", text(file, "race"), "1");
    RegressionFit fit =
        Regression.fit(Family.LOGISTIC, Observations.of(design, column(file, "low"))).orThrow();
    Map<String, String> names =
        Map.of(
            "constant", "(Intercept)",
            "age", "age",
            "lwt", "lwt",
            "race=2", "race2",
            "race=3", "race3",
            "smoke", "smoke",
            "ptl", "ptl",
            "ht", "ht",
            "ui", "ui");
    agree("birthwt ", fit, names);
    names.forEach(
        (ours, theirs) -> {
          int j = fit.names().indexOf(ours);
          double expected = expected("birthwt " + theirs + " se_robust");
          assertEquals(expected, Math.sqrt(fit.sandwich()[j][j]), 1e-7 * expected, ours);
        });
    assertEquals(201.28, fit.deviance(), .005);
  }

  /** Monthly counts of twelve zones; sandwich HC0 with and without the correction, by zone. */
  @Test
  void clusteredErrorsAgreeWithR() {
    Reference file = Reference.read(CASE + "input_lag.csv");
    RegressionFit fit = Regression.fit(Family.POISSON, lag(file, "zone")).orThrow();
    for (String name : List.of("turb0", "turb1", "turb2", "turb3")) {
      int j = fit.names().indexOf(name);
      assertEquals(expected("lag " + name + " coef"), fit.coefficient(name), 1e-9);
      assertEquals(expected("lag " + name + " se"), fit.modelStandardError(name), 1e-9);
      assertEquals(
          expected("lag cluster se HC0 cadjust FALSE " + name),
          Math.sqrt(fit.sandwich()[j][j]),
          1e-9);
      PointEstimate clustered = fit.clustered(name, .95).orThrow();
      assertEquals(
          expected("lag cluster se HC0 cadjust TRUE " + name), clustered.standardError(), 1e-9);
      // t quantile with 11 degrees of freedom, any table: 2.201
      assertEquals(
          2.201 * clustered.standardError(),
          clustered.interval().upper() - clustered.value(),
          .0003 * clustered.standardError());
    }
    assertEquals(12, fit.clusters());
    assertEquals(expected("lag deviance"), fit.deviance(), 1e-7);
    assertEquals(expected("lag pearson"), fit.pearson(), 1e-7);
  }

  @Test
  void oneLevelPerZoneAgreesWithR() {
    Reference file = Reference.read(CASE + "input_lag.csv");
    Observations data = lag(file, "month");
    data = data.design(data.design().factor("zone", text(file, "zone"), "1"));
    RegressionFit fit = Regression.fit(Family.POISSON, data).orThrow();
    for (String name : List.of("turb0", "turb1", "turb2", "turb3")) {
      assertEquals(expected("lag zone-FE " + name), fit.coefficient(name), 1e-9);
    }
  }

  /** R gives -22.4 and no warning that tells a person so; the ratio statistic still stands. */
  @Test
  void aLevelWithoutAnEventIsNamed() {
    Reference file = Reference.read(CASE + "input_zero_level.csv");
    Design constant = Design.ofRows(file.rows().size()).constant();
    Design design = constant.column("x", column(file, "x"));
    Observations data = Observations.of(design, column(file, "n"));
    assertEquals(
        Estimate.notIdentified(
            "the outcomes are separated by x, so the likelihood has no highest point"),
        Regression.fit(Family.POISSON, data));
    double ratio =
        2
            * (Regression.highestLogLikelihood(Family.POISSON, data)
                - Regression.highestLogLikelihood(Family.POISSON, data.design(constant)));
    assertEquals(expected("zero level LRT"), ratio, 1e-7);
    Interval interval = ProfiledCoefficient.interval(Family.POISSON, data, "x", .95);
    assertEquals(Double.NEGATIVE_INFINITY, interval.lower());
    // By hand: 9 events in 3 rows against none in 3: 2 x 9 x log(1 + exp(b)) = 3.8415
    assertEquals(Math.log(Math.expm1(3.841459 / 18)), interval.upper(), 1e-6);
  }

  @Test
  void separatedOutcomesAreNamed() {
    Design design = Design.ofRows(6).constant().column("x", new double[] {1, 2, 3, 4, 5, 6});
    Observations data = Observations.of(design, new double[] {0, 0, 0, 1, 1, 1});
    for (Family family : List.of(Family.LOGISTIC, Family.CLOGLOG)) {
      assertEquals(
          Estimate.notIdentified(
              "the outcomes are separated by constant and x, so the likelihood has no highest"
                  + " point"),
          Regression.fit(family, data));
      RegressionFit pulled = Regression.fit(family, data, new Ridge(1)).orThrow();
      assertTrue(pulled.coefficient("x") > 0 && pulled.coefficient("x") < 3);
    }
  }

  private static void agree(String prefix, RegressionFit fit, Map<String, String> names) {
    names.forEach(
        (ours, theirs) -> {
          double coefficient = expected(prefix + theirs + " coef");
          double se = expected(prefix + theirs + " se");
          assertEquals(coefficient, fit.coefficient(ours), 1e-8 * Math.abs(coefficient), ours);
          assertEquals(se, fit.modelStandardError(ours), 1e-7 * se, ours);
        });
    assertEquals(expected(prefix + "deviance"), fit.deviance(), 1e-8);
    assertEquals(expected(prefix + "loglik"), fit.logLikelihood(), 1e-8);
    assertEquals(expected(prefix + "pearson"), fit.pearson(), 1e-7);
    assertEquals(expected(prefix + "df"), fit.degreesOfFreedom());
  }

  private static Observations ships() {
    Reference file = Reference.read(CASE + "input_ships.csv");
    Design design =
        Design.ofRows(file.rows().size())
            .constant()
            .factor("type", text(file, "type"), "A")
            .factor("year", text(file, "year"), "60")
            .factor("period", text(file, "period"), "60");
    return Observations.of(design, column(file, "incidents"))
        .offset(logarithms(column(file, "service")));
  }

  private static Observations lag(Reference file, String cluster) {
    Design design = Design.ofRows(file.rows().size()).constant();
    for (String name : List.of("turb0", "turb1", "turb2", "turb3")) {
      design = design.column(name, column(file, name));
    }
    int[] clusters = file.rows().stream().mapToInt(r -> Integer.parseInt(r.get(cluster))).toArray();
    return Observations.of(design, column(file, "fouled"))
        .offset(logarithms(column(file, "exposure")))
        .cluster(clusters);
  }

  private static double expected(String quantity) {
    return EXPECTED.stream()
        .filter(row -> row.get("quantity").equals(quantity))
        .mapToDouble(row -> Double.parseDouble(row.get("value")))
        .findFirst()
        .orElseThrow();
  }

  static double[] column(Reference file, String name) {
    return file.rows().stream().mapToDouble(row -> Double.parseDouble(row.get(name))).toArray();
  }

  private static String[] text(Reference file, String name) {
    return file.rows().stream().map(row -> row.get(name)).toArray(String[]::new);
  }

  private static double[] logarithms(double[] values) {
    return java.util.Arrays.stream(values).map(StrictMath::log).toArray();
  }
}
