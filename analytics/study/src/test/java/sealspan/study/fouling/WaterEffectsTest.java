package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sealspan.study.Members;
import sealspan.study.practice.InventedWater;
import sealspan.table.AssemblyRows;
import sealspan.table.WaterEffectRow;

class WaterEffectsTest {

  /** Six zones alike, 3 of 10 fouled after a break and 2 of 20 without, a year between tests. */
  private static InventedWater sixZonesAlike() {
    InventedWater water = new InventedWater();
    for (int zone = 1; zone <= 6; zone++) {
      String id = "Z" + zone;
      water.sample(id, "Turbidity", day("2010-01-01"), "0.2", "NTU");
      water.event(id, "MAIN_BREAK", day("2015-0" + zone + "-10"), null);
      for (int i = 0; i < 10; i++) {
        water.test(id, LocalDate.of(2015, 9, 1), 365, i < 3 ? "FOULING" : null);
        water.test(id, LocalDate.of(2013, 9, 1), 365, i < 1 ? "FOULING" : null);
        water.test(id, LocalDate.of(2018, 9, 1), 365, i < 1 ? "FOULING" : i < 3 ? "DAMAGE" : null);
      }
    }
    return water;
  }

  private static List<WaterEffectRow> rows(InventedWater water) {
    return WaterEffects.of(Members.of(water.assemblies()), water.zones());
  }

  private static WaterEffectRow row(List<WaterEffectRow> rows, String exposure, WaterLag lag) {
    return rows.stream()
        .filter(row -> row.method().equals(WaterEffects.INTERVAL_EXPOSURE))
        .filter(row -> row.exposure().equals(exposure) && row.lag().equals(lag.words()))
        .findFirst()
        .orElseThrow();
  }

  private static WaterEffectRow first(InventedWater water, String exposure) {
    return row(rows(water), exposure, WaterLag.SINCE_LAST_PASS);
  }

  @Test
  void threeOfTenBesideTwoOfTwentyByHand() {
    WaterEffectRow row = first(sixZonesAlike(), "MAIN_BREAK");
    assertEquals(180, row.tests());
    assertEquals(30, row.fouled());
    assertEquals(60, row.exposedTests());
    assertEquals(18, row.exposedFouled());
    assertEquals(6, row.events());
    assertEquals(6, row.zones());
    assertEquals(Math.log(.7) / Math.log(.9), row.ratio(), 1e-8);
    // The chance is .3 after a break and .1 without.
    assertEquals(3, row.chanceRatio(), 1e-8);
    // Zones are all alike, so only chance between tests is left: delta method by hand.
    double variance =
        .3 / (60 * .7 * Math.pow(Math.log(.7), 2)) + .1 / (120 * .9 * Math.pow(Math.log(.9), 2));
    assertEquals(row.ratio() * Math.exp(1.959964 * Math.sqrt(variance)), row.upper(), 1e-4);
    assertEquals("tests", row.clusteredBy());
    assertTrue(
        row.words()
            .startsWith(
                "after a main break in the same zone the chance of a fouled check at the next test"
                    + " is 3.0 times (1.6 to 5.2) that without; 18 of 60 tests; future breaks"),
        row.words());
    assertNull(row.because());
  }

