package sealspan.study.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.WaterDisturbed;

/** The fleet keeps to its stated truth: each check fails only at p below .001, seeds fixed. */
class PracticeTruthTest {
  private static final TrueWear WEAR = TrueWear.plain(2, 6);
  private static final double[] QS = {0.6, 0.05};

  private static PracticeParameters plain(int positions) {
    return PracticeParameters.plain(41, positions, WEAR, TrueRepairs.plain(QS[0], QS[1]));
  }

  @Test
  void theFirstYearlyTestFailsAsTheWeibullSays() {
    double expected = 0;
    double variance = 0;
    int failed = 0;
    PracticeFleet fleet = new PracticeFleet(plain(4000));
    TrueRates rates = new TrueRates(fleet.parameters());
    for (int position = 0; position < 4000; position++) {
      List<TestPerformed> tests = tests(fleet.eventsAt(position));
      TestPerformed first = tests.get(1);
      long days = first.when().day().toEpochDay() - tests.get(0).when().day().toEpochDay();
      double both = Math.pow(rates.wearSurvival(SealKind.CHECK, days), 2);
      expected += 1 - both;
      variance += both * (1 - both);
      failed += first.verdictIssued() == IssuedVerdict.FAILED ? 1 : 0;
    }
    assertTrue(
        Math.abs(failed - expected) < 3.29 * Math.sqrt(variance),
        failed + " failed, expected " + expected);
  }

  @Test
  void everyTrueFailureIsSeenAtItsFirstVisitAndNothingElseFails() {
    PracticeFleet fleet = new PracticeFleet(plain(500));
    int failures = 0;
    for (int position = 0; position < 500; position++) {
      Set<LocalDate> failed = new HashSet<>();
      for (TestPerformed test : tests(fleet.eventsAt(position))) {
        if (test.phase() == Phase.AS_FOUND && test.verdictIssued() == IssuedVerdict.FAILED) {
          failed.add(test.when().day());
        }
      }
      Set<LocalDate> truth = new HashSet<>();
      fleet.truthAt(position).failures().forEach(f -> truth.add(f.firstVisitOn()));
      assertEquals(truth, failed);
      failures += truth.size();
    }
    assertTrue(failures > 300, "failures: " + failures);
  }

  @Test
  void actionsLeaveTheStatedShareOfTheVirtualAge() {
    int[] deeds = new int[2];
    new PracticeFleet(plain(500))
        .truths()
        .flatMap(t -> t.actions().stream())
        .forEach(
            a -> {
              int replaced = a.deed() == TrueAction.Deed.REPLACED ? 1 : 0;
              assertEquals(QS[replaced] * a.virtualAgeBeforeDays(), a.virtualAgeAfterDays(), 1e-9);
              deeds[replaced]++;
            });
    // The plain choice is by the toss of a coin.
    BinomialCheck.share("replaced", 0.5, deeds[1], deeds[0] + deeds[1]);
  }

  @Test
  void afterAnActionFailuresFollowTheVirtualAge() {
    // Of seals acted on at a test, those that wear out by the next visit: a sum of Bernoullis with
    // probability 1 - exp(H(v) - H(v + days)), H(a) = (a/scale)^shape.
    PracticeFleet fleet = new PracticeFleet(plain(3000));
    double scale = WEAR.scaleDays(SealKind.CHECK);
    double expected = 0;
    double variance = 0;
    int failed = 0;
    for (int position = 0; position < 3000; position++) {
      PositionTruth truth = fleet.truthAt(position);
      TreeMap<LocalDate, Integer> visits = new TreeMap<>();
      tests(fleet.eventsAt(position)).forEach(t -> visits.put(t.when().day(), 1));
      for (TrueAction action : truth.actions()) {
        LocalDate next = visits.higherKey(action.day());
        if (next == null) {
          continue;
        }
        double v = action.virtualAgeAfterDays();
        double until = v + next.toEpochDay() - action.day().toEpochDay();
        double p = -Math.expm1(Math.pow(v / scale, 2) - Math.pow(until / scale, 2));
        expected += p;
        variance += p * (1 - p);
        failed +=
            truth.failures().stream()
                    .anyMatch(
                        f ->
                            f.component().equals(action.component())
                                && f.firstVisitOn().equals(next))
                ? 1
                : 0;
      }
    }
    assertTrue(expected > 300);
    assertTrue(
        Math.abs(failed - expected) < 3.29 * Math.sqrt(variance),
        failed + " failed, expected " + expected);
  }

