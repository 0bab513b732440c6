package sealspan.stats.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;
import sealspan.stats.effect.MatchedChoice.Fit;
import sealspan.stats.effect.MatchedChoice.Stratum;

class MatchedChoiceTest {
  private static final Reference EXPECTED =
      Reference.read("14_count_logit_regression/expected.csv");

  private static List<Stratum> strata(
      String file, String stratum, String failed, String... covariates) {
    Map<String, List<Map<String, String>>> groups = new LinkedHashMap<>();
    for (Map<String, String> row : Reference.read("14_count_logit_regression/" + file).rows()) {
      groups.computeIfAbsent(row.get(stratum), s -> new ArrayList<>()).add(row);
    }
    List<Stratum> strata = new ArrayList<>();
    for (List<Map<String, String>> rows : groups.values()) {
      double[][] x = new double[rows.size()][covariates.length];
      boolean[] y = new boolean[rows.size()];
      for (int i = 0; i < y.length; i++) {
        y[i] = rows.get(i).get(failed).equals("1");
        for (int j = 0; j < covariates.length; j++) {
          x[i][j] = Double.parseDouble(rows.get(i).get(covariates[j]));
        }
      }
      strata.add(new Stratum(x, y));
    }
    return strata;
  }

  /** R's clogit, exact; Trichopoulos 1976 gives 1.9859 and 1.4090 (from memory). */
  @Test
  void infertilityAfterAbortions() {
    Fit fit =
        MatchedChoice.fit(
                strata("input_infert.csv", "stratum", "case", "spontaneous", "induced"),
                new double[2])
            .orThrow();
    assertEquals(EXPECTED.value("infert exact spontaneous"), fit.coefficients()[0], 1e-9);
    assertEquals(EXPECTED.value("infert exact induced"), fit.coefficients()[1], 1e-9);
    assertEquals(EXPECTED.value("infert exact loglik"), fit.logLikelihood(), 1e-9);
    assertEquals(EXPECTED.value("infert exact se1"), fit.standardErrors()[0], 1e-8);
    assertEquals(EXPECTED.value("infert exact se2"), fit.standardErrors()[1], 1e-8);
  }

  /** R's clogit on the endometrial cancer study of Breslow and Day. */
  @Test
  void endometrialCancer() {
    Fit fit =
        MatchedChoice.fit(strata("input_bdendo.csv", "set", "d", "gall", "est"), new double[2])
            .orThrow();
    assertEquals(EXPECTED.value("bdendo gall"), fit.coefficients()[0], 1e-9);
    assertEquals(EXPECTED.value("bdendo est"), fit.coefficients()[1], 1e-9);
    assertEquals(EXPECTED.value("bdendo loglik"), fit.logLikelihood(), 1e-9);
    double alone =
        MatchedChoice.fit(strata("input_bdendo.csv", "set", "d", "gall"), new double[1])
            .orThrow()
            .oddsRatio(0, 0.95)
            .value();
    assertEquals(EXPECTED.value("bdendo gall only OR"), alone, 1e-6);
  }

  /** Several failures in a stratum: the exact likelihood of R's clogit, not an approximation. */
  @Test
  void severalFailuresInAStratum() {
    Fit fit =
        MatchedChoice.fit(strata("input_km_matched.csv", "stratum", "case", "x"), new double[1])
            .orThrow();
    assertEquals(EXPECTED.value("k:M exact x"), fit.coefficients()[0], 1e-8);
    assertEquals(EXPECTED.value("k:M exact loglik"), fit.logLikelihood(), 1e-9);
  }

  /**
   * By hand: pairs with one failure each, 12 where the first action failed and 4 where the second
   * did; the odds ratio is 12/4 and the standard error of its log is sqrt(1/12 + 1/4).
   */
  @Test
  void discordantPairs() {
    List<Stratum> pairs = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      pairs.add(new Stratum(new double[][] {{1}, {0}}, new boolean[] {i < 12, i >= 12}));
    }
    pairs.add(new Stratum(new double[][] {{1}, {0}}, new boolean[] {true, true}));
    Fit fit = MatchedChoice.fit(pairs, new double[1]).orThrow();
    assertEquals(3, fit.oddsRatio(0, 0.95).value(), 1e-9);
    assertEquals(Math.sqrt(1 / 12.0 + 1 / 4.0), fit.standardErrors()[0], 1e-9);
    assertEquals(16, fit.strata());
  }

  /** Against the sum over all subsets, written down one by one. */
  @Test
  void longStrataAgreeWithAllSubsets() {
    double[] x = {0.3, -1.2, 2.5, 0.1, 0.9, -0.4, 1.7, -2.2, 0.6};
    boolean[] failed = {true, false, true, false, false, true, true, false, false};
    double[][] rows = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      rows[i] = new double[] {x[i]};
    }
    double beta = 0.8;
    double all = 0;
    for (int set = 0; set < 1 << x.length; set++) {
      if (Integer.bitCount(set) == 4) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
          sum += (set >> i & 1) == 1 ? x[i] : 0;
        }
        all += Math.exp(beta * sum);
      }
    }
    double mine = beta * (0.3 + 2.5 - 0.4 + 1.7) - Math.log(all);
    MatchedLikelihood likelihood =
        MatchedLikelihood.of(
            List.of(new Stratum(rows, failed)), new double[] {beta}, new double[1]);
    assertEquals(mine, likelihood.logLikelihood(), 1e-12);
  }

  /** 3,000 cases in one stratum: sums over subsets beyond the range of a double. */
  @Test
  void aHugeStratumDoesNotOverflow() {
    double[][] rows = new double[3_000][1];
    boolean[] failed = new boolean[rows.length];
    for (int i = 0; i < rows.length; i++) {
      rows[i][0] = i % 2;
      failed[i] = i % 3 == 0 || i % 2 == 1 && i % 5 == 0;
    }
    Fit fit = MatchedChoice.fit(List.of(new Stratum(rows, failed)), new double[1]).orThrow();
    // By hand: of 1,500 odd cases 500 + 200 failed, of 1,500 even ones 500; one large stratum is
    // nearly the plain odds ratio (700/800)/(500/1000).
    assertEquals(1.75, fit.oddsRatio(0, 0.95).value(), 0.002);
  }

  @Test
  void saysWhenNothingCanBeCompared() {
    assertNot("in no stratum", List.of());
    assertNot(
        "in no stratum",
        List.of(new Stratum(new double[][] {{1}, {0}}, new boolean[] {true, true})));
    List<Stratum> onesided = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      onesided.add(new Stratum(new double[][] {{1}, {0}}, new boolean[] {true, false}));
    }
    assertNot("one covariate decides", onesided);
  }

  private static void assertNot(String because, List<Stratum> strata) {
    Estimate<Fit> fit = MatchedChoice.fit(strata, new double[1]);
    assertTrue(
        fit instanceof Estimate.NotIdentified<Fit> none && none.because().contains(because),
        fit.toString());
  }
}
