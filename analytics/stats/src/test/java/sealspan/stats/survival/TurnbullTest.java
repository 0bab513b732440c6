package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;
import sealspan.stats.survival.Turnbull.Box;
import sealspan.stats.survival.Turnbull.Known;

class TurnbullTest {
  private static final String FOLDER = "05_turnbull/";

  static Turnbull fit(List<Lifetime> lives) {
    Turnbull fit = Turnbull.of(lives).orThrow();
    assertTrue(fit.converged(), "gap " + fit.gap());
    return fit;
  }

  private static List<Lifetime> read(Reference rows) {
    return rows.rows().stream()
        .map(r -> new Lifetime(0, day(r.get("left")), day(r.get("right")), 1))
        .toList();
  }

  private static int day(String text) {
    return text.equals("NA") || text.equals("Inf") ? Lifetime.NEVER : Integer.parseInt(text);
  }

  private static void assertBoxes(Reference expected, Turnbull fit, double tolerance) {
    List<Map<String, String>> rows =
        expected.rows().stream().filter(r -> Double.parseDouble(r.get("prob")) > 1e-9).toList();
    assertEquals(rows.size(), fit.boxes().size());
    for (int i = 0; i < rows.size(); i++) {
      assertEquals(day(rows.get(i).get("left")), fit.boxes().get(i).afterDay());
      assertEquals(day(rows.get(i).get("right")), fit.boxes().get(i).notAfterDay());
      assertEquals(
          Double.parseDouble(rows.get(i).get("prob")), fit.boxes().get(i).share(), tolerance);
    }
  }

  /**
   * Finkelstein and Wolfe 1985, breast cosmesis, both arms as npsurv has them; npsurv 0.5-0, which
   * converges exactly. The RT arm is also that of Fay and Shaw 2010 (from memory) to four digits.
   */
  @Test
  void cosmesisAgreesWithNpsurv() {
    for (String arm : new String[] {"RT", "RCT"}) {
      Turnbull fit = fit(read(Reference.read(FOLDER + "input.csv").where("group", arm)));
      assertBoxes(Reference.read(FOLDER + "expected_npmle.csv").where("group", arm), fit, 1e-8);
      Reference expected = Reference.read(FOLDER + "expected.csv");
      assertEquals(expected.value(arm + " loglik"), fit.logLikelihood(), 1e-9);
      assertEquals(expected.value(arm + " n"), fit.lives());
    }
  }

  /** npsurv on corner cases; its log-likelihood too. It fails on one lone interval, we do not. */
  @Test
  void cornersAgreeWithNpsurv() {
    Reference expected = Reference.read(FOLDER + "expected_hard.csv");
    for (String name :
        List.of("all_right", "all_left", "exact_inside", "touching_open", "current_status")) {
      Reference rows = expected.where("case", name);
      Turnbull fit = fit(read(Reference.read(FOLDER + "input_hard.csv").where("case", name)));
      assertBoxes(rows, fit, 1e-7);
      assertEquals(
          Double.parseDouble(rows.rows().get(0).get("loglik")), fit.logLikelihood(), 1e-8, name);
    }
    Turnbull lone = fit(List.of(Lifetime.endedWithin(0, 2, 5)));
    assertEquals(List.of(new Box(2, 5, 1)), lone.boxes());
  }

  /** Seven lives; R's survfit stops early at .442063, the converged values are these. */
  @Test
  void isConvergedWhereAnEarlyStopIsNot() {
    Turnbull fit =
        fit(
            List.of(
                Lifetime.endedWithin(0, 0, 2),
                Lifetime.endedWithin(0, 1, 3),
                Lifetime.endedWithin(0, 1, 2),
                Lifetime.goingOn(0, 2),
                Lifetime.endedWithin(0, 0, 1),
                Lifetime.endedWithin(0, 3, 5),
                Lifetime.endedWithin(0, 2, 4)));
    assertEquals(0.807981, fit.at(1).orThrow().atLeast(), 5e-7);
    assertEquals(0.442019, fit.at(2).orThrow().atLeast(), 5e-7);
    assertEquals(0.403991, fit.at(3).orThrow().atLeast(), 5e-7);
    assertEquals(new Known(0, 0), fit.at(4).orThrow());
  }

