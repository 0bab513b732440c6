package sealspan.stats.recurrence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;

class TrendTestsTest {
  private static final Reference EXPECTED = Reference.read("09_power_law_trend/expected.csv");

  /**
   * NIST/SEMATECH 8.4.5.2, MIL-HDBK-189 (1981) Appendix C and the coal mine explosions
   * (boot::coal); computed by R 4.2.2 from the textbook formulas of Cox and Lewis, MIL-HDBK-189 and
   * Lewis and Robinson.
   */
  @ParameterizedTest
  @ValueSource(strings = {"nist", "mil1981C", "coal"})
  void agreesWithThePublishedData(String name) {
    EventTimes unit = PowerLawProcessTest.systems(name).get(0);
    TrendTest laplace = TrendTests.laplace(List.of(unit)).orThrow();
    assertEquals(EXPECTED.value(name + " laplace_u_time_trunc"), laplace.statistic(), 1e-9);
    double p = EXPECTED.value(name + " laplace_p2");
    assertEquals(p, laplace.twoSidedP(), 1e-8 * p);
    EventTimes toLast = EventTimes.untilLastEvent(0, unit.times());
    assertEquals(
        EXPECTED.value(name + " laplace_u_failure_trunc"),
        TrendTests.laplace(List.of(toLast)).orThrow().statistic(),
        1e-9);
    TrendTest handbook = TrendTests.handbook(List.of(unit)).orThrow();
    double chi = EXPECTED.value(name + " MIL chi2 2N/beta (df 2N)");
    assertEquals(chi, handbook.statistic(), 1e-11 * chi);
    assertEquals(EXPECTED.value(name + " MIL chi2 p_lower"), handbook.risingP(), 1e-11);
    assertEquals(1 - handbook.risingP(), handbook.fallingP(), 1e-11);
    double robinson = EXPECTED.value(name + " lewis-robinson (laplace_f/cv)");
    assertEquals(robinson, TrendTests.lewisRobinson(List.of(unit)).orThrow().statistic(), 1e-9);
    assertEquals(robinson, TrendTests.lewisRobinson(List.of(toLast)).orThrow().statistic(), 1e-9);
  }

  /** Crow 1974, three systems to 200 hours; pooled as in Cox and Lewis. */
  @Test
  void poolsSystems() {
    TrendTest pooled = TrendTests.laplace(PowerLawProcessTest.systems("crow3")).orThrow();
    assertEquals(EXPECTED.value("crow3 pooled laplace"), pooled.statistic(), 1e-9);
    assertEquals(3, pooled.units());
    assertEquals(36, pooled.events());
    assertTrue(pooled.fallingP() < .01 && pooled.risingP() > .99);
  }

  /**
   * By hand: events at 2 and 9 in (0, 10]: U = (5.5 - 5) / (10 sqrt(1 / 24)); the handbook's
   * statistic is 2 ln 5 + 2 ln(10/9), and with 4 degrees of freedom the lower tail of x is 1 -
   * e^(-x/2) (1 + x/2).
   */
  @Test
  void workedByHand() {
    List<EventTimes> units = List.of(EventTimes.watched(0, 10, 9, 2));
    assertEquals(
        .5 / (10 * Math.sqrt(1 / 24.0)), TrendTests.laplace(units).orThrow().statistic(), 1e-14);
    double x = 2 * Math.log(5) + 2 * Math.log(10 / 9.0);
    TrendTest handbook = TrendTests.handbook(units).orThrow();
    assertEquals(x, handbook.statistic(), 1e-14);
    assertEquals(1 - Math.exp(-x / 2) * (1 + x / 2), handbook.risingP(), 1e-14);
  }

