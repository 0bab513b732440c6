package sealspan.stats.survival;

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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;

class KaplanMeierTest {

  /** Freireich et al. 1963 remission times; R survival 3.5-3, log-log limits. */
  @Test
  void agreesWithRAtEveryStep() {
    Reference table = Reference.read("03_km/expected_km.csv").where("conf_type", "log-log");
    for (String arm : new String[] {"placebo", "6-MP"}) {
      KaplanMeier km = km(arm(arm));
      for (Map<String, String> row : table.where("arm", arm).rows()) {
        int day = Integer.parseInt(row.get("time"));
        PointEstimate share = km.curve().at(day, 0.95).orThrow();
        PointEstimate hazard = km.cumulativeHazard(day, 0.95).orThrow();
        assertEquals(number(row, "surv"), share.value(), 1e-14);
        assertEquals(number(row, "cumhaz"), hazard.value(), 1e-14);
        assertEquals(number(row, "std_chaz"), hazard.standardError(), 1e-14);
        if (!row.get("std_err").equals("NA")) {
          assertEquals(number(row, "std_err"), share.standardError(), 1e-14);
          assertEquals(number(row, "lower"), share.interval().lower(), 1e-9);
          assertEquals(number(row, "upper"), share.interval().upper(), 1e-9);
        } else {
          assertEquals(0, share.value());
          assertEquals(0, share.interval().lower());
        }
      }
    }
  }

  /** Freireich 1963, from Klein and Moeschberger, table 4.1 (from memory); R for the mean. */
  @Test
  void agreesWithTheTextbookAndRestrictedMeans() {
    Reference expected = Reference.read("03_km/expected.csv");
    KaplanMeier mp = km(arm("6-MP"));
    assertEquals(0.857, mp.curve().at(6, 0.95).orThrow().value(), 5e-4);
    assertEquals(0.0764, mp.curve().at(6, 0.95).orThrow().standardError(), 5e-5);
    assertEquals(0.448, mp.curve().at(23, 0.95).orThrow().value(), 5e-4);
    for (String arm : new String[] {"placebo", "6-MP"}) {
      PointEstimate mean = km(arm(arm)).restrictedMean(22, 0.95).orThrow();
      assertEquals(expected.value(arm + " rmst22"), mean.value(), 1e-12);
      assertEquals(expected.value(arm + " rmst22_se"), mean.standardError(), 1e-12);
      assertEquals(
          expected.value(arm + " q 50"), km(arm(arm)).curve().median(0.95).orThrow().day());
    }
  }

  /** The limits of the median, derived by hand from R's log-log limits: 13 and none for 6-MP. */
  @Test
  void medianLimitsComeFromTheLimitsOfTheCurve() {
    Interval interval = km(arm("6-MP")).curve().median(0.95).orThrow().interval();
    assertEquals(13, interval.lower());
    assertEquals(Double.POSITIVE_INFINITY, interval.upper());
  }

  /** R survival 3.5-3 on small corner cases; where R has NA we state our own limits. */
  @Test
  void agreesWithRInTheCorners() {
    Reference input = Reference.read("03_km/input_hard.csv");
    for (Map<String, String> row : Reference.read("03_km/expected_hard.csv").rows()) {
      if (row.get("case").equals("fp_ties")) {
        continue; // fractions of a day do not occur
      }
      List<Lifetime> lives = new ArrayList<>();
      for (Map<String, String> life : input.where("case", row.get("case")).rows()) {
        lives.add(life(life));
      }
      PointEstimate share = km(lives).curve().at(Integer.parseInt(row.get("time")), 0.95).orThrow();
      assertEquals(number(row, "surv"), share.value(), 1e-14);
      if (!row.get("std_err").equals("NA")) {
        assertEquals(number(row, "std_err"), share.standardError(), 1e-14);
      }
    }
  }

  /** Textbook rule: on a flat step at one half the left end, 2; R gives the midpoint 2.5. */
  @Test
  void medianOfAFlatStepIsItsLeftEnd() {
    assertEquals(
        2, km(List.of(end(1), end(2), end(3), end(4))).curve().median(0.95).orThrow().day());
  }

