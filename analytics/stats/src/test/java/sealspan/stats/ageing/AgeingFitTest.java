package sealspan.stats.ageing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;
import sealspan.stats.ageing.AgeingFit.Frailty;
import sealspan.stats.ageing.AgeingFit.Limits;
import sealspan.stats.ageing.AgeingFit.Prior;

class AgeingFitTest {
  private static final Reference EXPECTED = Reference.read("10_kijima/expected.csv");

  /** Failures at exact times, each repaired; a gap of no time is a tie and is dropped. */
  private static List<RepairedLife> lives(String file) {
    Map<Integer, List<Map<String, String>>> byUnit = new TreeMap<>();
    for (Map<String, String> row : Reference.read("10_kijima/" + file).rows()) {
      byUnit.computeIfAbsent(Integer.valueOf(row.get("id")), u -> new ArrayList<>()).add(row);
    }
    List<RepairedLife> lives = new ArrayList<>();
    for (List<Map<String, String>> rows : byUnit.values()) {
      RepairedLife.Builder life = RepairedLife.sinceNew();
      for (Map<String, String> row : rows) {
        double gap = Double.parseDouble(row.get("gap"));
        if (row.get("event").equals("0")) {
          life.passed(gap);
        } else if (gap > 0) {
          life.failedAtEnd(gap).repaired(0);
        }
      }
      lives.add(life.build());
    }
    return lives;
  }

  /** Kijima 1989, models I and II at exact failure times; log-likelihoods by R 4.2.2. */
  @ParameterizedTest
  @EnumSource(VirtualAge.class)
  void agreesWithTheReferenceLikelihoods(VirtualAge model) {
    String name = model == VirtualAge.KIJIMA_I ? "K1" : "K2";
    AgeingLikelihood likelihood = new AgeingLikelihood(RepairedLives.of(lives("input.csv")), model);
    double[][] places = {{1.5, 4, 0}, {2.2, 5, .4}, {2.2, 5, 1}, {3, 6, .2}};
    String[] labels = {"a=1.5 b=4 q=0", "a=2.2 b=5 q=0.4", "a=2.2 b=5 q=1", "a=3 b=6 q=0.2"};
    for (int i = 0; i < places.length; i++) {
      double[] p = places[i];
      double logit = Math.log(p[2] / (1 - p[2]));
      assertEquals(
          EXPECTED.value(name + " ll " + labels[i]),
          likelihood.at(new double[] {Math.log(p[0]), Math.log(p[1]), logit, 0, 0}).value(),
          1e-8,
          labels[i]);
    }
  }

  /** Estimates and standard errors by R 4.2.2 optim; its Hessian is by differences. */
  @Test
  void agreesWithTheReferenceFitOfModelI() {
    AgeingFit fit = fit(lives("input.csv"), VirtualAge.KIJIMA_I);
    assertEquals(EXPECTED.value("K1 mle loglik"), fit.logLikelihood(), 1e-7);
    PointEstimate shape = fit.shape(.95, Limits.CURVATURE);
    PointEstimate scale = fit.scale(.95, Limits.CURVATURE);
    PointEstimate share = fit.shareLeft(0, .95, Limits.CURVATURE).orThrow();
    assertEquals(EXPECTED.value("K1 mle shape"), shape.value(), 1e-4);
    assertEquals(EXPECTED.value("K1 mle scale"), scale.value(), 2e-4);
    assertEquals(EXPECTED.value("K1 mle q"), share.value(), 1e-4);
    assertEquals(EXPECTED.value("K1 se_logshape"), shape.standardError() / shape.value(), 2e-4);
    assertEquals(EXPECTED.value("K1 se_logscale"), scale.standardError() / scale.value(), 2e-4);
    assertEquals(EXPECTED.value("K1 se_logit_q"), fit.logitError(0), 1e-3);
    PointEstimate profiled = fit.shareLeft(0, .95, Limits.PROFILE).orThrow();
    // simulated with .4
    assertTrue(profiled.interval().contains(.4));
    assertInstanceOf(Estimate.NotIdentified.class, fit.shareLeft(1, .95, Limits.PROFILE));
    assertEquals(fit.starts(), fit.startsAtTop());
  }

  /** At model II the share runs to its boundary, where the law is the power law process. */
  @Test
  void agreesWithTheReferenceFitOfModelII() {
    AgeingFit fit = fit(lives("input.csv"), VirtualAge.KIJIMA_II);
    assertEquals(EXPECTED.value("q=1 loglik = power-law NHPP"), fit.logLikelihood(), 1e-4);
    assertEquals(EXPECTED.value("q=1 beta"), fit.shape(.95, Limits.PROFILE).value(), 1e-4);
    PointEstimate share = fit.shareLeft(0, .95, Limits.PROFILE).orThrow();
    assertEquals(1, share.value(), 1e-6);
    assertEquals(1, share.interval().upper());
    assertTrue(share.interval().lower() > .5 && share.interval().lower() < 1);
  }

