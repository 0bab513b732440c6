package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.on;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.Story;
import sealspan.event.Action;
import sealspan.event.AssemblyType;
import sealspan.event.JobCosted;
import sealspan.event.Mechanism;
import sealspan.event.Money;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GammaPrior;
import sealspan.stats.rates.GridPrior;
import sealspan.stats.rates.GridScores;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateLattice;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.FitRows;
import sealspan.table.RatePriorRow;
import sealspan.table.RateRow;
import sealspan.table.ReadingRow;
import sealspan.table.SealRow;
import sealspan.table.TestRow;
import sealspan.table.ZoneRows;

class AssemblyTablesTest {
  private static final LatestFits NO_FIT = LatestFits.none();

  private static AssemblyRows rows(Story story, LatestFits priors) {
    return AssemblyTables.of(
        Story.ASSEMBLY, story.events(), AcceptanceCriteria.shipped(), priors, 7);
  }

  /** Five yearly tests, of which the third fails; worked by hand. */
  private static Story fiveYears() {
    return new Story()
        .site("2017-01-01", null, "Z1")
        .installed("2018-03-01", AssemblyType.DC)
        .test("t0", "2018-03-01", 1, Phase.AS_FOUND, dc("1.6", "1.5"))
        .test("t1", "2019-03-01", 1, Phase.AS_FOUND, dc("1.2", "1.5"))
        .test("t2", "2020-02-29", 1, Phase.AS_FOUND, dc("0.8", "1.3"))
        .repair(
            "r2",
            "2020-02-29",
            2,
            item(CHECK1, Action.DISC_REPLACED, Mechanism.SEAL_WORN, ReplacementReason.FAILED))
        .test("t3", "2020-02-29", 3, Phase.AS_LEFT, dc("1.5", "1.3"))
        .test("t4", "2021-02-28", 1, Phase.AS_FOUND, dc("1.5", "1.2"))
        .test("t5", "2022-02-28", 1, Phase.AS_FOUND, dc("1.4", "1.2"));
  }

  @Test
  void theAssemblyAndItsTotals() {
    AssemblyRow row = rows(fiveYears(), NO_FIT).assembly();
    assertEquals("DC", row.type());
    assertEquals("S-1", row.siteId());
    assertEquals("Z1", row.zoneId());
    assertEquals("Mill", row.siteLabel());
    assertEquals(LocalDate.of(2018, 3, 1), row.installedOn());
    assertEquals(LocalDate.of(2022, 2, 28), row.lastTestOn());
    assertEquals("PASSED", row.lastTestOutcome());
    assertEquals(LocalDate.of(2022, 2, 28), row.lastPassOn());
    assertEquals(5, row.routineTests());
    assertEquals(1, row.failures());
    assertEquals(4, row.testsWithExposure());
    assertEquals(1, row.failuresWithExposure());
    assertEquals(365 + 365 + 365 + 365, row.exposureDays());
    assertEquals(0, row.roundsNotCounted());
    assertEquals(1, row.sealReplacements());
    assertEquals(8, row.events());
    assertEquals(0, row.duplicatesIgnored());
    assertEquals(Instant.parse("2024-01-01T00:00:08Z"), row.lastRecordedAt());
  }

  @Test
  void aFailedRoundInWords() {
    TestRow failed = rows(fiveYears(), NO_FIT).tests().get(2);
    assertEquals("t2", failed.eventId());
    assertEquals("FAILED", failed.outcome());
    assertEquals("DAMAGE", failed.failureClass());
    assertEquals(365, failed.exposureDays());
    assertEquals(730, failed.ageDays());
    assertTrue(failed.counted() && failed.compliant() && failed.marginal());
    assertTrue(
        failed.reason().startsWith("Check 1 held 0.8 psid, the limit is at least 1.0 psid ("),
        failed.reason());
    assertTrue(failed.reason().endsWith(")."), failed.reason());
    assertNull(failed.notCountedBecause());
  }

