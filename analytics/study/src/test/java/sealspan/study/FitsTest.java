package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sealspan.avro.TableCodec;
import sealspan.study.practice.PracticeParameters;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.CurveRow;
import sealspan.table.ExposureRow;
import sealspan.table.FitRows;
import sealspan.table.RatePriorRow;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

class FitsTest {
  private static final LocalDate START = LocalDate.of(2010, 1, 1);
  private static final FitCut CUT = new FitCut("cut", "0:1", Instant.EPOCH, 1);

  /** Ten annual tests of which two failed: 0.2231 a year, not 0.2 (worked: -ln(1 - 2/10)). */
  @Test
  void hiddenFailuresAreNotDividedByExposure() {
    List<ExposureRow> exposures = new ArrayList<>();
    for (int year = 0; year < 10; year++) {
      exposures.add(exposure("A", 365, year < 2));
    }
    RatePriorRow prior =
        Fits.of("all", Members.of(List.of(assembly("A", exposures, List.of()))), CUT).ratePrior();
    assertEquals(0.2231436 * 365.25 / 365, prior.commonPerYear(), 1e-6);
    assertNull(prior.shape());
    assertTrue(prior.note().startsWith("no prior: there are only 1 units"), prior.note());
    assertEquals(10, prior.tests());
  }

  /** Two positions: replaced after 400 and 800 of 1,000 days each: one replacement a position. */
  @Test
  void replacementsAreCountedPerPosition() {
    List<AssemblyRows> members =
        List.of(
            assembly("A", List.of(), replacedAfter("A", 400, 1_000)),
            assembly("B", List.of(), replacedAfter("B", 800, 1_000)));
    FitRows fit = Fits.of("component=check1", Members.of(members), CUT);
    SealLifeRow between = fit.sealLife().get(0);
    assertEquals("years between seal replacements at the position", between.quantity());
    assertEquals(1_000 / 365.25, between.figure(), 1e-9);
    assertEquals(2, between.endings());
    assertEquals(4, between.seals());
    assertNull(fit.ratePrior());
  }

  /**
   * Wang-Chang by hand: each position has one complete gap, so the curve is 1/2 at 400, 0 at 800.
   */
  @Test
  void gapsOfOnePositionShareItsWeight() {
    List<AssemblyRows> members =
        List.of(
            assembly("A", List.of(), replacedAfter("A", 400, 1_000)),
            assembly("B", List.of(), replacedAfter("B", 800, 1_000)));
    List<Double> heights =
        Fits.of("component=check1", Members.of(members), CUT).curves().stream()
            .filter(c -> c.estimator().equals("WANG_CHANG"))
            .map(c -> c.height())
            .toList();
    assertEquals(List.of(1.0, 0.5, 0.0), heights);
  }

  /** Nobody replaced, or all alike: an interval without width would claim what was not seen. */
  @Test
  void noIntervalClaimsACertaintyThatTheDataLack() {
    SealRow kept =
        new SealRow(
            "A",
            "RP",
            "2",
            "check1",
            1,
            START,
            true,
            START,
            START.plusDays(900),
            "IN_PLACE",
            null,
            START.plusDays(900),
            null,
            0);
    List<SealLifeRow> unreplaced =
        Fits.of(
                "component=check1",
                Members.of(List.of(assembly("A", List.of(), List.of(kept)))),
                CUT)
            .sealLife();
    assertTrue(
        unreplaced.stream()
            .anyMatch(r -> "not identified: none of the 1 seals was seen to end".equals(r.note())));
    List<SealLifeRow> alike =
        Fits.of(
                "component=check1",
                Members.of(
                    List.of(
                        assembly("A", List.of(), replacedAfter("A", 400, 1_000)),
                        assembly("B", List.of(), replacedAfter("B", 400, 1_000)))),
                CUT)
            .sealLife();
    assertEquals(1_000 / 365.25, alike.get(0).figure(), 1e-9);
    assertNull(alike.get(0).lower());
    assertTrue(alike.get(0).note().contains("no interval"), alike.get(0).note());
    for (SealLifeRow row : alike) {
      assertTrue(
          row.lower() == null || row.upper() == null || row.lower() < row.upper(), row.toString());
    }
    assertTrue(
        alike.stream()
            .anyMatch(
                r ->
                    r.note()
                        .equals(
                            "not identified: 2 of 2 first seals failed; a curve needs at least 5"
                                + " failures")));
  }

  @Test
  void unknownOriginIsLeftOutAndCounted() {
    SealRow unknown =
        new SealRow(
            "A",
            "RP",
            "2",
            "check1",
            1,
            START,
            false,
            START,
            START.plusDays(900),
            "IN_PLACE",
            null,
            START.plusDays(900),
            null,
            0);
    FitRows fit =
        Fits.of(
            "component=check1",
            Members.of(List.of(assembly("A", List.of(), List.of(unknown)))),
            CUT);
    assertTrue(fit.sealLife().stream().allMatch(r -> r.figure() == null));
    assertTrue(fit.sealLife().stream().allMatch(r -> r.leftOutUnknownOrigin() == 1));
  }