  /** Chi-squared with 16 degrees of freedom: 10.36646 leaves .153197 below (R pchisq). */
  @Test
  void aRisingRateHasASmallStatistic() {
    double t = Math.exp(-10.36646 / 16);
    List<EventTimes> units = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      units.add(EventTimes.watched(100, 101, 100 + t));
    }
    TrendTest test = TrendTests.handbook(units).orThrow();
    assertEquals(10.36646, test.statistic(), 1e-10);
    assertEquals(.153197, test.risingP(), 5e-7);
  }

  @Property(tries = 60, seed = "11")
  void orderIsOfNoAccountAndClocksMayShift(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<EventTimes> units = poisson(random, 15, .4);
    List<EventTimes> shuffled = new ArrayList<>(units);
    Collections.shuffle(shuffled, random);
    assertEquals(TrendTests.laplace(units), TrendTests.laplace(shuffled));
    assertEquals(TrendTests.laplaceByUnit(units), TrendTests.laplaceByUnit(shuffled));
    assertEquals(TrendTests.handbook(units), TrendTests.handbook(shuffled));
    assertEquals(TrendTests.lewisRobinson(units), TrendTests.lewisRobinson(shuffled));
    List<EventTimes> later = new ArrayList<>();
    for (EventTimes unit : units) {
      double[] times = unit.times().clone();
      for (int i = 0; i < times.length; i++) {
        times[i] += 4096;
      }
      later.add(EventTimes.watched(unit.start() + 4096, unit.end() + 4096, times));
    }
    assertEquals(
        TrendTests.laplace(units).orThrow().statistic(),
        TrendTests.laplace(later).orThrow().statistic(),
        1e-8);
    assertEquals(
        TrendTests.handbook(units).orThrow().statistic(),
        TrendTests.handbook(later).orThrow().statistic(),
        1e-6);
  }

  /**
   * Each test rejects at .05 about as often as it says when the rate is constant: 2,000 fleets of
   * 40 units, seed fixed beforehand; fails only where a binomial test rejects [.03, .07] at p &lt;
   * .001.
   */
  @Test
  void holdsItsLevel() {
    Random random = new Random(20_261);
    int[] rejected = new int[4];
    int runs = 2_000;
    for (int run = 0; run < runs; run++) {
      List<EventTimes> units = poisson(random, 40, .3);
      rejected[0] += TrendTests.laplace(units).orThrow().twoSidedP() < .05 ? 1 : 0;
      rejected[1] += TrendTests.handbook(units).orThrow().twoSidedP() < .05 ? 1 : 0;
      rejected[2] += TrendTests.lewisRobinson(units).orThrow().twoSidedP() < .05 ? 1 : 0;
      rejected[3] += TrendTests.laplaceByUnit(units).orThrow().twoSidedP() < .05 ? 1 : 0;
    }
    for (int count : rejected) {
      // .03 and .07 of 2,000 less and plus 3.1 standard deviations
      assertTrue(count >= 60 - 24 && count <= 140 + 36, java.util.Arrays.toString(rejected));
    }
  }

  @Test
  void saysWhyThereIsNoAnswer() {
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.laplace(List.of()));
    List<EventTimes> none = List.of(EventTimes.watched(0, 5), EventTimes.watched(0, 9));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.laplace(none));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.handbook(none));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.lewisRobinson(none));
    List<EventTimes> once = List.of(EventTimes.untilLastEvent(0, 5));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.laplace(once));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.handbook(once));
    List<EventTimes> even = List.of(EventTimes.watched(0, 9, 2, 4, 6));
    assertEquals(
        new Estimate.NotIdentified<TrendTest>("all gaps between events of a unit are equal"),
        TrendTests.lewisRobinson(even));
    assertInstanceOf(Estimate.NotIdentified.class, TrendTests.laplaceByUnit(even));
    assertInstanceOf(
        Estimate.NotIdentified.class,
        TrendTests.laplaceByUnit(Collections.nCopies(20, EventTimes.watched(0, 8, 4))));
  }

  @Test
  void bearsTiesAndAWideRangeOfTimes() {
    List<EventTimes> units =
        List.of(EventTimes.watched(0, 1e6, 1e-3, 1e-3, 1e6), EventTimes.watched(0, 1e-3, 1e-3));
    assertTrue(Double.isFinite(TrendTests.laplace(units).orThrow().statistic()));
    assertEquals(4 * Math.log(1e9), TrendTests.handbook(units).orThrow().statistic(), 1e-9);
    assertTrue(Double.isFinite(TrendTests.lewisRobinson(units).orThrow().statistic()));
  }

  @Test
  void refusesDisorder() {
    assertThrows(IllegalArgumentException.class, () -> EventTimes.watched(5, 5));
    assertThrows(IllegalArgumentException.class, () -> EventTimes.watched(0, 5, 0));
    assertThrows(IllegalArgumentException.class, () -> EventTimes.watched(0, 5, 6));
    assertThrows(IllegalArgumentException.class, () -> EventTimes.watched(0, Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new EventTimes(0, 5, EventTimes.Ending.EVENT, new double[] {4}));
  }

  private static List<EventTimes> poisson(Random random, int count, double rate) {
    List<EventTimes> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double start = 4 * random.nextDouble();
      double end = start + 2 + 8 * random.nextDouble();
      List<Double> times = new ArrayList<>();
      double t = start - Math.log(1 - random.nextDouble()) / rate;
      while (t <= end) {
        times.add(t);
        t -= Math.log(1 - random.nextDouble()) / rate;
      }
      units.add(
          EventTimes.watched(
              start, end, times.stream().mapToDouble(Double::doubleValue).toArray()));
    }
    return units;
  }
}
