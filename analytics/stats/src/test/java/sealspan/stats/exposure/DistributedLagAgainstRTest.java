package sealspan.stats.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import sealspan.stats.LiveR;

/** R's ns with the same knots, and glm with quasi-Poisson errors. */
@LiveR.Needed
class DistributedLagAgainstRTest {
  @Test
  void splineOfTheLag() {
    Map<String, double[]> r =
        LiveR.given("fouled", DistributedLagTest.column("fouled"))
            .and("tests", DistributedLagTest.column("exposure"))
            .and("zone", DistributedLagTest.column("zone"))
            .and("t0", DistributedLagTest.column("turb0"))
            .and("t1", DistributedLagTest.column("turb1"))
            .and("t2", DistributedLagTest.column("turb2"))
            .and("t3", DistributedLagTest.column("turb3"))
            .ask(
                String.join(
                    "\n",
                    "b <- splines::ns(0:3, knots = 1.5, intercept = TRUE)",
                    "x <- cbind(t0, t1, t2, t3) %*% b",
                    "f <- glm(fouled ~ x + factor(zone) + offset(log(tests)), quasipoisson,",
                    "  control = glm.control(epsilon = 1e-14, maxit = 100))",
                    "k <- 2:4",
                    "v <- b %*% vcov(f)[k, k] %*% t(b)",
                    "answer <- list(lag = c(b %*% coef(f)[k]), se = sqrt(diag(v)),",
                    "  total = c(sum(b %*% coef(f)[k]), sqrt(sum(v))),",
                    "  dispersion = summary(f)$dispersion)"));
    DistributedLag spline = DistributedLagTest.fit(LagBasis.naturalSpline(3, 3)).orThrow();
    for (int lag = 0; lag <= 3; lag++) {
      assertEquals(r.get("lag")[lag], spline.byLag().get(lag).value(), 1e-8);
      assertEquals(r.get("se")[lag], spline.byLag().get(lag).standardError(), 1e-8);
    }
    assertEquals(r.get("total")[0], spline.total().value(), 1e-8);
    assertEquals(r.get("total")[1], spline.total().standardError(), 1e-8);
    assertEquals(r.get("dispersion")[0], spline.dispersion(), 1e-8);
  }
}