  /**
   * Exponential seals seen at one test each: of 400 seals tested after 1,000 days 40 % had failed,
   * of 400 tested after 2,000 days 64 %: exactly shape 1 and scale -1000 / ln .6 days.
   */
  @Test
  void sealFailuresLieBetweenTests() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 800; i++) {
      int tested = i < 400 ? 1_000 : 2_000;
      boolean failed = i % 400 < (i < 400 ? 160 : 256);
      LocalDate day = START.plusDays(tested);
      SealRow seal =
          new SealRow(
              "A" + i,
              "RP",
              "2",
              "check1",
              1,
              START,
              true,
              START,
              day,
              failed ? "REPLACED" : "IN_PLACE",
              failed ? "FAILED" : null,
              failed ? START : day,
              failed ? day : null,
              0);
      members.add(assembly("A" + i, List.of(), List.of(seal)));
    }
    List<SealLifeRow> figures =
        Fits.of("component=check1", Members.of(members), CUT).sealLife().stream()
            .filter(r -> r.question().equals("SEAL_FAILED"))
            .toList();
    assertEquals(1.0, figures.get(0).figure(), 1e-6);
    assertEquals(-1_000 / Math.log(0.6) / 365.25, figures.get(1).figure(), 1e-5);
    assertTrue(figures.get(0).lower() < 1 && figures.get(0).upper() > 1);
    assertTrue(figures.get(3).extrapolatedShare() > 0.3);
  }

  /**
   * By hand: ten seals failed between days 365 and 730, ten between 730 and 1,095, twenty held to
   * 1,460: without a shape the curve is 1, 3/4, 1/2, and open in between.
   */
  @Test
  void theCurveOfFailedSealsSaysWhatTheDataLeaveOpen() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      int held = i < 10 ? 365 : i < 20 ? 730 : 1_460;
      LocalDate found = i < 20 ? START.plusDays(held + 365) : null;
      members.add(
          assembly(
              "A" + i,
              List.of(),
              List.of(
                  new SealRow(
                      "A" + i,
                      "RP",
                      "2",
                      "check1",
                      1,
                      START,
                      true,
                      START,
                      START.plusDays(i < 20 ? held + 365 : 1_460),
                      i < 20 ? "REPLACED" : "IN_PLACE",
                      i < 15 ? "FAILED" : i < 20 ? "SCHEDULED" : null,
                      START.plusDays(held),
                      found,
                      0))));
    }
    FitRows fit = Fits.of("component=check1", Members.of(members), CUT);
    List<CurveRow> curve =
        fit.curves().stream().filter(c -> c.estimator().equals("TURNBULL")).toList();
    assertEquals(
        List.of(0, 366, 730, 731, 1_095, 1_460), curve.stream().map(CurveRow::days).toList());
    double[] most = {1, 1, 0.75, 0.75, 0.5, 0.5};
    double[] least = {1, 0.75, 0.75, 0.5, 0.5, 0.5};
    for (int i = 0; i < most.length; i++) {
      assertEquals(most[i], curve.get(i).height(), 1e-8);
      assertEquals(least[i], curve.get(i).heightAtLeast(), 1e-8);
      assertTrue(curve.get(i).lower() <= least[i] && curve.get(i).upper() >= most[i]);
    }
    assertEquals(10, curve.get(2).endings());
    assertEquals(30, curve.get(2).atRisk());
    assertEquals(20, curve.get(3).atRisk());
    SealLifeRow median = figure(fit, "TURNBULL", "median years until failed");
    assertNull(median.figure());
    assertTrue(median.note().contains("after 2.0 and not after 3.0 years"), median.note());
    // Of 40, 15 were replaced because they failed: 15/40 by five years, or by the last day seen.
    assertEquals(
        0.375,
        figure(fit, "AALEN_JOHANSEN", "share replaced within 4.0 years, reason: failed").figure(),
        1e-9);
    assertEquals(
        0.125,
        figure(fit, "AALEN_JOHANSEN", "share replaced within 4.0 years, reason: scheduled")
            .figure(),
        1e-9);
    for (String estimator : List.of("WEIBULL", "LOGNORMAL", "EXPONENTIAL")) {
      String name = estimator + "_INTERVAL_CENSORED";
      assertTrue(figure(fit, name, "Akaike criterion").figure() > 0);
      SealLifeRow distance = figure(fit, name, "largest distance from the curve without a shape");
      assertTrue(distance.figure() > 0 && distance.figure() < 0.3, distance.toString());
    }
  }

  private static SealLifeRow figure(FitRows fit, String estimator, String quantity) {
    List<SealLifeRow> found =
        fit.sealLife().stream()
            .filter(r -> r.estimator().equals(estimator) && r.quantity().equals(quantity))
            .toList();
    assertEquals(1, found.size(), estimator + ", " + quantity + " in " + fit.sealLife());
    return found.get(0);
  }

  /** By hand: two types that never fail together in time are told apart by the log-rank test. */
  @Test
  void typesAreComparedWhereAStratumHoldsSeveral() {
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      String type = i < 10 ? "RP" : "DC";
      LocalDate change = START.plusDays(i < 10 ? 100 + i : 1_000 + i);
      members.add(
          assembly(
              "A" + i,
              List.of(),
              List.of(
                  new SealRow(
                      "A" + i,
                      type,
                      "2",
                      "check1",
                      1,
                      START,
                      true,
                      START,
                      change,
                      "REPLACED",
                      "FAILED",
                      change.minusDays(1),
                      change,
                      0))));
    }
    FitRows fit = Fits.of("component=check1", Members.of(members), CUT);
    List<SealLifeRow> tests =
        fit.sealLife().stream().filter(r -> r.estimator().equals("LOG_RANK")).toList();
    assertEquals(1, tests.size());
    assertTrue(tests.get(0).figure() < 1e-4, tests.get(0).toString());
    assertTrue(tests.get(0).note().contains("RP 10 against 3.3"), tests.get(0).note());
  }

  @Test
  void orderOfMembersIsOfNoAccount() {
    Random random = new Random(5);
    List<AssemblyRows> members = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      String id = "A" + i;
      List<ExposureRow> exposures = new ArrayList<>();
      for (int year = 0; year < 8; year++) {
        exposures.add(exposure(id, 300 + random.nextInt(130), random.nextInt(10) < i % 4));
      }
      members.add(assembly(id, exposures, replacedAfter(id, 1 + random.nextInt(2_000), 2_500)));
    }
    for (String stratum : List.of("all", "component=check1")) {
      byte[] sorted = TableCodec.encode(Fits.of(stratum, Members.of(members), CUT));
      for (int i = 0; i < 5; i++) {
        Collections.shuffle(members, random);
        org.junit.jupiter.api.Assertions.assertArrayEquals(
            sorted, TableCodec.encode(Fits.of(stratum, Members.of(members), CUT)));
      }
    }
  }

  /** What is not sent to a stratum is not missed. */
  @Test
  void aFitReadsTheNeededRowsAlone() {
    List<AssemblyRows> members = PracticeRows.of(PracticeParameters.usual(8, 120));
    Map<String, List<AssemblyRows>> strata = new TreeMap<>();
    for (AssemblyRows rows : members) {
      Fits.strataOf(rows)
          .forEach(stratum -> strata.computeIfAbsent(stratum, s -> new ArrayList<>()).add(rows));
    }
    assertTrue(strata.containsKey("type=DC component=check2"), strata.keySet().toString());
    strata.forEach(
        (stratum, rows) -> {
          NeededRows needed = NeededRows.of(stratum);
          FitRows whole = Fits.of(stratum, Members.of(rows), CUT);
          FitRows part = Fits.of(stratum, Members.of(rows.stream().map(needed::of).toList()), CUT);
          assertEquals(
              whole.toString().replace(whole.fit().inputDigest(), ""),
              part.toString().replace(part.fit().inputDigest(), ""));
          assertEquals(
              List.of(),
              needed.of(rows.get(0)).exposures().stream()
                  .filter(e -> !e.component().equals(stratum.replaceFirst(".*component=", "")))
                  .filter(e -> !e.component().equals("whole") || stratum.contains("component="))
                  .toList());
        });
  }

  @Test
  void noDataIsSaidPlainly() {
    for (String stratum : List.of("all", "component=check1")) {
      FitRows fit = Fits.of(stratum, Members.of(List.of(assembly("A", List.of(), List.of()))), CUT);
      assertTrue(fit.sealLife().stream().allMatch(r -> r.figure() == null && !r.note().isBlank()));
    }
  }

  private static ExposureRow exposure(String id, int days, boolean failed) {
    return new ExposureRow(
        id, "e", "whole", START, START.plusDays(days), days, days, failed, null, "none");
  }

  private static List<SealRow> replacedAfter(String id, int days, int watchedDays) {
    LocalDate change = START.plusDays(days);
    LocalDate end = START.plusDays(watchedDays);
    return List.of(
        new SealRow(
            id,
            "RP",
            "2",
            "check1",
            1,
            START,
            true,
            START,
            change,
            "REPLACED",
            "FAILED",
            change.minusDays(1),
            change,
            0),
        new SealRow(
            id, "RP", "2", "check1", 2, change, true, change, end, "IN_PLACE", null, end, null, 0));
  }

  private static AssemblyRows assembly(
      String id, List<ExposureRow> exposures, List<SealRow> seals) {
    AssemblyRow row =
        new AssemblyRow(
            id, null, null, null, null, null, null, null, null, null, null, null, "RP", "2", null,
            null, null, START, START, null, null, null, null, null, null, 0, 0, 0, 0, 0, 0, 0, 0, 0,
            null);
    return new AssemblyRows(
        id, 0, row, List.of(), List.of(), exposures, List.of(), seals, List.of(), List.of(),
        List.of(), null, List.of(), List.of(), null, List.of());
  }
}
