package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.junit.jupiter.api.Test;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposurePowerRow;
import sealspan.table.ExposureRow;
import sealspan.table.FitRows;
import sealspan.table.RateEffectRow;
import sealspan.table.RateRow;
import sealspan.table.TestRow;

/** Fleets drawn from known truths, seeds fixed. */
class RatePriorsTest {
  private static final LocalDate START = LocalDate.of(2010, 1, 1);
  private static final FitCut CUT = new FitCut("cut", "0:1", Instant.EPOCH, 1);

  /** How a unit of an invented fleet fails at a test after some days. */
  private interface Truth {
    boolean fails(int unit, int days, Random random);
  }

  @Test
  void assembliesThatDifferNoMoreThanChanceShareOneRate() {
    List<AssemblyRows> fleet =
        fleet(120, 6, 365, 1, (unit, days, r) -> r.nextDouble() < 1 - Math.exp(-.1 * days / 365));
    FitRows fit = Fits.of("all", Members.of(fleet), CUT);
    assertTrue(fit.ratePrior().note().contains("no more than chance"), fit.ratePrior().note());
    assertNull(fit.ratePrior().latticeStep());
    RateRow row = scored(fleet, fit).get(0);
    assertEquals("COMMON_RATE", row.expectedFrom());
    assertEquals(fit.ratePrior().commonPerYear(), row.shrunkPerYear());
    assertEquals(fit.ratePrior().lowerPerYear(), row.shrunkLowerPerYear());
    assertEquals(1 - Math.exp(-row.shrunkPerYear()), row.failsWithinYear(), 1e-12);
    assertNull(row.expectedRank());
    assertTrue(row.note().contains("common one of all assemblies"), row.note());
  }

  /** Reduced pressure assemblies fail twice as often, and a tenth of all five times as often. */
  @Test
  void assembliesThatDifferAreRankedAndClaimed() {
    Truth truth =
        (unit, days, r) -> {
          double rate = .05 * (unit % 2 == 0 ? 2 : 1) * (unit % 10 < 1 ? 5 : 1);
          return r.nextDouble() < 1 - Math.exp(-rate * days / 365);
        };
    List<AssemblyRows> fleet = fleet(1_500, 8, 365, 2, truth);
    FitRows fit = Fits.of("all", Members.of(fleet), CUT);
    RateEffectRow type =
        fit.rateEffects().stream().filter(e -> e.level().equals("RP")).findFirst().orElseThrow();
    // The bad ones are of even number, as are the RP: so their true ratio is 2 x 1.8.
    assertTrue(type.lower() < 3.6 && type.upper() > 3 && type.lower() > 2, type.toString());
    List<RateRow> rows = scored(fleet, fit);
    long n = fit.ratePrior().ranked();
    assertEquals(1_500 - 15, n);
    List<RateRow> ranked = rows.stream().filter(r -> r.expectedRank() != null).toList();
    assertEquals(n, ranked.size());
    double sum = ranked.stream().mapToDouble(RateRow::expectedRank).sum();
    assertEquals(n * (n + 1) / 2.0, sum, 1e-3);
    double worst = ranked.stream().mapToDouble(RateRow::probabilityWorstTen).sum();
    assertEquals(10, worst, .3);
    long listed = ranked.stream().filter(RateRow::listed).count();
    assertEquals(fit.ratePrior().listed().longValue(), listed);
    assertTrue(listed > 20, "listed " + listed);
    double wrong =
        ranked.stream()
            .filter(RateRow::listed)
            .mapToDouble(r -> 1 - r.probabilityDoubleMean())
            .sum();
    assertTrue(wrong <= RateFleet.WRONG_CLAIMS * listed);
    long right =
        ranked.stream()
            .filter(RateRow::listed)
            .filter(r -> Integer.parseInt(r.assemblyId().substring(1)) % 10 == 0)
            .count();
    assertTrue(right >= .8 * listed, right + " of " + listed);
    for (RateRow row : ranked) {
      assertTrue(row.rankLower() <= row.expectedRank() + 1 && row.rankUpper() <= n);
    }
    assertTrue(fit.ratePrior().splineLikelihood() <= fit.ratePrior().highestLikelihood() + 1e-6);
  }