  @Test
  void repairsDoNotTakeAtTheStatedShares() {
    PracticeParameters parameters =
        PracticeParameters.plain(
            43, 2000, WEAR, TrueRepairs.plain(0.6, 0.05).withDoesNotTake(0.2, 0.05));
    long[][] counts = new long[2][2];
    new PracticeFleet(parameters)
        .truths()
        .flatMap(t -> t.actions().stream())
        .forEach(a -> counts[a.deed() == TrueAction.Deed.REPLACED ? 1 : 0][a.held() ? 1 : 0]++);
    BinomialCheck.share("cleaning not taking", 0.2, counts[0][0], counts[0][0] + counts[0][1]);
    BinomialCheck.share("replacing not taking", 0.05, counts[1][0], counts[1][0] + counts[1][1]);
  }

  @Test
  void theOlderAndTheWornAreReplacedMoreOften() {
    PracticeFleet fleet = new PracticeFleet(PracticeParameters.usual(44, 3000));
    double expected = 0;
    double variance = 0;
    long replaced = 0;
    Set<Double> probabilities = new HashSet<>();
    for (TrueAction action :
        (Iterable<TrueAction>) fleet.truths().flatMap(t -> t.actions().stream())::iterator) {
      if (action.replaceProbability() != null) {
        double p = action.replaceProbability();
        probabilities.add(p);
        expected += p;
        variance += p * (1 - p);
        replaced += action.deed() == TrueAction.Deed.REPLACED ? 1 : 0;
      }
    }
    assertTrue(probabilities.size() > 100, "the choice follows age and state");
    assertTrue(Math.abs(replaced - expected) < 3.29 * Math.sqrt(variance));
    TrueRepairs truth = TrueRepairs.usual();
    assertTrue(
        truth.replaceProbability(8000, 9000, SealState.WORN)
            > truth.replaceProbability(1000, 9000, SealState.WORN));
    // By hand: at one scale the logit is -.2, worn .8; 1/(1+e^-.8) = .6899745.
    assertEquals(0.6899745, truth.replaceProbability(9000, 9000, SealState.WORN), 5e-8);
  }

  @Test
  void reportsGoAstrayAtTheStatedShares() {
    ReportHabits habits = ReportHabits.usual();
    PracticeFleet fleet = new PracticeFleet(PracticeParameters.usual(45, 2000));
    long visits = 0;
    long late = 0;
    long corrected = 0;
    long voided = 0;
    long repeated = 0;
    long items = 0;
    long withoutMechanism = 0;
    for (int position = 0; position < 2000; position++) {
      Set<String> seen = new HashSet<>();
      Set<String> again = new HashSet<>();
      for (LoggedEvent logged : fleet.eventsAt(position)) {
        boolean first = seen.add(logged.id());
        corrected += logged.event() instanceof EventCorrected ? 1 : 0;
        voided += logged.event() instanceof EventVoided ? 1 : 0;
        if (logged.event() instanceof TestPerformed test && test.visit().sequence() == 1) {
          if (!first && again.add(logged.id())) {
            repeated++;
          } else if (first && !test.visit().id().endsWith("W")) {
            visits++;
            late += lagDays(logged) > 40 ? 1 : 0;
          }
        }
        if (logged.event() instanceof RepairPerformed repair && first) {
          for (RepairItem item : repair.items()) {
            if (item.mode() != null) {
              items++;
              withoutMechanism += item.mechanism() == null ? 1 : 0;
            }
          }
        }
      }
    }
    BinomialCheck.share("late", habits.late(), late, visits);
    BinomialCheck.share("voided", habits.voided(), voided, visits);
    BinomialCheck.share("no mechanism", habits.mechanismNotRecorded(), withoutMechanism, items);
    // A visit without a number to slip in is not corrected, and one that is both repeated and in
    // conflict counts once; both are rarer than 1 in 100 of the cases.
    BinomialCheck.share("corrected", habits.corrected(), corrected, visits);
    double twice = 1 - (1 - habits.duplicated()) * (1 - habits.conflicting());
    BinomialCheck.share("sent again", twice, repeated, visits);
  }