  @Test
  void aRoundWithoutExposureSaysWhy() {
    List<TestRow> tests = rows(fiveYears(), NO_FIT).tests();
    assertTrue(tests.get(0).counted());
    assertTrue(tests.get(0).notCountedBecause().startsWith("counts in shares"));
    assertEquals(
        "a retest in the same visit: it tells whether the repair took",
        tests.get(3).notCountedBecause());
  }

  @Test
  void readingsAreKeptAsEnteredAndShownInPsi() {
    ReadingRow reading = rows(fiveYears(), NO_FIT).readings().get(2);
    assertEquals("1.2", reading.enteredValue());
    assertEquals("PSI", reading.enteredUnit());
    assertEquals(1.2, reading.psi());
    assertEquals("at least 1.0 psid", reading.limitText());
    assertEquals("PASSED", reading.result());
    assertTrue(reading.marginal());
  }

  @Test
  void exposuresAndSeals() {
    AssemblyRows rows = rows(fiveYears(), NO_FIT);
    List<ExposureRow> whole =
        rows.exposures().stream().filter(e -> e.component().equals("whole")).toList();
    assertEquals(
        List.of("none", "none", "disc_replaced", "none"),
        whole.stream().map(ExposureRow::lastAction).toList());
    assertEquals(
        List.of(false, true, false, false), whole.stream().map(ExposureRow::failed).toList());
    List<SealRow> check1 =
        rows.seals().stream().filter(s -> s.component().equals("check1")).toList();
    assertEquals(2, check1.size());
    assertEquals("REPLACED", check1.get(0).endedBy());
    assertEquals("FAILED", check1.get(0).replacementReason());
    assertEquals(LocalDate.of(2019, 3, 1), check1.get(0).lastHeldOn());
    assertEquals(LocalDate.of(2020, 2, 29), check1.get(0).foundFailedOn());
    assertEquals("IN_PLACE", check1.get(1).endedBy());
  }

  /** By hand: 1 of 4 equal exposures failed, so rate = -ln(3/4) / 365 days, a year of 365.25. */
  @Test
  void theRateIsThatOfHiddenFailures() {
    RateRow rate = rows(fiveYears(), NO_FIT).rate();
    assertEquals(-Math.log(.75) / 365 * 365.25, rate.perYear(), 1e-9);
    assertTrue(rate.lowerPerYear() < rate.perYear() && rate.perYear() < rate.upperPerYear());
    assertNull(rate.expectedFrom());
    assertEquals("no prior is fitted yet", rate.note());
  }

  /** Independent: the posterior by a sum over a fine list of rates, prior gamma(2, 20 years). */
  @Test
  void theRateIsDrawnTowardsThePrior() {
    RateRow drawn = rows(fiveYears(), fitted()).rate();
    assertEquals("ASSEMBLIES_LIKE_IT", drawn.expectedFrom());
    double mass = 0;
    double mean = 0;
    double above = 0;
    for (double rate = 1e-5; rate < 5; rate += 1e-5) {
      double fails = 1 - Math.exp(-rate * 365 / 365.25);
      double p = rate * Math.exp(-20 * rate) * fails * Math.exp(-rate * 3 * 365 / 365.25);
      mass += p;
      mean += p * rate;
      above += rate > .2 ? p : 0;
    }
    assertEquals(mean / mass, drawn.shrunkPerYear(), 1e-3);
    assertEquals(above / mass, drawn.probabilityDoubleMean(), 2e-3);
    assertTrue(drawn.shrunkPerYear() < drawn.perYear());
    assertTrue(drawn.shrunkLowerPerYear() < drawn.shrunkPerYear());
    assertTrue(drawn.failsWithinYear() < drawn.shrunkPerYear());
    // The only unit of its fleet is its worst and its best.
    assertEquals(1, drawn.expectedRank(), 1e-9);
    assertEquals(1L, drawn.rankLower());
    assertEquals(1L, drawn.rankUpper());
    assertEquals(1, drawn.probabilityWorstTen());
    assertFalse(drawn.listed());
  }

