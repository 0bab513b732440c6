package sealspan.stats.recurrence;

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
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.Reference;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;

class MeanCumulativeFunctionTest {

  /**
   * Nelson and Doganaksoy 1989, valve seats of 41 engines; Lawless and Nadeau variance, R survival
   * 3.5-3. Two engines have two replacements on one day: both count.
   */
  @Test
  void agreesWithTheValveSeats() {
    MeanCumulativeFunction curve = curve(valveSeats());
    List<Map<String, String>> rows = Reference.read("07_mcf_valveseat/expected_mcf.csv").rows();
    assertEquals(rows.size(), curve.days().length);
    for (int j = 0; j < rows.size(); j++) {
      assertEquals(Integer.parseInt(rows.get(j).get("age")), curve.days()[j]);
      assertEquals(Long.parseLong(rows.get(j).get("n_risk")), curve.watched()[j]);
      assertEquals(Long.parseLong(rows.get(j).get("d")), curve.events()[j]);
      assertEquals(Double.parseDouble(rows.get(j).get("mcf")), curve.mean()[j], 1e-13);
      assertEquals(Double.parseDouble(rows.get(j).get("var_LN")), curve.variance()[j], 1e-13);
    }
    PointEstimate last = curve.at(653, 0.95).orThrow();
    assertEquals(1.5426875135570295, last.value(), 1e-13);
    assertEquals(0.31165607475056284, last.standardError(), 1e-12);
    assertEquals(48, java.util.Arrays.stream(curve.events()).sum());
  }

  /**
   * By hand: two units to day 10, events on day 2 (first unit) and 4 (both). Mean 1/2, then 3/2.
   * Influences after day 2: +1/4, -1/4; day 4 moves neither, so the variance stays 1/8.
   */
  @Test
  void workedByHand() {
    MeanCumulativeFunction curve =
        curve(List.of(EventHistory.watched(0, 10, 2, 4), EventHistory.watched(0, 10, 4)));
    assertArrayEquals(new double[] {0.5, 1.5}, curve.mean(), 1e-15);
    assertArrayEquals(new double[] {0.125, 0.125}, curve.variance(), 1e-15);
    PointEstimate between = curve.meanTimeBetween(10, 0.95).orThrow();
    assertEquals(10 / 1.5, between.value(), 1e-12);
    double se = Math.sqrt(0.125);
    assertEquals(10 / 1.5 * se / 1.5, between.standardError(), 1e-12);
    assertEquals(10 / 1.5 * Math.exp(-1.959963985 * se / 1.5), between.interval().lower(), 1e-7);
    assertEquals(10 / 1.5 * Math.exp(1.959963985 * se / 1.5), between.interval().upper(), 1e-7);
  }

  /** Independent: the variance summed unit by unit and day by day, with spans, gaps and costs. */
  @Property(tries = 150, seed = "7")
  void agreesWithTheDefinition(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<EventHistory> units = invented(new Random(seed), 2 + seed % 9);
    for (Mark mark : Mark.values()) {
      if (!(MeanCumulativeFunction.of(units, mark)
          instanceof Estimate.Identified<MeanCumulativeFunction> identified)) {
        throw new AssertionError("not identified");
      }
      MeanCumulativeFunction curve = identified.value();
      for (int j = 0; j < curve.days().length; j++) {
        double[] slow = slow(units, mark, curve.fromDay(), curve.days()[j]);
        assertEquals(slow[0], curve.mean()[j], 1e-10 * (1 + slow[0]));
        assertEquals(slow[1], curve.variance()[j], 1e-9 * (1 + slow[1]));
      }
    }
  }