  @Test
  void foulingFollowsAMainBreakNearBy() {
    // By hand: base 2 a year over 730.5 days, 6 times that for 90 days at 500 m (a 3-4-5
    // triangle): hazards 2(100/365.25), 12(90/365.25), 2(540.5/365.25).
    TrueFouling truth = new TrueFouling(2, 0, 0, 0, 6, 90, 900, 0, 1, 0);
    int begin = (int) LocalDate.of(2012, 1, 1).toEpochDay();
    PracticeTown town =
        PracticeTown.usual()
            .withInjected(
                List.of(
                    new PracticeTown.Injected(
                        0,
                        LocalDate.ofEpochDay(begin + 100L),
                        WaterDisturbed.Kind.MAIN_BREAK,
                        1000,
                        1000)));
    PracticeParameters parameters = plain(1).with(truth).with(town);
    FoulingRate near =
        new FoulingRate(
            parameters, new Site(0, 1, 0, 1300, 1400, 60), new ZoneWater(parameters, 0));
    FoulingRate far =
        new FoulingRate(
            parameters, new Site(0, 1, 0, 2000, 1400, 60), new ZoneWater(parameters, 0));
    assertEquals(6, near.ratioAt(begin + 100));
    assertEquals(6, near.ratioAt(begin + 189.9));
    assertEquals(1, near.ratioAt(begin + 190));
    assertEquals(1, far.ratioAt(begin + 150));
    double before = 200 / 365.25;
    double during = 1080 / 365.25;
    double inWindow = Math.exp(-before) * -Math.expm1(-during);
    int hits = 0;
    int due = 0;
    for (int i = 0; i < 20_000; i++) {
      Draws draws = Draws.of(46, Draws.Purpose.FOULING, i, 0, 0);
      double at = near.nextAfter(begin, 1, begin + 730, draws);
      if (at >= begin + 100 && at < begin + 190) {
        hits++;
        due += near.causeOf(at, draws) != null ? 1 : 0;
      }
    }
    BinomialCheck.share("fouled in the window", inWindow, hits, 20_000);
    BinomialCheck.share("of these, due to the break", 5.0 / 6, due, hits);
  }

  @Test
  void frailtyHasItsMeanAndSpread() {
    // A gamma variable of mean 1 and shape k = 1/cv^2 has fourth central moment 3/k^2 + 6/k^3.
    double cv = 0.5;
    double shape = 1 / (cv * cv);
    int n = 40_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double x = Draws.of(47, Draws.Purpose.UNIT, i, 0, 0).gammaOfMeanOne(cv) - 1;
      sum += x;
      squares += x * x;
    }
    double fourth = 3 / (shape * shape) + 6 / (shape * shape * shape);
    assertEquals(0, sum / n, 3.29 * cv / Math.sqrt(n));
    assertEquals(cv * cv, squares / n, 3.29 * Math.sqrt((fourth - Math.pow(cv, 4)) / n));
  }

  @Test
  void averagedCurvesAgreeWithTheirFormula() {
    // By hand: at one scale H = 1; without frailty e^-1; with cv .5, (1 + .25)^-4 = .4096.
    PracticeParameters parameters = plain(1);
    double scale = WEAR.scaleDays(SealKind.CHECK);
    assertEquals(
        Math.exp(-1), new TrueRates(parameters).wearSurvival(SealKind.CHECK, scale), 1e-15);
    TrueRates frail = new TrueRates(parameters.with(WEAR.withFrailtyCv(0.5)));
    assertEquals(0.4096, frail.wearSurvival(SealKind.CHECK, scale), 1e-12);
  }

  private static List<TestPerformed> tests(List<LoggedEvent> events) {
    return events.stream()
        .filter(e -> e.event() instanceof TestPerformed)
        .map(e -> (TestPerformed) e.event())
        .toList();
  }

  private static long lagDays(LoggedEvent logged) {
    return logged.reportedAt().getEpochSecond() / 86_400 - logged.event().when().day().toEpochDay();
  }
}