  /** By hand: an end on day R belongs to (L, R], so 1/6 on day 2 and 5/6 on day 3. */
  @Test
  void anEndOnTheLastDayBelongsToTheInterval() {
    Turnbull fit =
        fit(
            List.of(
                Lifetime.ended(0, 2),
                Lifetime.ended(0, 3).times(5),
                Lifetime.endedWithin(0, 1, 3).times(5)));
    assertEquals(2, fit.boxes().size());
    assertEquals(1.0 / 6, fit.boxes().get(0).share(), 1e-9);
    assertEquals(5.0 / 6, fit.at(2).orThrow().atLeast(), 1e-9);
    assertEquals(0.8333, fit.at(2).orThrow().atMost(), 5e-5);
  }

  /** By hand: without enclosed ends it is Kaplan-Meier to the last digit, with its variance. */
  @Test
  void withoutEnclosedEndsItIsKaplanMeier() {
    Reference arm = Reference.read("03_km/input.csv").where("arm", "6-MP");
    List<Lifetime> lives = new ArrayList<>();
    for (Map<String, String> row : arm.rows()) {
      int day = Integer.parseInt(row.get("time"));
      lives.add(row.get("status").equals("1") ? Lifetime.ended(0, day) : Lifetime.goingOn(0, day));
    }
    Turnbull fit = fit(lives);
    SurvivalCurve curve = KaplanMeier.of(lives).orThrow().curve();
    for (int day = 0; day <= curve.toDay(); day++) {
      PointEstimate share = curve.at(day, 0.95).orThrow();
      assertEquals(share, fit.at(day, 0.95).orThrow());
      assertEquals(share.value(), fit.at(day).orThrow().atLeast(), 1e-14);
      assertEquals(share.value(), fit.at(day).orThrow().atMost(), 1e-14);
      assertTrue(share.standardError() >= 0 && Double.isFinite(share.standardError()));
    }
    // Beyond the last day the share may be anything up to the last height.
    assertEquals(new Known(0, fit.at(35).orThrow().atMost()), fit.at(40).orThrow());
    assertEquals(35, fit.toDay());
    assertInstanceOf(Estimate.NotIdentified.class, fit.at(40, 0.95));
    // A life that tells nothing sends the same data through the search instead.
    List<Lifetime> more = new ArrayList<>(lives);
    more.add(Lifetime.endedWithin(0, 0, 1_000));
    Turnbull searched = fit(more);
    double scale = searched.at(5).orThrow().atLeast();
    assertEquals(1, scale, 1e-6);
    for (int day = 0; day <= 23; day++) {
      assertEquals(fit.at(day).orThrow().atLeast(), searched.at(day).orThrow().atLeast(), 1e-7);
    }
  }

  /**
   * By hand: a life is at risk over (entry, exit], so one that enters on the day of an end is not.
   */
  @Test
  void aLifeThatEntersOnTheDayOfAnEndIsNotAtRisk() {
    List<Lifetime> lives =
        List.of(
            Lifetime.ended(0, 4),
            Lifetime.goingOn(0, 9),
            Lifetime.ended(4, 9).times(2),
            Lifetime.endedWithin(4, 4, 9));
    assertEquals(0.5, fit(lives).at(4).orThrow().atLeast(), 1e-8);
    List<Lifetime> entered = new ArrayList<>(lives);
    entered.add(Lifetime.goingOn(3, 9));
    assertEquals(2.0 / 3, fit(entered).at(4).orThrow().atLeast(), 1e-8);
  }

