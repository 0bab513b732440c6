package sealspan.stats.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.LiveR;
import sealspan.stats.PointEstimate;

/** R's glm with a factor for the strata, on random data. */
@LiveR.Needed
class StratifiedAgainstRTest {
  @Test
  void countsWithDispersionAndHazards() {
    for (int seed = 1; seed <= 2; seed++) {
      Random random = new Random(seed);
      int n = 500;
      double[] x = new double[n];
      double[] count = new double[n];
      double[] failed = new double[n];
      double[] atRisk = new double[n];
      int[] stratum = new int[n];
      for (int i = 0; i < n; i++) {
        stratum[i] = random.nextInt(20);
        x[i] = random.nextGaussian();
        atRisk[i] = .5 + random.nextDouble();
        double mean = atRisk[i] * Math.exp(-.7 + .5 * x[i] + .05 * stratum[i]);
        double dispersed = mean * -Math.log(random.nextDouble());
        for (double at = -Math.log(random.nextDouble()); at < dispersed; ) {
          count[i]++;
          at -= Math.log(random.nextDouble());
        }
        failed[i] = random.nextDouble() < -Math.expm1(-mean) ? 1 : 0;
      }
      Map<String, double[]> r =
          LiveR.given("x", x)
              .and("count", count)
              .and("failed", failed)
              .and("atRisk", atRisk)
              .and("stratum", stratum)
              .ask(
                  String.join(
                      "\n",
                      "g <- glm.control(epsilon = 1e-14, maxit = 100)",
                      "telling <- ave(count, stratum, FUN = sum) > 0",
                      "f <- glm(count ~ factor(stratum) + x + offset(log(atRisk)), quasipoisson,",
                      "  subset = telling, control = g)",
                      "h <- glm(failed ~ factor(stratum) + x + offset(log(atRisk)),",
                      "  binomial('cloglog'), control = g)",
                      "s <- summary(f)",
                      "answer <- list(count = c(coef(f)['x'], s$coefficients['x', 2],",
                      "  s$dispersion), hazard = c(coef(h)['x'],",
                      "  summary(h)$coefficients['x', 2]))"));
      Design design = Design.ofRows(n).column("x", x);
      double[] offset = java.util.Arrays.stream(atRisk).map(StrictMath::log).toArray();
      StratifiedFit counts =
          StratifiedRegression.fit(
                  Family.POISSON, Observations.of(design, count).offset(offset), stratum)
              .orThrow();
      PointEstimate dispersed = counts.dispersed("x", .95);
      assertEquals(r.get("count")[0], dispersed.value(), 1e-8);
      assertEquals(r.get("count")[1], dispersed.standardError(), 1e-7);
      assertEquals(r.get("count")[2], counts.dispersion(), 1e-7);
      PointEstimate hazard =
          StratifiedRegression.fit(
                  Family.CLOGLOG, Observations.of(design, failed).offset(offset), stratum)
              .orThrow()
              .modelBased("x", .95);
      assertEquals(r.get("hazard")[0], hazard.value(), 1e-7);
      assertEquals(r.get("hazard")[1], hazard.standardError(), 1e-6);
    }
  }
}