  @Test
  void orderOfAssembliesIsOfNoAccount() {
    Truth truth =
        (unit, days, r) -> r.nextDouble() < 1 - Math.exp(-(unit % 5 == 0 ? .6 : .05) * days / 365);
    List<AssemblyRows> fleet = fleet(300, 6, 365, 3, truth);
    List<AssemblyRows> shuffled = new ArrayList<>(fleet);
    Collections.shuffle(shuffled, new Random(8));
    FitRows fit = Fits.of("all", Members.of(fleet), CUT);
    assertEquals(fit, Fits.of("all", Members.of(shuffled), CUT));
    assertNotNull(fit.ratePrior().latticeStep());
  }

  /**
   * A fault that clears itself: the chance is the same after a hundred days and after a thousand.
   */
  @Test
  void whereFailuresDoNotAccumulateSharesAreQuoted() {
    List<AssemblyRows> fleet = fleet(400, 6, 0, 4, (unit, days, r) -> r.nextDouble() < .2);
    FitRows fit = Fits.of("all", Members.of(fleet), CUT);
    ExposurePowerRow power = fit.exposurePowers().get(0);
    assertEquals("all", power.stratum());
    assertTrue(Math.abs(power.coefficient()) < .2, power.toString());
    assertEquals("PER_TEST", power.quoted());
    RateRow row = scored(fleet, fit).get(0);
    assertEquals("PER_TEST", row.quoted());
    assertNull(row.perYear());
    assertNull(row.shrunkPerYear());
    assertEquals(row.failures() / (double) row.tests(), row.shareFailed());
    assertEquals(.2, row.failsWithinYear(), .06);
    assertTrue(row.note().contains("shares per test are quoted"), row.note());
  }

  /** Widely different rates make failures look as if they came early; the coefficient stays 1. */
  @Test
  void differingAssembliesDoNotPassForFailuresThatClear() {
    Random draws = new Random(5);
    double[] rate = new double[1_200];
    for (int i = 0; i < rate.length; i++) {
      rate[i] = new GammaDistribution(.7, .5).inverseCumulativeProbability(draws.nextDouble());
    }
    List<AssemblyRows> fleet =
        fleet(
            1_200,
            6,
            0,
            5,
            (unit, days, r) -> r.nextDouble() < 1 - Math.exp(-rate[unit] * days / 365.25));
    ExposurePowerRow power = Fits.of("all", Members.of(fleet), CUT).exposurePowers().get(0);
    assertTrue(power.lower() <= 1 && 1 <= power.upper(), power.toString());
    assertTrue(power.upper() - power.lower() < .4, power.toString());
  }

  /** The only failure was found with an expired gauge: no failure without it. */
  @Test
  void ratesAreGivenWithoutRoundsThatDoNotComply() {
    List<AssemblyRows> fleet = fleet(40, 4, 365, 6, (unit, days, r) -> false);
    AssemblyRows first = fleet.get(0);
    AssemblyRows odd = withFailedFirstRound(first);
    fleet.set(0, odd);
    FitRows fit = Fits.of("all", Members.of(fleet), CUT);
    assertEquals(1, fit.ratePrior().failures());
    assertEquals(0, fit.ratePrior().compliantFailures());
    assertEquals(fit.ratePrior().tests() - 1, fit.ratePrior().compliantTests());
    RateRow row = scored(fleet, fit).get(0);
    assertEquals(1, row.failures());
    assertEquals(0, row.compliantFailures());
    assertEquals(0.0, row.compliantPerYear());
    assertTrue(row.perYear() > 0);
    // By hand: no failure in 3 x 365 days, upper limit -ln(.025) / years.
    assertEquals(-Math.log(.025) / (3 * 365 / 365.25), row.compliantUpperPerYear(), 1e-9);
  }