  /**
   * By hand, late entry: entries 0,0,0,1,3 and exits 2,4,6+,5,6. Risk sets: day 2: 4, day 4: 4 (the
   * life that entered on day 3 is in), day 5: 3, day 6: 2.
   */
  @Test
  void lateEntryWorkedByHand() {
    KaplanMeier km =
        km(
            List.of(
                end(2),
                end(4),
                Lifetime.goingOn(0, 6),
                Lifetime.ended(1, 5),
                Lifetime.ended(3, 6)));
    assertArrayEquals(new double[] {4, 4, 3, 2}, km.curve().atRisk());
    assertArrayEquals(new double[] {0.75, 0.5625, 0.375, 0.1875}, km.curve().survival(), 1e-15);
    assertEquals("", km.caution());
    // Area to day 5: 2 x 1 + 2 x .75 + 1 x .5625
    PointEstimate mean = km.restrictedMean(5, 0.95).orThrow();
    assertEquals(4.0625, mean.value(), 1e-12);
    // A = 2.0625 and .5625, each squared times 1 / (4 x 3)
    assertEquals(
        (2.0625 * 2.0625 + 0.5625 * 0.5625) / 12,
        mean.standardError() * mean.standardError(),
        1e-12);
  }

  /** Independent: counts taken anew on every day, for random lives with late entry. */
  @Property(tries = 200, seed = "7")
  void agreesWithCountingDayByDay(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 3 + seed % 20);
    if (!(KaplanMeier.of(lives) instanceof Estimate.Identified<KaplanMeier> identified)) {
      throw new AssertionError("not identified");
    }
    SurvivalCurve curve = identified.value().curve();
    double share = 1;
    double greenwood = 0;
    int j = 0;
    for (int day = curve.fromDay() + 1; day <= curve.toDay(); day++) {
      long atRisk = 0;
      long ended = 0;
      for (Lifetime life : lives) {
        if (life.entryDay() < day && day <= life.lowerDay()) {
          atRisk += life.count();
          ended += life.exact() && life.lowerDay() == day ? life.count() : 0;
        }
      }
      assertTrue(atRisk > 0, "nobody at risk on day " + day);
      if (ended > 0) {
        share *= 1 - (double) ended / atRisk;
        assertEquals(share, curve.survival()[j], 1e-12);
        if (share > 0) {
          greenwood += (double) ended / atRisk / (atRisk - ended);
          assertEquals(share * share * greenwood, curve.variance()[j], 1e-12);
        }
        j++;
      }
      assertTrue(share > 0 || day == curve.toDay(), "0 while others go on");
    }
    assertEquals(j, curve.days().length);
  }

  @Property(tries = 50, seed = "7")
  void orderAndMergingAreOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 15);
    List<Lifetime> split = new ArrayList<>();
    for (Lifetime life : lives) {
      for (long k = 0; k < life.count(); k++) {
        split.add(life.times(1));
      }
    }
    Collections.shuffle(split, new Random(seed));
    assertArrayEquals(km(lives).curve().survival(), km(split).curve().survival());
    assertArrayEquals(km(lives).curve().variance(), km(split).curve().variance());
  }

  /**
   * The first life alone ends on day 3; five others enter later: restart where five are at risk.
   */
  @Test
  void restartsWhereAnEarlyRiskSetDiesOut() {
    List<Lifetime> lives = new ArrayList<>(List.of(end(3)));
    for (int i = 0; i < 6; i++) {
      lives.add(Lifetime.ended(2 + 10 * i, 100 + i));
    }
    // From day 2 the second life is at risk, so day 3 does not take the curve to 0.
    assertEquals(0, km(lives).curve().fromDay());
    lives.set(1, Lifetime.ended(3, 100));
    KaplanMeier km = km(lives);
    assertEquals(42, km.curve().fromDay());
    assertEquals(
        "conditional on lasting to day 42, because too few lives were at risk before it",
        km.caution());
    assertEquals(1, km.leftOut());
    assertEquals(5 / 6.0, km.curve().at(100, 0.95).orThrow().value(), 1e-15);
    assertInstanceOf(Estimate.NotIdentified.class, km.curve().at(41, 0.95));
  }

  /** A lone late entry after everybody has left does not take over the curve. */
  @Test
  void aLateStragglerDoesNotRestartTheCurve() {
    KaplanMeier km = km(List.of(end(5), end(6), Lifetime.goingOn(0, 10), Lifetime.ended(50, 60)));
    assertEquals(0, km.curve().fromDay());
    assertEquals(10, km.curve().toDay());
    assertEquals(1, km.leftOut());
    assertInstanceOf(Estimate.NotIdentified.class, km.curve().at(55, 0.95));
    assertInstanceOf(Estimate.NotIdentified.class, km.restrictedMean(55, 0.95));
  }

  @Test
  void conditionalCurveDropsWhatEndedBefore() {
    KaplanMeier km =
        KaplanMeier.conditionalOn(2, List.of(end(1), end(2), end(3), end(4))).orThrow();
    assertEquals(2, km.curve().fromDay());
    assertEquals(0.5, km.curve().at(3, 0.95).orThrow().value());
    assertEquals(
        "conditional on lasting to day 2, because nobody was watched before it", km.caution());
  }

  /** By hand: 4 open lives, lower limit .025^(1/4) while all four are at risk. */
  @Test
  void withoutEndsThereIsALowerLimit() {
    KaplanMeier km = km(List.of(Lifetime.goingOn(0, 9).times(4)));
    PointEstimate share = km.curve().at(9, 0.95).orThrow();
    assertEquals(1, share.value());
    assertEquals(Math.pow(0.025, 0.25), share.interval().lower(), 1e-12);
    assertInstanceOf(Estimate.NotIdentified.class, km.curve().median(0.95));
    assertEquals(9, km.restrictedMean(9, 0.95).orThrow().value());
    assertEquals(
        -Math.log(0.025) / 4, km.cumulativeHazard(9, 0.95).orThrow().interval().upper(), 1e-12);
  }

  @Test
  void hardInputs() {
    assertInstanceOf(Estimate.NotIdentified.class, KaplanMeier.of(List.of()));
    assertInstanceOf(Estimate.NotIdentified.class, KaplanMeier.of(List.of(Lifetime.ended(7, 7))));
    // all at once
    KaplanMeier atOnce = km(List.of(end(8).times(1000)));
    assertEquals(0, atOnce.curve().at(8, 0.95).orThrow().value());
    assertEquals(
        1 - Math.pow(0.025, 0.001), atOnce.curve().at(8, 0.95).orThrow().interval().upper(), 1e-12);
    assertEquals(8, atOnce.restrictedMean(20, 0.95).orThrow().value());
    assertEquals(8, atOnce.curve().median(0.95).orThrow().day());
    // a range of 10^6
    KaplanMeier wide = km(List.of(end(1), end(1_000_000)));
    assertEquals(500_000.5, wide.restrictedMean(1_000_000, 0.95).orThrow().value(), 1e-6);
    assertThrows(
        IllegalArgumentException.class,
        () -> KaplanMeier.of(List.of(Lifetime.endedWithin(0, 3, 9))));
    assertThrows(IllegalArgumentException.class, () -> new Lifetime(0, 5, 4, 1));
  }

  private static List<Lifetime> arm(String arm) {
    return Reference.read("03_km/input.csv").where("arm", arm).rows().stream()
        .map(KaplanMeierTest::life)
        .toList();
  }

  private static Lifetime life(Map<String, String> row) {
    int time = Integer.parseInt(row.get("time"));
    return row.get("status").equals("1") ? end(time) : Lifetime.goingOn(0, time);
  }

  private static Lifetime end(int day) {
    return Lifetime.ended(0, day);
  }

  private static KaplanMeier km(List<Lifetime> lives) {
    return KaplanMeier.of(lives).orThrow();
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static List<Lifetime> invented(Random random, int count) {
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int entry = random.nextInt(10);
      int exit = entry + 1 + random.nextInt(15);
      Lifetime life =
          random.nextBoolean() ? Lifetime.ended(entry, exit) : Lifetime.goingOn(entry, exit);
      lives.add(life.times(1 + random.nextInt(3)));
    }
    return lives;
  }
}