  /** A fit of all whose fleet is the story of five years alone. */
  static LatestFits fitted() {
    RateLattice lattice = RateLattice.between(.002 / 365.25, 3 / 365.25, 400);
    GridPrior prior = GridPrior.of(new GammaPrior(2, 20 * 365.25), lattice);
    FleetSums fleet = new FleetSums(lattice.extended(GridScores.MOST_SHIFT));
    HiddenFailures unit = new HiddenFailures(new int[] {365, 365, 365}, new int[] {365});
    fleet.add(new GridScores(prior).posterior(unit, 0));
    RatePriorRow row =
        new RatePriorRow(
            "all",
            1,
            4,
            1,
            1_460,
            .1,
            .05,
            .2,
            4,
            1,
            .1,
            .05,
            .2,
            2.0,
            20.0,
            .1,
            -5.0,
            -5.0,
            -4.5,
            lattice.lowestLogPerDay(),
            lattice.step(),
            1L,
            .2,
            0,
            -1.0,
            null,
            null,
            null);
    return LatestFits.of(
        List.of(
            FitRows.ofRates("all", row, RateNodes.of("all", prior, fleet), List.of(), List.of())));
  }

  @Test
  void correctionsJobsAndCopiesShow() {
    Story story = fiveYears();
    story.log("t5", story.events().get(story.events().size() - 1).event());
    story.log(
        "j",
        new JobCosted(
            Story.ASSEMBLY,
            on("2020-02-29"),
            "2020-02-29",
            "C-1",
            true,
            new Money(8500, "XTS"),
            null,
            new Money(1200, "XTS"),
            new Money(12_600, "XTS")));
    story.correct(
        "c", "t1", Story.report("2019-03-01", 1, Phase.AS_FOUND, dc("1.9", "1.5")).event());
    AssemblyRows rows = rows(story, NO_FIT);
    assertEquals(1, rows.assembly().duplicatesIgnored());
    assertEquals("XTS", rows.jobs().get(0).currency());
    assertEquals(12_600L, rows.jobs().get(0).invoicedMinor());
    assertNull(rows.jobs().get(0).travelMinor());
    assertEquals("1.9", rows.readings().get(2).enteredValue());
    assertEquals(
        "a correction of the event t1, by clerk, typing", rows.occurrences().get(1).description());
  }

  @Test
  void theWaterOfAZone() {
    Story story =
        new Story()
            .log(
                "w2",
                new WaterSampled(
                    "Z1",
                    on("2020-02-01"),
                    "ST",
                    "A2",
                    "R2",
                    "Iron",
                    "Total",
                    null,
                    null,
                    WaterSampled.Detection.NOT_DETECTED,
                    "0.05",
                    "mg/l",
                    null,
                    null,
                    null))
            .log(
                "w1",
                new WaterSampled(
                    "Z1",
                    on("2020-01-01"),
                    "ST",
                    "A1",
                    "R1",
                    "Iron",
                    "Total",
                    "0.06",
                    "mg/l",
                    WaterSampled.Detection.MEASURED,
                    null,
                    null,
                    null,
                    null,
                    null))
            .log(
                "d1",
                new WaterDisturbed(
                    "Z1",
                    on("2020-01-15"),
                    null,
                    "MB-1",
                    WaterDisturbed.Kind.MAIN_BREAK,
                    null,
                    null,
                    "Mill Lane"))
            .log(
                "other",
                new WaterDisturbed(
                    "Z2",
                    on("2020-01-15"),
                    null,
                    "MB-2",
                    WaterDisturbed.Kind.FLUSHING,
                    null,
                    null,
                    null));
    ZoneRows rows = ZoneTables.of("Z1", story.events(), 3);
    assertEquals(List.of("w1", "w2"), rows.samples().stream().map(s -> s.eventId()).toList());
    assertNull(rows.samples().get(1).enteredValue());
    assertEquals("NOT_DETECTED", rows.samples().get(1).detection());
    assertEquals("0.05", rows.samples().get(1).detectionLimit());
    assertEquals(List.of("MAIN_BREAK"), rows.disturbances().stream().map(d -> d.kind()).toList());
    assertEquals(3, rows.revision());
  }
}