  @Property(tries = 50, seed = "7")
  void orderOfUnitsIsOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<EventHistory> units = invented(new Random(seed), 12);
    List<EventHistory> shuffled = new ArrayList<>(units);
    Collections.shuffle(shuffled, new Random(seed + 1L));
    assertArrayEquals(curve(units).mean(), curve(shuffled).mean());
    assertArrayEquals(curve(units).variance(), curve(shuffled).variance());
  }

  @Test
  void costsScaleTheCurve() {
    List<EventHistory> units = invented(new Random(5), 20);
    List<EventHistory> dearer = new ArrayList<>();
    for (EventHistory u : units) {
      long[] marks = u.marks().clone();
      for (int i = 0; i < marks.length; i++) {
        marks[i] *= 100;
      }
      dearer.add(new EventHistory(u.entryDays(), u.exitDays(), u.eventDays(), marks));
    }
    MeanCumulativeFunction cheap = MeanCumulativeFunction.of(units, Mark.MARK).orThrow();
    MeanCumulativeFunction dear = MeanCumulativeFunction.of(dearer, Mark.MARK).orThrow();
    for (int j = 0; j < cheap.days().length; j++) {
      assertEquals(100 * cheap.mean()[j], dear.mean()[j], 1e-9 * dear.mean()[j]);
      assertEquals(1e4 * cheap.variance()[j], dear.variance()[j], 1e-7 + 1e-9 * dear.variance()[j]);
    }
  }

  /** By hand: no event in 3 units over 100 days, upper limit -ln(.025) / 3. */
  @Test
  void withoutEventsThereIsAnUpperLimit() {
    MeanCumulativeFunction curve = curve(Collections.nCopies(3, EventHistory.watched(0, 100)));
    PointEstimate estimate = curve.at(100, 0.95).orThrow();
    assertEquals(0, estimate.value());
    assertEquals(-Math.log(0.025) / 3, estimate.interval().upper(), 1e-12);
    assertInstanceOf(Estimate.NotIdentified.class, curve.meanTimeBetween(100, 0.95));
  }

  /** One unit has no robust variance (R reports the naive 1 there): the interval stays open. */
  @Test
  void oneUnitSaysNothingAboutVariation() {
    MeanCumulativeFunction curve = curve(List.of(EventHistory.watched(0, 5, 2)));
    PointEstimate estimate = curve.at(5, 0.95).orThrow();
    assertEquals(1, estimate.value());
    assertEquals(new Interval(0, Double.POSITIVE_INFINITY, 0.95), estimate.interval());
  }

  @Test
  void nobodyWatchedIsNotIdentified() {
    assertInstanceOf(
        Estimate.NotIdentified.class, MeanCumulativeFunction.of(List.of(), Mark.COUNT));
    EventHistory none = new EventHistory(new int[0], new int[0], new int[] {4}, new long[] {1});
    assertInstanceOf(
        Estimate.NotIdentified.class, MeanCumulativeFunction.of(List.of(none), Mark.COUNT));
  }

  /** An event on the entry day or outside the spans is not seen, and is counted as left out. */
  @Test
  void eventsOutsideTheSpansAreLeftOut() {
    MeanCumulativeFunction curve =
        curve(List.of(EventHistory.watched(10, 20, 10, 15, 20, 25), EventHistory.watched(0, 30)));
    assertArrayEquals(new int[] {15, 20}, curve.days());
    assertEquals(2, curve.eventsLeftOut());
    assertEquals(0, curve.fromDay());
  }

  /** Nobody is watched from day 20 to 50: the curve keeps to the stretch with most events. */
  @Test
  void aGapInWatchingEndsTheCurve() {
    MeanCumulativeFunction curve =
        curve(
            List.of(
                EventHistory.watched(0, 20, 5),
                EventHistory.watched(50, 90, 60, 70),
                EventHistory.watched(55, 80, 60)));
    assertEquals(50, curve.fromDay());
    assertEquals(90, curve.toDay());
    assertArrayEquals(new int[] {60, 70}, curve.days());
    assertArrayEquals(new double[] {1, 1.5}, curve.mean(), 1e-15);
    assertEquals(1, curve.eventsLeftOut());
    assertInstanceOf(Estimate.NotIdentified.class, curve.at(10, 0.95));
    assertEquals(40 / 1.5, curve.meanTimeBetween(90, 0.95).orThrow().value(), 1e-12);
  }

  /** Days before 1970 are days as well: the curve is the same, only earlier. */
  @Property(tries = 40, seed = "7")
  void daysMayLieBeforeTheFirst(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<EventHistory> units = invented(new Random(seed), 9);
    List<EventHistory> earlier = new ArrayList<>();
    for (EventHistory u : units) {
      earlier.add(
          new EventHistory(
              shifted(u.entryDays()), shifted(u.exitDays()), shifted(u.eventDays()), u.marks()));
    }
    assertArrayEquals(shifted(curve(units).days()), curve(earlier).days());
    assertArrayEquals(curve(units).mean(), curve(earlier).mean(), 1e-12);
    assertArrayEquals(curve(units).variance(), curve(earlier).variance(), 1e-12);
  }

  private static int[] shifted(int[] days) {
    return java.util.Arrays.stream(days).map(day -> day - 12).toArray();
  }

  @Test
  void longTimesAndTiesStayExact() {
    List<EventHistory> units = new ArrayList<>();
    for (int i = 0; i < 1000; i++) {
      units.add(EventHistory.watched(0, 1_000_000, 1, 1, 500_000, 1_000_000));
    }
    MeanCumulativeFunction curve = curve(units);
    assertArrayEquals(new double[] {2, 3, 4}, curve.mean(), 1e-12);
    assertArrayEquals(new double[] {0, 0, 0}, curve.variance(), 1e-12);
    assertEquals(250_000, curve.meanTimeBetween(1_000_000, 0.95).orThrow().value(), 1e-6);
  }

  @Test
  void refusesDisorder() {
    assertThrows(IllegalArgumentException.class, () -> EventHistory.watched(5, 5));
    assertThrows(
        IllegalArgumentException.class,
        () -> new EventHistory(new int[] {0}, new int[] {9}, new int[] {5, 3}, new long[2]));
  }

  /**
   * Poisson events that differ between units: the 95 % interval at the end holds the truth. Seeds
   * fixed beforehand; fails only if a binomial test rejects .93 at p &lt; .001.
   */
  @Test
  void intervalCoversTheTruth() {
    Random random = new Random(77);
    int runs = 1000;
    int held = 0;
    for (int run = 0; run < runs; run++) {
      List<EventHistory> units = new ArrayList<>();
      for (int i = 0; i < 100; i++) {
        // a unit's rate is exponential with mean 1 per 1000 days
        double rate = -Math.log(1 - random.nextDouble()) / 1000;
        int entry = random.nextInt(500);
        List<Integer> days = new ArrayList<>();
        double t = 0;
        while (true) {
          t += -Math.log(1 - random.nextDouble()) / rate;
          if (t > 2000) {
            break;
          }
          days.add((int) Math.ceil(t));
        }
        units.add(
            EventHistory.watched(
                i == 0 ? 0 : entry, 2000, days.stream().mapToInt(Integer::intValue).toArray()));
      }
      held += curve(units).at(2000, 0.95).orThrow().interval().contains(2.0) ? 1 : 0;
    }
    // 1000 x .93 - 3.1 sd = 905
    assertTrue(held >= 905, "held " + held);
  }

  private static MeanCumulativeFunction curve(List<EventHistory> units) {
    return MeanCumulativeFunction.of(units, Mark.COUNT).orThrow();
  }

  private static List<EventHistory> valveSeats() {
    Map<String, List<Integer>> events = new TreeMap<>();
    Map<String, Integer> ends = new TreeMap<>();
    for (Map<String, String> row : Reference.read("07_mcf_valveseat/input.csv").rows()) {
      int time = Integer.parseInt(row.get("time"));
      List<Integer> days = events.computeIfAbsent(row.get("id"), id -> new ArrayList<>());
      if (row.get("status").equals("1")) {
        days.add(time);
      }
      ends.merge(row.get("id"), time, Math::max);
    }
    List<EventHistory> units = new ArrayList<>();
    events.forEach(
        (id, days) ->
            units.add(
                EventHistory.watched(
                    0, ends.get(id), days.stream().mapToInt(Integer::intValue).toArray())));
    return units;
  }

  private static List<EventHistory> invented(Random random, int count) {
    List<EventHistory> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int entry = random.nextInt(8);
      int exit = entry + 3 + random.nextInt(10);
      int again = exit + random.nextInt(4);
      int end = again + 1 + random.nextInt(8);
      int[] days = new int[random.nextInt(6)];
      long[] marks = new long[days.length];
      for (int e = 0; e < days.length; e++) {
        days[e] = 1 + random.nextInt(28);
        marks[e] = 1 + random.nextInt(500);
      }
      java.util.Arrays.sort(days);
      units.add(new EventHistory(new int[] {entry, again}, new int[] {exit, end}, days, marks));
    }
    return units;
  }

  private static double[] slow(List<EventHistory> units, Mark mark, int from, int day) {
    double mean = 0;
    double[] influence = new double[units.size()];
    for (int t = from + 1; t <= day; t++) {
      double watched = 0;
      double total = 0;
      double[] own = new double[units.size()];
      for (int i = 0; i < units.size(); i++) {
        EventHistory unit = units.get(i);
        if (unit.watchedOn(t)) {
          watched++;
          for (int e = 0; e < unit.eventDays().length; e++) {
            if (unit.eventDays()[e] == t) {
              own[i] += mark == Mark.COUNT ? 1 : unit.marks()[e];
            }
          }
          total += own[i];
        }
      }
      if (watched > 0) {
        mean += total / watched;
        for (int i = 0; i < units.size(); i++) {
          if (units.get(i).watchedOn(t)) {
            influence[i] += (own[i] - total / watched) / watched;
          }
        }
      }
    }
    double variance = 0;
    for (double each : influence) {
      variance += each * each;
    }
    return new double[] {mean, variance};
  }
}