  @Property(tries = 40, seed = "11")
  void lateEntryOnDayZeroChangesNothingAndOrderIsOfNoAccount(
      @ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 40, 0);
    Turnbull fit = fit(lives);
    List<Lifetime> shuffled = new ArrayList<>(lives);
    Collections.shuffle(shuffled, new Random(seed + 1));
    assertEquals(fit.boxes(), fit(shuffled).boxes());
    // Twice each life: the same curve.
    List<Lifetime> doubled = new ArrayList<>(lives);
    doubled.addAll(lives);
    assertSame(fit, fit(doubled), 1, 1e-6);
  }

  /** Times over a range of a thousand: the same shares at scaled days. */
  @Property(tries = 20, seed = "12")
  void scaleIsOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 40, 30);
    List<Lifetime> scaled =
        lives.stream()
            .map(
                l ->
                    new Lifetime(
                        l.entryDay() * 1_000,
                        l.lowerDay() * 1_000,
                        l.open() ? Lifetime.NEVER : l.upperDay() * 1_000,
                        l.count()))
            .toList();
    assertSame(fit(lives), fit(scaled), 1_000, 1e-9);
  }

  private static void assertSame(Turnbull a, Turnbull b, int scale, double tolerance) {
    assertEquals(a.boxes().size(), b.boxes().size());
    for (int i = 0; i < a.boxes().size(); i++) {
      assertEquals(a.boxes().get(i).afterDay() * scale, b.boxes().get(i).afterDay());
      assertEquals(a.boxes().get(i).share(), b.boxes().get(i).share(), tolerance);
    }
  }

  /** Intervals that do not overlap: each its own mass. */
  @Test
  void intervalsApartKeepTheirShares() {
    Turnbull fit =
        fit(
            List.of(
                Lifetime.endedWithin(0, 0, 1),
                Lifetime.endedWithin(0, 1, 2),
                Lifetime.endedWithin(0, 2, 3).times(2)));
    assertEquals(3, fit.boxes().size());
    assertEquals(0.5, fit.at(2).orThrow().atMost(), 1e-9);
    assertEquals(0, fit.at(3).orThrow().atMost(), 1e-12);
    assertEquals(new Box(1, 2, 0.5), fit.median());
  }

  /** Independent: plain self-consistency on every elementary stretch, run to rest. */
  @Property(tries = 60, seed = "13")
  void agreesWithPlainSelfConsistency(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 14, seed % 2 == 0 ? 0 : 25);
    Turnbull fit = fit(lives);
    Assume.that(
        fit.leftOut() == 0
            && fit.fromDay() == lives.stream().mapToInt(Lifetime::entryDay).min().orElseThrow());
    // Mass before the first entry is free, so shares are compared from there on.
    PlainTurnbull slow = new PlainTurnbull(lives);
    // Self-consistency creeps where a mass goes to 0, so its likelihood is compared closely.
    assertTrue(fit.logLikelihood() >= slow.logLikelihood() - 1e-9, seed + ": below");
    assertEquals(slow.logLikelihood(), fit.logLikelihood(), 2e-5);
    for (Box box : fit.boxes()) {
      if (!box.open()) {
        assertEquals(
            slow.beyond(box.notAfterDay()) / slow.beyond(fit.fromDay()),
            fit.at(box.notAfterDay()).orThrow().atMost(),
            2e-3);
      }
    }
  }

  /** The conditions of Kuhn and Tucker, written anew: no cell gains by more mass. */
  @Property(tries = 40, seed = "14")
  void noStretchOfDaysWouldGainByMoreMass(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<Lifetime> lives = invented(new Random(seed), 200, seed % 2 == 0 ? 0 : 25);
    Turnbull fit = fit(lives);
    Assume.that(fit.leftOut() == 0);
    for (int day = 1; day < 130; day++) {
      int at = day;
      double gain = 0;
      for (Lifetime life : lives) {
        boolean covers = life.lowerDay() < at && (life.open() || at <= life.upperDay());
        gain +=
            covers
                ? 1
                    / mass(
                        fit,
                        life.lowerDay(),
                        life.exact() ? life.lowerDay() - 1 : life.lowerDay(),
                        life.upperDay())
                : 0;
        gain -= life.entryDay() < at ? 1 / fit.at(life.entryDay()).orThrow().atMost() : 0;
      }
      assertTrue(gain / lives.size() < 1e-7, "day " + day + " gains " + gain);
    }
  }

  private static double mass(Turnbull fit, int lower, int after, int upper) {
    return fit.boxes().stream()
        .filter(
            b ->
                lower == upper
                    ? b.exact() && b.afterDay() == lower
                    : (b.exact() ? b.afterDay() > after : b.afterDay() >= after)
                        && b.notAfterDay() <= upper)
        .mapToDouble(Box::share)
        .sum();
  }

  /** The first life ends before the others enter: the curve is theirs, and says so. */
  @Test
  void restartsWhereTheFirstLivesAllEnded() {
    List<Lifetime> lives = new ArrayList<>();
    lives.add(Lifetime.endedWithin(0, 2, 5));
    for (int i = 0; i < 6; i++) {
      lives.add(Lifetime.endedWithin(10, 20 + 10 * i, 30 + 10 * i));
    }
    Turnbull fit = fit(lives);
    assertEquals(10, fit.fromDay());
    assertEquals(1, fit.leftOut());
    assertEquals(
        "conditional on lasting to day 10, because lives before it ended before others were watched",
        fit.caution());
    assertEquals(5.0 / 6, fit.at(30).orThrow().atLeast(), 1e-8);
    assertInstanceOf(Estimate.NotIdentified.class, fit.at(5));
    // Nobody known to go on from day 5 on is the same.
    lives.set(0, Lifetime.goingOn(0, 5));
    assertEquals(10, fit(lives).fromDay());
    // One that goes on over the gap ties both together.
    lives.set(0, Lifetime.goingOn(0, 15));
    assertEquals(0, fit(lives).fromDay());
    assertEquals("", fit(lives).caution());
  }

  @Test
  void startsWhereSomebodyWasWatched() {
    Turnbull fit = fit(List.of(Lifetime.endedWithin(7, 9, 12), Lifetime.endedWithin(8, 12, 14)));
    assertEquals(7, fit.fromDay());
    assertEquals(
        "conditional on lasting to day 7, because nobody was watched before it", fit.caution());
    assertEquals(new Known(0.5, 0.5), rounded(fit.at(12).orThrow()));
  }

  private static Known rounded(Known known) {
    return new Known(
        Math.round(known.atLeast() * 1e8) / 1e8, Math.round(known.atMost() * 1e8) / 1e8);
  }

  @Test
  void hardInputsGiveAnAnswerOrAReason() {
    assertEquals(
        "no life was watched for a day",
        assertInstanceOf(Estimate.NotIdentified.class, Turnbull.of(List.of())).because());
    assertInstanceOf(
        Estimate.NotIdentified.class,
        Turnbull.of(List.of(Lifetime.goingOn(5, 5), Lifetime.endedWithin(9, 3, 8))));
    // An end that must have come before the life was watched is left out and counted.
    assertEquals(
        1, fit(List.of(Lifetime.endedWithin(9, 3, 8), Lifetime.endedWithin(0, 3, 8))).leftOut());
    // Nothing ended.
    Turnbull none = fit(List.of(Lifetime.goingOn(0, 5), Lifetime.goingOn(0, 9)));
    assertEquals(List.of(new Box(9, Lifetime.NEVER, 1)), none.boxes());
    assertEquals(new Known(1, 1), none.at(9).orThrow());
    assertEquals(new Known(0, 1), none.at(10).orThrow());
    assertTrue(none.median().open());
    // All ended at once.
    assertEquals(
        List.of(new Box(3, 7, 1)), fit(List.of(Lifetime.endedWithin(0, 3, 7).times(9))).boxes());
    // A range of a million, and a billion lives of one kind.
    Turnbull wide =
        fit(
            List.of(
                Lifetime.endedWithin(0, 0, 1),
                Lifetime.endedWithin(0, 1_000_000_000, 2_000_000_000).times(999_999_999)));
    assertEquals(1 - 1e-9, wide.at(1).orThrow().atLeast(), 1e-12);
  }

  /** Nothing but lives that had ended: a sample cut off on the right has no way in. */
  @Test
  void aLifetimeCannotBeGivenATruncationOnTheRight() {
    assertEquals(4, Lifetime.class.getRecordComponents().length);
    assertThrows(IllegalArgumentException.class, () -> new Lifetime(0, 9, 5, 1));
    assertThrows(IllegalArgumentException.class, () -> Lifetime.endedWithin(-1, 0, 5));
  }

  /** By hand: the distance to another curve at the edges of boxes. */
  @Test
  void distanceIsTakenWhereTheCurveIsKnown() {
    Turnbull fit = fit(List.of(Lifetime.endedWithin(0, 10, 20), Lifetime.endedWithin(0, 30, 40)));
    Turnbull.Distance distance = fit.distance(day -> day < 25 ? 1 : 0.55).orThrow();
    assertEquals(40, distance.day());
    assertEquals(0.55, distance.share(), 1e-9);
    assertInstanceOf(
        Estimate.NotIdentified.class,
        Turnbull.of(List.of(Lifetime.endedWithin(0, 0, 9).times(1)))
            .orThrow()
            .distance(day -> Double.NaN));
    assertFalse(fit.boxes().isEmpty());
  }

  /** Lives looked at now and then, some exact, some entered late. */
  static List<Lifetime> invented(Random random, int count, int latest) {
    List<Lifetime> lives = new ArrayList<>();
    while (lives.size() < count) {
      int end = 1 + random.nextInt(100);
      int entry = latest == 0 ? 0 : random.nextInt(latest);
      if (end <= entry) {
        continue;
      }
      int held = entry + random.nextInt(end - entry);
      int found = end + random.nextInt(20);
      switch (random.nextInt(5)) {
        case 0 -> lives.add(Lifetime.ended(entry, end));
        case 1 -> lives.add(Lifetime.goingOn(entry, end));
        default -> lives.add(Lifetime.endedWithin(entry, held, Math.max(found, held + 1)));
      }
    }
    return lives;
  }
}
