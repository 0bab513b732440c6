package sealspan.stats.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.LiveR;

/** The comparison of two actions against R on random data. */
@LiveR.Needed
class EffectAgainstRTest {
  private static final String RISKS =
      String.join(
          "\n",
          "s <- function(v) (v - mean(v)) / sqrt(mean((v - mean(v))^2))",
          "X <- cbind(1, s(a), s(b))",
          "climb <- function(f, g) optim(rep(0, 3), f, g, method = 'BFGS',",
          "  control = list(fnscale = -1, reltol = 1e-16, maxit = 2000))$par",
          "ridge <- c(0, 1, 1)",
          "g <- climb(function(p) sum(dbinom(second, 1, plogis(X %*% p), log = TRUE))",
          "    - sum(ridge * p^2) / 2,",
          "  function(p) colSums(X * c(second - plogis(X %*% p))) - ridge * p)",
          "e <- plogis(c(X %*% g))",
          "answer <- list(risk = sapply(0:1, function(arm) {",
          "  k <- second == arm",
          "  like <- function(p) { h <- exp(c(X[k, ] %*% p)) * years[k]",
          "    sum(ifelse(failed[k] == 1, log(-expm1(-h)), -h)) - sum(ridge * p^2) / 2 }",
          "  slope <- function(p) { h <- exp(c(X[k, ] %*% p)) * years[k]",
          "    colSums(X[k, ] * ifelse(failed[k] == 1, h / expm1(h), -h)) - ridge * p }",
          "  eta <- c(X %*% climb(like, slope))",
          "  w <- if (arm == 1) 1 - e else e",
          "  d <- uniroot(function(d) sum((w * (failed + expm1(-exp(eta + d) * years)))[k]),",
          "    c(-3, 3), tol = 1e-14)$root",
          "  weighted.mean(-expm1(-exp(eta + d)), e * (1 - e))",
          "}))");

  /** R's optim and uniroot on the definition of the estimate. */
  @Test
  void risksAmongComparableCases() {
    for (int seed = 1; seed <= 3; seed++) {
      Random random = new Random(seed);
      int n = 400;
      double[][] x = new double[2][n];
      boolean[] second = new boolean[n];
      boolean[] failed = new boolean[n];
      double[] years = new double[n];
      int[] unit = new int[n];
      for (int i = 0; i < n; i++) {
        x[0][i] = random.nextGaussian();
        x[1][i] = random.nextDouble();
        second[i] = random.nextDouble() < 1 / (1 + Math.exp(-x[0][i]));
        years[i] = 0.5 + random.nextDouble();
        double hazard = 0.4 * Math.exp(0.6 * x[0][i] - (second[i] ? 0.8 : 0));
        failed[i] = random.nextDouble() < -Math.expm1(-hazard * years[i]);
        unit[i] = i;
      }
      ComparedCases cases = new ComparedCases(List.of("a", "b"), x, second, failed, years, unit);
      ActionEffect.Risks risks = ActionEffect.of(cases, 0.95).orThrow().comparable();
      double[] r =
          LiveR.given("a", x[0])
              .and("b", x[1])
              .and("second", numbers(second))
              .and("failed", numbers(failed))
              .and("years", years)
              .ask(RISKS)
              .get("risk");
      assertEquals(r[0], risks.first().value(), 1e-7, "seed " + seed);
      assertEquals(r[1], risks.second().value(), 1e-7, "seed " + seed);
    }
  }

  /** R's clogit with method exact: strata of 2 to 9 cases with any number of failures. */
  @Test
  void conditionalLogisticRegression() {
    for (int seed = 1; seed <= 3; seed++) {
      Random random = new Random(seed);
      List<MatchedChoice.Stratum> strata = new ArrayList<>();
      List<double[]> rows = new ArrayList<>();
      for (int s = 0; s < 80; s++) {
        int size = 2 + random.nextInt(8);
        double[][] x = new double[size][2];
        boolean[] failed = new boolean[size];
        for (int i = 0; i < size; i++) {
          x[i][0] = random.nextInt(2);
          x[i][1] = random.nextGaussian();
          double odds = Math.exp(0.7 * x[i][0] - 0.4 * x[i][1] + 0.1 * (s % 7) - 0.5);
          failed[i] = random.nextDouble() < odds / (1 + odds);
          rows.add(new double[] {s, x[i][0], x[i][1], failed[i] ? 1 : 0});
        }
        strata.add(new MatchedChoice.Stratum(x, failed));
      }
      MatchedChoice.Fit fit = MatchedChoice.fit(strata, new double[2]).orThrow();
      Map<String, double[]> r =
          LiveR.given("s", column(rows, 0))
              .and("a", column(rows, 1))
              .and("b", column(rows, 2))
              .and("y", column(rows, 3))
              .ask(
                  "f <- clogit(y ~ a + b + strata(s), method = 'exact',"
                      + " control = coxph.control(eps = 1e-12, toler.chol = 1e-13))\n"
                      + "answer <- list(beta = coef(f), se = sqrt(diag(vcov(f))),"
                      + " loglik = f$loglik[2])");
      for (int j = 0; j < 2; j++) {
        assertEquals(r.get("beta")[j], fit.coefficients()[j], 1e-7, "seed " + seed);
        assertEquals(r.get("se")[j], fit.standardErrors()[j], 1e-6, "seed " + seed);
      }
      assertEquals(r.get("loglik")[0], fit.logLikelihood(), 1e-8, "seed " + seed);
    }
  }

  private static double[] column(List<double[]> rows, int at) {
    return rows.stream().mapToDouble(row -> row[at]).toArray();
  }

  private static double[] numbers(boolean[] flags) {
    double[] numbers = new double[flags.length];
    for (int i = 0; i < flags.length; i++) {
      numbers[i] = flags[i] ? 1 : 0;
    }
    return numbers;
  }
}