  /** MIL-HDBK-189 (1981) Appendix C: one system, and the share runs to a boundary. */
  @ParameterizedTest
  @EnumSource(VirtualAge.class)
  void agreesWithTheHandbooksSystem(VirtualAge model) {
    String name = model == VirtualAge.KIJIMA_I ? "K1" : "K2";
    AgeingFit fit = fit(lives("input_mil.csv"), model);
    assertEquals(
        EXPECTED.value("MIL(tie dropped) " + name + " loglik at optimum"),
        fit.logLikelihood(),
        1e-5);
    assertEquals(
        EXPECTED.value("MIL " + name + " shape"), fit.shape(.95, Limits.CURVATURE).value(), 1e-4);
    assertEquals(1, fit.shareLeft(0, .95, Limits.PROFILE).orThrow().interval().upper());
  }

  /** Independent: plain recursion, and differences of it, for every kind of step. */
  @Property(tries = 60, seed = "5")
  void derivativesAgreeWithDifferences(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<NaiveLife> lives = NaiveLife.invented(random, 6);
    VirtualAge model = seed % 2 == 0 ? VirtualAge.KIJIMA_I : VirtualAge.KIJIMA_II;
    boolean frail = seed % 3 == 0;
    double[] p = {
      -.3 + 1.3 * random.nextDouble(),
      .5 + random.nextDouble(),
      -2 + 4 * random.nextDouble(),
      -2 + 4 * random.nextDouble(),
      frail ? .2 + .4 * random.nextDouble() : 0
    };
    AgeingLikelihood likelihood =
        new AgeingLikelihood(
            RepairedLives.of(lives.stream().map(NaiveLife::built).toList()), model);
    AgeingPoint point = likelihood.at(p);
    double naive = NaiveLife.logLikelihood(lives, model, p);
    assertEquals(naive, point.value(), (frail ? 2e-5 : 1e-10) * (1 + Math.abs(naive)));
    int parameters = frail ? 5 : 4;
    for (int j = 0; j < parameters; j++) {
      double h = 1e-5;
      AgeingPoint up = likelihood.at(moved(p, j, h));
      AgeingPoint down = likelihood.at(moved(p, j, -h));
      double size = 1 + Math.abs(point.slope()[j]);
      assertEquals((up.value() - down.value()) / (2 * h), point.slope()[j], 1e-5 * size, "" + j);
      for (int k = 0; k < parameters; k++) {
        assertEquals(
            (up.slope()[k] - down.slope()[k]) / (2 * h),
            point.bend()[j][k],
            1e-5 * (1 + Math.abs(point.bend()[j][k])),
            j + " " + k);
      }
    }
  }

  private static double[] moved(double[] p, int j, double by) {
    double[] q = p.clone();
    q[j] += by;
    return q;
  }

  /** Two tests, by hand: a pass from 0 to 1, a failure from 1 to 2, cleaned, a pass of one year. */
  @Test
  void workedByHand() {
    RepairedLife life = RepairedLife.sinceNew().passed(1).failed(1).repaired(0).passed(1).build();
    AgeingLikelihood likelihood =
        new AgeingLikelihood(RepairedLives.of(List.of(life)), VirtualAge.KIJIMA_II);
    // shape 2, scale 2, half of the age left: hazards 1/4, 3/4 and from age 1 to 2 again 3/4
    double[] p = {Math.log(2), Math.log(2), 0, 0, 0};
    assertEquals(-.25 + Math.log(1 - Math.exp(-.75)) - .75, likelihood.at(p).value(), 1e-14);
  }

  /** Passes in a row are one: the same likelihood as apart, and the same bytes. */
  @Test
  void passesInARowAreOne() {
    RepairedLife apart =
        RepairedLife.sinceNew().passed(.5).passed(.25).unseen(.25).passed(1).build();
    assertArrayEquals(new double[] {0, 1}, apart.from);
    assertArrayEquals(new double[] {.75, 2}, apart.to);
  }