  /** What lies in the time since the last pass, told apart by looking at every single day. */
  @Test
  void exposuresAreThoseOfSingleDays() {
    Random random = new Random(4);
    InventedWater water = new InventedWater();
    LocalDate begin = LocalDate.of(2015, 1, 1);
    List<Set<LocalDate>> acting = new ArrayList<>();
    for (int zone = 0; zone < 4; zone++) {
      acting.add(new HashSet<>());
      water.event("Z" + zone, "OTHER", begin, null);
      for (int e = 0; e < 6; e++) {
        LocalDate from = begin.plusDays(random.nextInt(1500));
        LocalDate until = random.nextBoolean() ? null : from.plusDays(random.nextInt(30));
        water.event("Z" + zone, "FLUSHING", from, until);
        for (LocalDate day = from; !day.isAfter(until == null ? from : until); ) {
          acting.get(zone).add(day);
          day = day.plusDays(1);
        }
      }
    }
    int[][] expected = new int[3][2];
    for (int i = 0; i < 400; i++) {
      int zone = random.nextInt(4);
      LocalDate day = begin.plusDays(500 + random.nextInt(1200));
      int days = 1 + random.nextInt(450);
      boolean fouled = random.nextInt(4) == 0;
      water.test("Z" + zone, day, days, fouled ? "FOULING" : null);
      boolean[] exposed = new boolean[3];
      for (int before = 0; before < days; before++) {
        if (acting.get(zone).contains(day.minusDays(before))) {
          exposed[0] = true;
          exposed[before < 90 ? 1 : 2] = true;
        }
      }
      for (int lag = 0; lag < 3; lag++) {
        expected[lag][0] += exposed[lag] ? 1 : 0;
        expected[lag][1] += exposed[lag] && fouled ? 1 : 0;
      }
    }
    List<WaterEffectRow> rows = rows(water);
    for (WaterLag lag : WaterLag.values()) {
      WaterEffectRow row = row(rows, "FLUSHING", lag);
      assertEquals(expected[lag.ordinal()][0], row.exposedTests(), lag.words());
      assertEquals(expected[lag.ordinal()][1], row.exposedFouled(), lag.words());
      assertNotNull(row.ratio());
      assertTrue(row.adjustedP() >= row.p());
    }
    List<AssemblyRows> shuffled = new ArrayList<>(water.assemblies());
    Collections.shuffle(shuffled, random);
    assertEquals(rows, WaterEffects.of(Members.of(shuffled), water.zones()));
  }

  @Test
  void qualitiesOfMixedUnits() {
    InventedWater water = new InventedWater();
    Random random = new Random(8);
    for (int zone = 0; zone < 6; zone++) {
      String id = "Z" + zone;
      for (int year = 2010; year < 2020; year++) {
        double iron = .1 * (1 + random.nextInt(4));
        boolean micro = random.nextBoolean();
        water.sample(
            id,
            "Iron",
            day(year + "-06-01"),
            (micro ? 1000 : 1) * iron + "",
            micro ? "ug/l" : "mg/L");
        water.sample(id, "Iron", day(year + "-06-02"), "7", "furlongs");
        water.sample(id, "Manganese", day(year + "-06-02"), "trace", "mg/l");
        for (int i = 0; i < 20; i++) {
          double chance = -Math.expm1(-.3 * iron);
          boolean fouled = random.nextDouble() < chance;
          water.test(id, LocalDate.of(year, 12, 1), 365, fouled ? "FOULING" : null);
        }
      }
      water.notDetected(id, "Iron", day("2009-06-01"), "50", "ug/l");
      water.sample(id, "Iron", day("2009-01-01"), "0.05", "mg/l");
    }
    WaterEffectRow iron = first(water, "IRON");
    assertNull(iron.exposedTests());
    assertTrue(iron.lower() < 2 && iron.upper() > 2, iron.words());
    assertTrue(iron.leftOut().contains("results of iron in a unit not understood: furlongs: 60"));
    assertTrue(iron.compares().contains("6 results outside their limits stand at the limit"));
    assertTrue(iron.words().startsWith("with twice the iron in the same zone since the last pass"));
    WaterEffectRow manganese = first(water, "MANGANESE");
    assertNull(manganese.ratio());
    assertEquals("there is no test with a known exposure", manganese.because());
    assertTrue(
        manganese
            .leftOut()
            .contains("results of manganese without a number, a limit or a day: 60"));
  }

