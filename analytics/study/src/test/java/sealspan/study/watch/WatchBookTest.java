package sealspan.study.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.table.LedgerEntry;
import sealspan.table.WatchAlarmRow;
import sealspan.table.WatchRows;
import sealspan.table.WatchStateRow;

class WatchBookTest {
  private static final LocalDate DAY = LocalDate.of(2026, 1, 1);
  private static final Instant FROZEN = Instant.parse("2026-01-01T00:00:00Z");

  /** Probability .05 for a year: 1 - exp(-exp(c)) = .05; exposure and season do not enter. */
  private static final double CONSTANT = Math.log(-Math.log1p(-.05));

  private static WatchedTest test(int number, int site, boolean fouled, Boolean standing) {
    WatchedOutcome known = outcome(number, site, fouled);
    return new WatchedTest(
        FROZEN.plusSeconds(86_400L * number + 60),
        "A" + site,
        "t" + number,
        known,
        standing == null ? null : outcome(number, site, standing));
  }

  private static WatchedOutcome outcome(int number, int site, boolean fouled) {
    String zone = "Z" + site % 3;
    return new WatchedOutcome(DAY.plusDays(number), "S" + site, zone, "DC", 365, fouled);
  }

  private static List<WatchSite> sites(int n) {
    List<WatchSite> sites = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      sites.add(new WatchSite("S" + i, "Z" + i % 3, 50 + i * .005, 1 + i % 2 * .005));
    }
    return sites;
  }

  private static WatchRows rows(List<WatchedTest> tests, List<LedgerEntry> models) {
    WatchBook book = new WatchBook();
    byAssembly(tests).forEach(book::put);
    book.add(models);
    return book.rows(0).orElseThrow();
  }

  private static Map<String, List<WatchedTest>> byAssembly(List<WatchedTest> tests) {
    Map<String, List<WatchedTest>> by = new HashMap<>();
    tests.forEach(t -> by.computeIfAbsent(t.assemblyId(), a -> new ArrayList<>()).add(t));
    return by;
  }

  private static List<LedgerEntry> model(double threshold, int sites) {
    return WatchModelTest.entered(
        WatchModelTest.model("0:1", sites(sites), threshold, CONSTANT), FROZEN);
  }

  /**
   * Tests at twelve sites; from the 300th on site 4 and its neighbours are fouled far too often.
   */
  private static List<WatchedTest> drawn(long seed, int n) {
    Random random = new Random(seed);
    List<WatchedTest> tests = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int site = random.nextInt(12);
      double p = i >= 300 && site >= 3 && site <= 5 ? .4 : .05;
      boolean fouled = random.nextDouble() < p;
      int fate = random.nextInt(30);
      tests.add(test(i, site, fouled, fate == 0 ? null : (Boolean) (fate == 1 ? !fouled : fouled)));
    }
    return tests;
  }

  /** By hand: four cases in a row at one of four sites, the other three quiet. */
  @Test
  void tellsWhereAnAlarmComesFrom() {
    List<WatchedTest> tests = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      tests.add(test(i, 1 + i % 3, false, false));
    }
    for (int i = 60; i < 65; i++) {
      tests.add(test(i, 0, true, i == 62 ? null : (Boolean) true));
    }
    List<LedgerEntry> models =
        WatchModelTest.entered(
            WatchModelTest.model("0:1", sites(4), 150, Math.log(-Math.log1p(-.05))), FROZEN);
    WatchRows rows = rows(tests, models);
    WatchAlarmRow alarm = rows.alarms().get(0);
    assertEquals("AS_KNOWN", alarm.run());
    assertEquals("site S0", alarm.zone());
    assertEquals("S0", alarm.members());
    assertEquals(4, alarm.multiplier());
    assertTrue(alarm.cases() >= 3 && alarm.caseEventIds().startsWith("t60, t61, t62"));
    assertEquals(alarm.cases() * .05, alarm.expected(), 1e-12);
    assertEquals(DAY.plusDays(60), alarm.sinceDay());
    assertEquals(60, alarm.calibrationTests());
    assertEquals(0, alarm.calibrationCases());
    assertEquals(3, alarm.calibrationExpected(), 1e-9);
    // No case where 3 are expected: the limit is -ln(.025) / 3.
    assertEquals(-Math.log(.025) / 3, alarm.calibrationUpper(), 1e-9);
    assertEquals("HOLDS", alarm.promise());
    assertEquals(150.0 / 200, alarm.yearsToFalseAlarm(), 1e-12);
    WatchStateRow restated = rows.states().get(1);
    assertEquals("RESTATED", restated.run());
    assertEquals(64, restated.tests());
    assertEquals(65, rows.states().get(0).tests());
  }

  @Test
  void equalsARunWrittenAnew() {
    int raised = 0;
    for (long seed = 1; seed <= 5; seed++) {
      List<WatchedTest> tests = drawn(seed, 700);
      List<LedgerEntry> models = model(200, 12);
      double p = -Math.expm1(-Math.exp(CONSTANT));
      WatchZones zones = new WatchZones(WatchModel.of(models).get(0));
      List<String> expected = PlainRun.alarms(tests, zones, p, 200);
      List<String> found =
          rows(tests, models).alarms().stream()
              .filter(a -> a.run().equals("AS_KNOWN"))
              .map(WatchAlarmRow::raisedByEventId)
              .toList();
      assertEquals(expected, found);
      raised += found.size();
    }
    assertTrue(raised >= 10, "alarms " + raised);
  }

  /** I9 within the study: whatever came when, twice or changed, the rows are those of the whole. */
  @Test
  void anyOrderOfTellingGivesTheSameRows() {
    List<WatchedTest> tests = drawn(7, 2_000);
    List<LedgerEntry> models = new ArrayList<>(model(200, 9));
    Instant later = FROZEN.plusSeconds(86_400L * 900);
    models.addAll(WatchModelTest.entered(WatchModelTest.model("0:2", sites(12), 300, -2.8), later));
    WatchRows expected = rows(tests, models);
    assertTrue(expected.alarms().size() > 4);
    assertNotEquals(
        ids(expected, "AS_KNOWN").size(), 0, "alarms as known " + ids(expected, "AS_KNOWN"));
    for (int run = 0; run < 3; run++) {
      Random random = new Random(run);
      WatchBook book = new WatchBook();
      Map<String, List<WatchedTest>> told = new HashMap<>();
      List<WatchedTest> order = new ArrayList<>(tests);
      if (run > 0) {
        Collections.shuffle(order, random);
      }
      int modelsAt = random.nextInt(tests.size());
      for (int i = 0; i < order.size(); i++) {
        WatchedTest next = order.get(i);
        List<WatchedTest> own = told.computeIfAbsent(next.assemblyId(), a -> new ArrayList<>());
        own.add(next);
        own.sort(WatchedTest.ORDER);
        book.put(next.assemblyId(), List.copyOf(own));
        if (i == modelsAt) {
          book.add(models.subList(1, 2));
          book.add(models);
        }
        if (random.nextInt(100) == 0) {
          book.rows(1);
        }
      }
      assertEquals(expected, book.rows(0).orElseThrow());
    }
  }

  /** A quiet zone that no test lies in carries the evidence that the count of tests alone makes. */
  @Test
  void anAlarmOfAZoneThatCameWithALaterModelAndHoldsNoTestIsTold() {
    List<WatchedTest> tests = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      tests.add(test(i, 11, false, false));
    }
    List<LedgerEntry> models = new ArrayList<>(model(1_000, 1));
    Instant later = FROZEN.plusSeconds(86_400L * 20);
    WatchSite far = new WatchSite("S5", "Z9", 10.0, 1.0);
    models.addAll(
        WatchModelTest.entered(WatchModelTest.model("0:2", List.of(far), 10, CONSTANT), later));
    WatchAlarmRow alarm = rows(tests, models).alarms().get(0);
    assertEquals("t29", alarm.raisedByEventId());
    assertEquals(0, alarm.tests());
    assertEquals(alarm.raisedAt(), alarm.since());
  }

  private static List<String> ids(WatchRows rows, String run) {
    return rows.alarms().stream()
        .filter(a -> a.run().equals(run))
        .map(WatchAlarmRow::raisedByEventId)
        .toList();
  }

  @Test
  void correctionsChangeTheRestatedRunAlone() {
    List<WatchedTest> tests = drawn(3, 700);
    List<WatchedTest> corrected = new ArrayList<>();
    for (WatchedTest t : tests) {
      corrected.add(
          new WatchedTest(t.knownAt(), t.assemblyId(), t.eventId(), t.asKnown(), t.asKnown()));
    }
    WatchRows plain = rows(corrected, model(200, 12));
    WatchRows restated = rows(tests, model(200, 12));
    assertEquals(ids(plain, "AS_KNOWN"), ids(plain, "RESTATED"));
    assertEquals(ids(plain, "AS_KNOWN"), ids(restated, "AS_KNOWN"));
    assertNotEquals(ids(plain, "RESTATED"), ids(restated, "RESTATED"));
    assertNotEquals(
        plain.alarms().get(0).alarmId(),
        plain.alarms().get(plain.alarms().size() - 1).alarmId(),
        "alarms of the two runs have ids of their own");
  }

  @Test
  void copesWithWhatIsHard() {
    assertTrue(new WatchBook().rows(0).isEmpty());
    WatchRows nothing = rows(List.of(), model(100, 3));
    assertEquals(0, nothing.states().get(0).tests());
    assertEquals("TOO_EARLY", nothing.states().get(0).promise());
    assertNull(nothing.states().get(0).lastKnownAt());
    List<WatchedTest> quiet = new ArrayList<>();
    List<WatchedTest> all = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      quiet.add(test(i, i % 12, false, false));
      all.add(test(i, i % 12, true, true));
    }
    WatchStateRow never = rows(quiet, model(5_000, 12)).states().get(0);
    assertEquals(0, never.alarms());
    assertEquals("TOO_HIGH", never.promise());
    WatchRows always = rows(all, model(5_000, 12));
    assertFalse(always.alarms().isEmpty());
    assertEquals("TOO_LOW", always.states().get(0).promise());
    WatchStateRow one = rows(quiet, model(5_000, 1)).states().get(0);
    assertEquals(1, one.sites());
    WatchStateRow nowhere = rows(quiet, model(5_000, 0)).states().get(0);
    assertEquals(400, nowhere.testsOutside());
    assertEquals(0, nowhere.evidence());
  }

  /** Before a model was frozen nothing is watched; of a fouled visit the rest is no news. */
  @Test
  void saysWhatItLeavesOut() {
    WatchedTest early =
        new WatchedTest(FROZEN, "A0", "early", outcome(1, 0, true), outcome(1, 0, true));
    WatchedTest first = test(2, 0, true, true);
    WatchedTest same =
        new WatchedTest(
            first.knownAt().plusSeconds(9), "A9", "same", outcome(2, 0, true), outcome(2, 0, true));
    WatchStateRow state = rows(List.of(early, first, same), model(500, 12)).states().get(0);
    assertEquals(1, state.testsBefore());
    assertEquals(1, state.testsOfFouledVisits());
    assertEquals(1, state.tests());
    assertEquals(1, state.calibrationCases());
  }
}