  /** Assemblies of a site that fail together, by hand: the same residual for both. */
  @Test
  void likenessOfASiteIsFound() {
    Random random = new Random(3);
    List<AssemblyRows> alike = new ArrayList<>();
    for (int site = 0; site < 200; site++) {
      boolean[] fails = new boolean[5];
      for (int k = 0; k < 5; k++) {
        fails[k] = random.nextDouble() < .3;
      }
      for (int unit = 0; unit < 2; unit++) {
        List<Boolean> outcomes = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
          outcomes.add(fails[k]);
        }
        alike.add(assembly("A" + (2 * site + unit), "S" + site, "RP", outcomes, 365));
      }
    }
    Double correlation = Fits.of("all", Members.of(alike), CUT).ratePrior().siteCorrelation();
    // Of 25 pairs of tests five are the same round: a correlation of a fifth.
    assertEquals(.2, correlation, .05);
  }

  private static List<RateRow> scored(List<AssemblyRows> fleet, FitRows fit) {
    LatestFits latest = LatestFits.of(List.of(fit));
    List<RateRow> rows = new ArrayList<>();
    for (AssemblyRows each : fleet) {
      rows.add(RateRows.of(each.assembly(), each.tests(), each.exposures(), latest));
    }
    return rows;
  }

  /** Days of 0: exposures from a hundred to a thousand days, evenly in the logarithm. */
  private static List<AssemblyRows> fleet(int units, int tests, int days, long seed, Truth truth) {
    Random random = new Random(seed);
    List<AssemblyRows> fleet = new ArrayList<>();
    for (int unit = 0; unit < units; unit++) {
      List<Boolean> outcomes = new ArrayList<>();
      List<Integer> exposures = new ArrayList<>();
      for (int k = 0; k < tests; k++) {
        int exposure = days > 0 ? days : (int) (100 * Math.pow(10, random.nextDouble()));
        exposures.add(exposure);
        outcomes.add(truth.fails(unit, exposure, random));
      }
      fleet.add(
          assembly("A" + unit, "S" + unit / 3, unit % 2 == 0 ? "RP" : "DC", outcomes, exposures));
    }
    return fleet;
  }

  private static AssemblyRows assembly(
      String id, String site, String type, List<Boolean> failed, int days) {
    return assembly(id, site, type, failed, Collections.nCopies(failed.size(), days));
  }

  private static AssemblyRows assembly(
      String id, String site, String type, List<Boolean> failed, List<Integer> days) {
    List<TestRow> tests = new ArrayList<>();
    List<ExposureRow> exposures = new ArrayList<>();
    LocalDate day = START;
    for (int k = 0; k < failed.size(); k++) {
      LocalDate from = day;
      day = day.plusDays(days.get(k));
      exposures.add(
          new ExposureRow(
              id,
              id + "-" + k,
              "whole",
              from,
              day,
              days.get(k),
              days.get(k),
              failed.get(k),
              null,
              "none"));
      tests.add(test(id, id + "-" + k, day, type, true));
    }
    boolean removed = id.endsWith("99");
    AssemblyRow row =
        new AssemblyRow(
            id,
            site,
            null,
            null,
            "Z1",
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            type,
            "2",
            null,
            null,
            null,
            START,
            START,
            removed ? day : null,
            null,
            null,
            null,
            null,
            null,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            0,
            null);
    return new AssemblyRows(
        id, 0, row, tests, List.of(), exposures, List.of(), List.of(), List.of(), List.of(),
        List.of(), null, List.of(), List.of(), null, List.of());
  }

  private static AssemblyRows withFailedFirstRound(AssemblyRows rows) {
    List<ExposureRow> exposures = new ArrayList<>(rows.exposures());
    ExposureRow first = exposures.get(0);
    exposures.set(
        0,
        new ExposureRow(
            first.assemblyId(),
            first.eventId(),
            first.component(),
            first.fromDay(),
            first.toDay(),
            first.exposureDays(),
            first.exposureDays(),
            true,
            "DAMAGE",
            first.lastAction()));
    List<TestRow> tests = new ArrayList<>(rows.tests());
    tests.set(0, test(rows.assemblyId(), first.eventId(), first.toDay(), "RP", false));
    return new AssemblyRows(
        rows.assemblyId(),
        0,
        rows.assembly(),
        tests,
        List.of(),
        exposures,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        null,
        List.of());
  }

  private static TestRow test(
      String id, String eventId, LocalDate day, String type, boolean compliant) {
    return new TestRow(
        id,
        eventId,
        null,
        1,
        day,
        null,
        null,
        "AS_FOUND",
        null,
        null,
        null,
        null,
        null,
        type,
        "2",
        null,
        "Z1",
        null,
        null,
        null,
        null,
        false,
        true,
        null,
        compliant,
        null,
        null,
        null,
        null);
  }
}