  /** The limits are where the naive profile has fallen by 1.92, for shape and shares. */
  @ParameterizedTest
  @EnumSource(VirtualAge.class)
  void limitsLieWhereTheProfileHasFallen(VirtualAge model) {
    List<RepairedLife> lives =
        simulated(new Random(31), model, 400, 1.8, new double[] {.6, .15}, 0);
    AgeingFit fit = AgeingFit.of(lives, model, Frailty.NONE, Prior.WEAK).orThrow();
    PointEstimate shape = fit.shape(.95, Limits.PROFILE);
    PointEstimate curved = fit.shape(.95, Limits.CURVATURE);
    assertEquals(
        Math.log(curved.interval().upper() / curved.interval().lower()),
        Math.log(shape.interval().upper() / shape.interval().lower()),
        .03);
    for (int kind = 0; kind < 2; kind++) {
      PointEstimate share = fit.shareLeft(kind, .95, Limits.PROFILE).orThrow();
      assertTrue(share.interval().contains(share.value()), share.toString());
      assertTrue(share.interval().lower() > 0 && share.interval().upper() < 1);
    }
    assertTrue(shape.interval().contains(1.8), shape.toString());
    assertEquals(shape, fit.separates(.95, Limits.PROFILE).orThrow());
  }

  /** Weak priors stated; with them off the top moves. */
  @Test
  void theModelThatMadeTheLivesFitsBetter() {
    double[] left = {.8, .3};
    for (VirtualAge truth : VirtualAge.values()) {
      List<RepairedLife> lives = simulated(new Random(7), truth, 4_000, 2.5, left, 0);
      VirtualAge other = truth == VirtualAge.KIJIMA_I ? VirtualAge.KIJIMA_II : VirtualAge.KIJIMA_I;
      double own = AgeingFit.of(lives, truth, Frailty.NONE, Prior.WEAK).orThrow().aic();
      double others = AgeingFit.of(lives, other, Frailty.NONE, Prior.WEAK).orThrow().aic();
      assertTrue(own < others, truth + " " + own + " " + others);
    }
  }

  /** Units that differ: with frailty the shape comes back, without it the shape is too small. */
  @Test
  void frailtyIsNotTakenForBadRepair() {
    double[] left = {.5, .1};
    List<RepairedLife> lives = simulated(new Random(3), VirtualAge.KIJIMA_II, 6_000, 2, left, .8);
    AgeingFit alike = AgeingFit.of(lives, VirtualAge.KIJIMA_II, Frailty.NONE, Prior.WEAK).orThrow();
    AgeingFit frail =
        AgeingFit.of(lives, VirtualAge.KIJIMA_II, Frailty.LOGNORMAL, Prior.WEAK).orThrow();
    assertTrue(frail.aic() < alike.aic() - 20);
    assertTrue(frail.shape(.95, Limits.CURVATURE).interval().contains(2));
    assertTrue(frail.shareLeft(0, .95, Limits.CURVATURE).orThrow().interval().contains(.5));
    assertTrue(!alike.shape(.95, Limits.CURVATURE).interval().contains(2));
    assertEquals(Math.expm1(.64), frail.frailtyVariance(), .35);
    AgeingFit none =
        AgeingFit.of(
                simulated(new Random(3), VirtualAge.KIJIMA_II, 3_000, 2, left, 0),
                VirtualAge.KIJIMA_II,
                Frailty.LOGNORMAL,
                Prior.WEAK)
            .orThrow();
    assertTrue(none.frailtyVariance() < .1, "" + none.frailtyVariance());
  }

  /** With a flat hazard the age that a repair leaves has no meaning: 40 fleets, none separates. */
  @Test
  void aFlatHazardSeparatesNothing() {
    int separated = 0;
    for (int seed = 0; seed < 40; seed++) {
      List<RepairedLife> lives =
          simulated(new Random(seed), VirtualAge.KIJIMA_II, 300, 1, new double[] {.5, .1}, 0);
      AgeingFit fit = AgeingFit.of(lives, VirtualAge.KIJIMA_II, Frailty.NONE, Prior.WEAK).orThrow();
      separated +=
          fit.separates(.95, Limits.PROFILE) instanceof Estimate.Identified<PointEstimate> ? 1 : 0;
    }
    // one in twenty is expected: 40 x .05 + 3.1 x 1.4
    assertTrue(separated <= 6, "separated " + separated);
  }