  @Test
  void hardInputs() {
    List<WaterEffectRow> nothing = rows(new InventedWater());
    assertEquals(4 * 3 + 5 + 2 * 4, nothing.size());
    for (WaterEffectRow row : nothing) {
      assertNull(row.ratio());
      assertNotNull(row.because());
      assertEquals(0, row.tests());
    }
    InventedWater zoneWithoutTest =
        sixZonesAlike().event("Z7", "MAIN_BREAK", day("2015-05-05"), null);
    assertEquals(
        first(sixZonesAlike(), "MAIN_BREAK").ratio(),
        first(zoneWithoutTest, "MAIN_BREAK").ratio(),
        1e-12);
    for (String all : new String[] {null, "FOULING"}) {
      InventedWater alike = new InventedWater();
      for (int i = 0; i < 60; i++) {
        alike.event("Z" + i % 6, "MAIN_BREAK", day("2015-01-" + (10 + i % 20)), null);
        alike.test("Z" + i % 6, LocalDate.of(2016, 1, 1).plusDays(200 * (i % 2)), 300, all);
      }
      WaterEffectRow row = first(alike, "MAIN_BREAK");
      assertNull(row.ratio());
      assertEquals(all == null ? "no test was fouled" : "every test was fouled", row.because());
      assertTrue(row.words().contains("is not identified"), row.words());
    }
    InventedWater dates =
        sixZonesAlike()
            .test("early", "Z1", LocalDate.of(2015, 9, 1), 365, -3, "FOULING", "ROUTINE")
            .test("nowhere", null, LocalDate.of(2015, 9, 1), 365, 900, null, "ROUTINE")
            .test("unknown", "Z1", LocalDate.of(2015, 9, 1), 365, 900, "UNCLASSIFIED", "ROUTINE")
            .test("long", "Z1", LocalDate.of(2010, 6, 1), 365, 900, null, "ROUTINE");
    WaterEffectRow row = first(dates, "MAIN_BREAK");
    assertEquals(180, row.tests());
    assertEquals(
        "failed tests that could not be classified: 1; tests dated before the installation of their"
            + " assembly: 1; tests whose time since the last pass begins before the water record,"
            + " on 2010-01-01: 1; tests without a recorded water zone: 1",
        row.leftOut());
  }

  @Test
  void fewEventsAreNotIdentified() {
    InventedWater water = new InventedWater();
    for (int zone = 1; zone <= 6; zone++) {
      // A treatment change of the whole town is one event, however many zones it has.
      water.sample("Z" + zone, "Turbidity", day("2010-01-01"), "0.2", "NTU");
      water.event("Z" + zone, "TREATMENT_CHANGE", day("2015-03-10"), null);
      for (int i = 0; i < 10; i++) {
        water.test("Z" + zone, LocalDate.of(2016, 3, 1), 360, i < 3 ? "FOULING" : null);
        water.test("Z" + zone, LocalDate.of(2018, 3, 1), 365, i < 1 ? "FOULING" : null);
      }
    }
    WaterEffectRow row = first(water, "TREATMENT_CHANGE");
    assertEquals(1, row.events());
    assertNull(row.ratio());
    assertEquals("different events that the tests met: 1; it needs five", row.because());
  }

  /** Four of 14 noticed in 31 of 366 days, no season: the windows of one zone, over and over. */
  @Test
  void noticedFailures() {
    InventedWater water = new InventedWater();
    assertTrue(
        rows(sixZonesAlike()).stream()
            .filter(row -> row.method().equals("SELF_CONTROLLED"))
            .allMatch(row -> row.because().startsWith("not possible with these data")));
    Random random = new Random(2);
    for (int zone = 0; zone < 8; zone++) {
      LocalDate begin = LocalDate.of(2015, 1, 1);
      water.sample("Z" + zone, "Turbidity", day("2015-01-01"), "0.2", "NTU");
      water.sample("Z" + zone, "Turbidity", day("2020-12-31"), "0.2", "NTU");
      for (int e = 0; e < 5; e++) {
        LocalDate day = begin.plusDays(100 + random.nextInt(1900));
        water.event("Z" + zone, "MAIN_BREAK", day, null);
        for (int k = 0; k < 3; k++) {
          noticed(water, zone, day.plusDays(random.nextInt(31)));
        }
      }
      for (int k = 0; k < 30; k++) {
        noticed(water, zone, begin.plusDays(random.nextInt(2190)));
      }
    }
    List<WaterEffectRow> rows =
        rows(water).stream().filter(row -> row.exposure().equals("MAIN_BREAK")).toList();
    WaterEffectRow before = rows.get(3);
    WaterEffectRow after = rows.get(4);
    WaterEffectRow weeks = rows.get(6);
    // 15 of 45 outcomes of a zone in 155 of 2,192 days beside 30 in all: about (15 + 2) / 2.1.
    assertTrue(after.lower() > 4 && after.upper() < 16, after.words());
    assertTrue(before.lower() < 1 && before.upper() > 1, before.words());
    assertEquals(8 * 45, after.tests());
    assertEquals("DISTRIBUTED_LAG", weeks.method());
    assertTrue(weeks.lower() > 1, weeks.words());
  }

  private static LocalDate day(String text) {
    return LocalDate.parse(text);
  }

  private static void noticed(InventedWater water, int zone, LocalDate day) {
    water.test("n" + zone, "Z" + zone, day, null, 900, "FOULING", "VISIBLE_DISCHARGE");
  }
}
