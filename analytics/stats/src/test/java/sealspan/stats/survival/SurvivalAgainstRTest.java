package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.stats.LiveR;
import sealspan.stats.PointEstimate;

/** Outside check: R's package survival on random lives. */
@LiveR.Needed
class SurvivalAgainstRTest {
  private static final double LEVEL = 0.95;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void kaplanMeierWithLateEntry(int seed) {
    List<Lifetime> lives = watched(new Random(seed), 200);
    Map<String, double[]> r =
        inR(lives)
            .ask(
                "f <- survfit(Surv(entry, lower, status) ~ 1, conf.type = 'log-log');"
                    + "k <- f$n.event > 0;"
                    + "answer <- list(time = f$time[k], risk = f$n.risk[k], surv = f$surv[k],"
                    + " se = summary(f)$std.err, lower = f$lower[k], upper = f$upper[k],"
                    + " hazard = f$cumhaz[k], hazard_se = f$std.chaz[k],"
                    + " mean = summary(f, rmean = 900)$table[['rmean']],"
                    + " mean_se = summary(f, rmean = 900)$table[['se(rmean)']])");
    KaplanMeier km = KaplanMeier.of(lives).orThrow();
    int[] days = km.curve().days();
    assertEquals(r.get("time").length, days.length);
    assertTrue(days.length > 50, days.length + " steps");
    for (int j = 0; j < days.length; j++) {
      assertEquals(r.get("time")[j], days[j]);
      assertEquals(r.get("risk")[j], km.curve().atRisk()[j]);
      PointEstimate share = km.curve().at(days[j], LEVEL).orThrow();
      assertEquals(r.get("surv")[j], share.value(), 1e-12);
      PointEstimate hazard = km.cumulativeHazard(days[j], LEVEL).orThrow();
      assertEquals(r.get("hazard")[j], hazard.value(), 1e-11);
      assertEquals(r.get("hazard_se")[j], hazard.standardError(), 1e-11);
      if (share.value() > 0) {
        assertEquals(r.get("se")[j], share.standardError(), 1e-12);
        assertEquals(r.get("lower")[j], share.interval().lower(), 1e-10);
        assertEquals(r.get("upper")[j], share.interval().upper(), 1e-10);
      }
    }
    PointEstimate mean = km.restrictedMean(900, LEVEL).orThrow();
    assertEquals(r.get("mean")[0], mean.value(), 1e-8);
    assertEquals(r.get("mean_se")[0], mean.standardError(), 1e-8);
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 5, 6})
  void parametricFitsOfEnclosedEnds(int seed) {
    List<Lifetime> lives = tested(new Random(seed), 300);
    Map<String, double[]> r =
        inR(lives)
            .ask(
                "lower[lower == 0] <- NA; upper[is.infinite(upper)] <- NA;"
                    + "s <- Surv(lower, upper, type = 'interval2');"
                    + "control <- survreg.control(rel.tolerance = 1e-13, maxiter = 200);"
                    + "fit <- function(d) { f <- survreg(s ~ 1, dist = d, control = control);"
                    + " c(coef(f), log(f$scale), f$loglik[1], sqrt(diag(vcov(f)))) };"
                    + "answer <- list(weibull = fit('weibull'), exponential = fit('exponential'),"
                    + " lognormal = fit('lognormal'))");
    WeibullFit weibull = WeibullFit.of(lives).orThrow();
    double[] w = r.get("weibull");
    assertEquals(w[0], Math.log(weibull.scaleDays()), 1e-7);
    assertEquals(-w[1], Math.log(weibull.shape()), 1e-7);
    assertEquals(w[2], weibull.logLikelihood(), 1e-8);
    assertEquals(w[3], weibull.standardErrorLogScale(), 1e-6);
    assertEquals(w[4], weibull.standardErrorLogShape(), 1e-6);
    LognormalFit lognormal = LognormalFit.of(lives).orThrow();
    double[] n = r.get("lognormal");
    assertEquals(n[0], lognormal.mu(), 1e-7);
    assertEquals(n[1], Math.log(lognormal.sigma()), 1e-7);
    assertEquals(n[2], lognormal.logLikelihood(), 1e-8);
    assertEquals(n[3], lognormal.standardErrorMu(), 1e-6);
    assertEquals(n[4], lognormal.standardErrorLogSigma(), 1e-6);
    ExponentialFit exponential = ExponentialFit.of(lives).orThrow();
    double[] e = r.get("exponential");
    assertEquals(e[0], Math.log(exponential.meanDays()), 1e-7);
    assertEquals(e[2], exponential.logLikelihood(), 1e-8);
    assertEquals(e[3], exponential.standardErrorLogMean(), 1e-6);
  }

  /** npsurv where it is installed (it converges exactly), else survfit (it stops early). */
  @ParameterizedTest
  @ValueSource(ints = {7, 8, 9})
  void turnbullOfEnclosedEnds(int seed) {
    List<Lifetime> lives = tested(new Random(seed), 300);
    Turnbull fit = Turnbull.of(lives).orThrow();
    double[] days =
        fit.boxes().stream().filter(b -> !b.open()).mapToDouble(b -> b.notAfterDay()).toArray();
    Map<String, double[]> r =
        inR(lives)
            .and("days", days)
            .ask(
                "exact <- suppressWarnings(suppressPackageStartupMessages(require(npsurv)));"
                    + "if (exact) { f <- npsurv(cbind(lower, upper))$f;"
                    + " beyond <- sapply(days, function(d) sum(f$p[f$right > d])) } else {"
                    + " lower[lower == 0] <- NA; upper[is.infinite(upper)] <- NA;"
                    + " f <- survfit(Surv(lower, upper, type = 'interval2') ~ 1);"
                    + " beyond <- summary(f, times = days, extend = TRUE)$surv };"
                    + "answer <- list(exact = as.numeric(exact), beyond = beyond)");
    double tolerance = r.get("exact")[0] == 1 ? 1e-6 : 0.03;
    for (int j = 0; j < days.length; j++) {
      assertEquals(r.get("beyond")[j], fit.at((int) days[j]).orThrow().atMost(), tolerance);
    }
  }

  /** survdiff without late entry; with it the score test of coxph, on days without ties. */
  @ParameterizedTest
  @ValueSource(ints = {10, 11})
  void logRank(int seed) {
    Random random = new Random(seed);
    List<List<Lifetime>> groups = new ArrayList<>();
    List<Lifetime> all = new ArrayList<>();
    List<Double> group = new ArrayList<>();
    List<List<Lifetime>> apart = new ArrayList<>();
    List<Lifetime> allApart = new ArrayList<>();
    for (int g = 0; g < 3; g++) {
      groups.add(new ArrayList<>());
      apart.add(new ArrayList<>());
      for (Lifetime life : watched(random, 50)) {
        int i = all.size();
        Lifetime plain = new Lifetime(0, life.lowerDay(), life.upperDay(), 1);
        int day = 1_000 * life.lowerDay() + i;
        Lifetime own =
            new Lifetime(1_000 * life.entryDay(), day, life.open() ? Lifetime.NEVER : day, 1);
        groups.get(g).add(plain);
        all.add(plain);
        apart.get(g).add(own);
        allApart.add(own);
        group.add((double) g);
      }
    }
    double[] numbers = group.stream().mapToDouble(Double::doubleValue).toArray();
    double plain =
        inR(all)
            .and("group", numbers)
            .ask("answer <- list(chi = survdiff(Surv(lower, status) ~ group)$chisq)")
            .get("chi")[0];
    assertEquals(plain, LogRank.of(groups).orThrow().chiSquared(), 1e-8);
    double late =
        inR(allApart)
            .and("group", numbers)
            .ask(
                "f <- coxph(Surv(entry, lower, status) ~ factor(group), ties = 'breslow');"
                    + "answer <- list(chi = f$score)")
            .get("chi")[0];
    assertEquals(late, LogRank.of(apart).orThrow().chiSquared(), 1e-6);
  }

  /** survfit of several states: shares, and their errors where nobody entered late. */
  @ParameterizedTest
  @ValueSource(ints = {12, 13})
  void aalenJohansen(int seed) {
    for (boolean late : new boolean[] {false, true}) {
      List<EndedLife> lives = new ArrayList<>();
      for (EndedLife life : AalenJohansenTest.invented(new Random(seed), 120, 3)) {
        lives.add(
            new EndedLife(late ? life.entryDay() : 0, life.day(), life.reason(), life.count()));
      }
      Map<String, double[]> r =
          LiveR.given("entry", lives.stream().mapToDouble(EndedLife::entryDay).toArray())
              .and("day", lives.stream().mapToDouble(EndedLife::day).toArray())
              .and("reason", lives.stream().mapToDouble(l -> l.reason() + 1).toArray())
              .ask(
                  "f <- survfit(Surv(entry, day, factor(reason, 0:3)) ~ 1, id = seq_along(day));"
                      + "k <- rowSums(f$n.event) > 0;"
                      + "answer <- list(day = f$time[k], a = f$pstate[k, 2], b = f$pstate[k, 3],"
                      + " se_a = f$std.err[k, 2], se_b = f$std.err[k, 3])");
      AalenJohansen curves = AalenJohansen.of(lives, 3).orThrow();
      assertEquals(r.get("day").length, curves.days().length);
      for (int j = 0; j < curves.days().length; j++) {
        assertEquals(r.get("day")[j], curves.days()[j]);
        assertEquals(r.get("a")[j], curves.incidence(0)[j], 1e-12);
        assertEquals(r.get("b")[j], curves.incidence(1)[j], 1e-12);
        if (!late) {
          assertEquals(r.get("se_a")[j], Math.sqrt(curves.variance(0)[j]), 1e-9);
          assertEquals(r.get("se_b")[j], Math.sqrt(curves.variance(1)[j]), 1e-9);
        }
      }
    }
  }

  private static LiveR inR(List<Lifetime> lives) {
    return LiveR.given("entry", lives.stream().mapToDouble(Lifetime::entryDay).toArray())
        .and("lower", lives.stream().mapToDouble(Lifetime::lowerDay).toArray())
        .and(
            "upper",
            lives.stream()
                .mapToDouble(l -> l.open() ? Double.POSITIVE_INFINITY : l.upperDay())
                .toArray())
        .and("status", lives.stream().mapToDouble(l -> l.open() ? 0 : 1).toArray());
  }

  /** Lives with known or open ends, some entered late. */
  private static List<Lifetime> watched(Random random, int count) {
    List<Lifetime> lives = new ArrayList<>();
    while (lives.size() < count) {
      int end = end(random);
      int entry = lives.size() % 2 == 0 ? 0 : random.nextInt(1_000);
      int seen = entry + 1 + random.nextInt(2_000);
      if (entry < end) {
        lives.add(end <= seen ? Lifetime.ended(entry, end) : Lifetime.goingOn(entry, seen));
      }
    }
    return lives;
  }

  /** Lives looked at about once a year for some years. */
  private static List<Lifetime> tested(Random random, int count) {
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int end = end(random);
      int looks = 1 + random.nextInt(8);
      int held = 0;
      int found = Lifetime.NEVER;
      for (int k = 0; k < looks && found == Lifetime.NEVER; k++) {
        int day = held + 300 + random.nextInt(130);
        if (end <= day) {
          found = day;
        } else {
          held = day;
        }
      }
      if (found == Lifetime.NEVER) {
        lives.add(Lifetime.goingOn(0, held));
      } else {
        lives.add(Lifetime.endedWithin(0, held, found));
      }
    }
    return lives;
  }

  private static int end(Random random) {
    return 1 + (int) (1_200 * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.6));
  }
}