  @Property(tries = 10, seed = "5")
  void orderIsOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<RepairedLife> lives =
        simulated(new Random(seed), VirtualAge.KIJIMA_I, 60, 2, new double[] {.5, .2}, 0);
    List<RepairedLife> shuffled = new ArrayList<>(lives);
    Collections.shuffle(shuffled, new Random(seed + 1L));
    Estimate<AgeingFit> a = AgeingFit.of(lives, VirtualAge.KIJIMA_I, Frailty.LOGNORMAL, Prior.WEAK);
    Estimate<AgeingFit> b =
        AgeingFit.of(shuffled, VirtualAge.KIJIMA_I, Frailty.LOGNORMAL, Prior.WEAK);
    assertEquals(a.orThrow().shape(.95, Limits.PROFILE), b.orThrow().shape(.95, Limits.PROFILE));
    assertEquals(a.orThrow().aic(), b.orThrow().aic());
  }

  @Test
  void saysWhyThereIsNoAnswer() {
    assertBecause("no unit was watched from new", List.of());
    assertBecause("no unit was watched from new", List.of(RepairedLife.sinceNew().build()));
    assertBecause(
        "none of the 3 units was found failed",
        Collections.nCopies(3, RepairedLife.sinceNew().passed(2).build()));
    assertBecause(
        "every test failed, so any short life fits",
        Collections.nCopies(3, RepairedLife.sinceNew().failed(2).repaired(0).failed(1).build()));
    AgeingFit few =
        AgeingFit.of(
                List.of(
                    RepairedLife.sinceNew().passed(1).failed(2).repaired(0).passed(1).build(),
                    RepairedLife.sinceNew().passed(3).build()),
                VirtualAge.KIJIMA_II,
                Frailty.NONE,
                Prior.WEAK)
            .orThrow();
    assertEquals(
        new Estimate.NotIdentified<PointEstimate>(
            "there are 1 failures, and at least 5 are needed"),
        few.separates(.95, Limits.PROFILE));
    assertThrows(IllegalArgumentException.class, () -> RepairedLife.sinceNew().failed(0));
    assertThrows(IllegalArgumentException.class, () -> RepairedLife.sinceNew().passed(-1));
    assertThrows(IllegalArgumentException.class, () -> RepairedLife.sinceNew().repaired(2));
  }

  private static void assertBecause(String because, List<RepairedLife> lives) {
    for (VirtualAge model : VirtualAge.values()) {
      assertEquals(
          new Estimate.NotIdentified<AgeingFit>(because),
          AgeingFit.of(lives, model, Frailty.LOGNORMAL, Prior.WEAK));
    }
  }

  /** Ties, one unit, everything at once, six orders of magnitude: an answer or a reason, no NaN. */
  @Test
  void bearsHardInputs() {
    List<List<RepairedLife>> hard = new ArrayList<>();
    hard.add(List.of(RepairedLife.sinceNew().passed(1).failed(1).repaired(0).failed(1).build()));
    hard.add(
        Collections.nCopies(
            200, RepairedLife.sinceNew().passed(1).failed(1).repaired(1).passed(1).build()));
    List<RepairedLife> wide = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      wide.add(RepairedLife.sinceNew().passed(1e-3).failed(1e3 * (i + 1)).repaired(0).build());
      wide.add(RepairedLife.sinceNew().failed(1e-3).repaired(0).passed(10).build());
    }
    hard.add(wide);
    List<RepairedLife> atOnce = new ArrayList<>();
    for (int i = 0; i < 50; i++) {
      atOnce.add(
          RepairedLife.sinceNew().passed(5).failed(.01).repaired(0).passed(4.9).failed(.2).build());
    }
    hard.add(atOnce);
    hard.add(
        List.of(
            RepairedLife.sinceNew().failedAtEnd(3).replaced().build(),
            RepairedLife.sinceNew().failedAtEnd(4).replaced().build()));
    for (List<RepairedLife> lives : hard) {
      for (VirtualAge model : VirtualAge.values()) {
        for (Frailty frailty : Frailty.values()) {
          Estimate<AgeingFit> estimate = AgeingFit.of(lives, model, frailty, Prior.WEAK);
          if (estimate instanceof Estimate.Identified<AgeingFit> fit) {
            for (Limits limits : Limits.values()) {
              assertSound(fit.value().shape(.95, limits));
              assertSound(fit.value().scale(.95, limits));
              for (int kind = 0; kind < 2; kind++) {
                if (fit.value().shareLeft(kind, .95, limits)
                    instanceof Estimate.Identified<PointEstimate> share) {
                  assertSound(share.value());
                }
              }
            }
            assertTrue(Double.isFinite(fit.value().aic()));
          }
        }
      }
    }
  }

  private static void assertSound(PointEstimate estimate) {
    assertTrue(Double.isFinite(estimate.value()), estimate.toString());
    assertTrue(!Double.isNaN(estimate.standardError()), estimate.toString());
    assertTrue(estimate.interval().contains(estimate.value()), estimate.toString());
  }

  static AgeingFit fit(List<RepairedLife> lives, VirtualAge model) {
    return AgeingFit.of(lives, model, Frailty.NONE, Prior.NONE).orThrow();
  }

  static List<RepairedLife> simulated(
      Random random, VirtualAge model, int units, double shape, double[] left, double deviation) {
    List<RepairedLife> lives = new ArrayList<>();
    for (int i = 0; i < units; i++) {
      double factor = Math.exp(deviation * random.nextGaussian() - deviation * deviation / 2);
      lives.add(NaiveLife.simulated(random, model, shape, 6, left, 12, factor));
    }
    return lives;
  }
}
