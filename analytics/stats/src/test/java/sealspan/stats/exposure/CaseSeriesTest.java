package sealspan.stats.exposure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;

class CaseSeriesTest {
  static final RiskWindow AFTER = new RiskWindow("after", 0, 7);

  /**
   * Four of 14 outcomes in .08 of the time: (4 / 10) (92 / 8) = 4.60, exact limits by Clopper and
   * Pearson 1.053068 and 15.94861 (R's binom.test, odds divided by 8 / 92).
   */
  @Test
  void fourOfFourteenByHand() {
    int[] outcomes = {10, 11, 12, 17, 30, 31, 40, 50, 60, 70, 80, 90, 95, 99};
    CaseSeries series =
        CaseSeries.of(
                List.of(new WatchedSpan(0, 100, outcomes, new int[] {10})), List.of(AFTER), .95)
            .orThrow();
    WindowRatio ratio = series.windows().get(0);
    assertEquals(4, ratio.outcomes());
    assertEquals(8, ratio.days());
    assertEquals(4.60, ratio.ratio(), 1e-9);
    assertEquals(1.053068, ratio.interval().lower(), 1e-6);
    assertEquals(15.94861, ratio.interval().upper(), 1e-5);
    // The same in two units that share it out, and beside one without outcome.
    List<WatchedSpan> two =
        List.of(
            new WatchedSpan(0, 100, new int[] {10, 11, 30, 31, 40, 50, 60}, new int[] {10}),
            new WatchedSpan(0, 100, new int[] {12, 17, 70, 80, 90, 95, 99}, new int[] {10}),
            new WatchedSpan(0, 500, new int[0], new int[] {10}));
    CaseSeries split = CaseSeries.of(two, List.of(AFTER), .95).orThrow();
    assertEquals(2, split.units());
    assertEquals(4.60, split.windows().get(0).ratio(), 1e-9);
    assertEquals(15.94861, split.windows().get(0).interval().upper(), 1e-5);
  }

  @Test
  void aDayOfSeveralWindowsBelongsToTheLatestExposure() {
    List<RiskWindow> windows = List.of(new RiskWindow("before", -3, -1), AFTER);
    int[] found = new WatchedSpan(0, 16, new int[0], new int[] {10, 4}).windowOfDay(windows);
    assertArrayEquals(new int[] {0, 1, 1, 1, 2, 2, 2, 1, 1, 1, 2, 2, 2, 2, 2, 2}, found);
    assertThrows(
        IllegalArgumentException.class,
        () -> CaseSeries.of(List.of(), List.of(AFTER, new RiskWindow("more", 7, 9)), .95));
  }

  /** Beside the likelihood of single days, given each unit's total, climbed by small steps. */
  @Test
  void theLikelihoodOfSingleDays() {
    List<RiskWindow> windows = List.of(new RiskWindow("before", -5, -1), AFTER);
    List<WatchedSpan> units = invented(7, 30, windows);
    CaseSeries series = CaseSeries.of(units, windows, .95).orThrow();
    double[] at = {0, 0};
    for (double step = .5; step > 1e-7; step /= 2) {
      boolean moved = true;
      while (moved) {
        moved = false;
        for (int j = 0; j < 2; j++) {
          for (int sign = -1; sign <= 1; sign += 2) {
            double[] next = at.clone();
            next[j] += sign * step;
            if (byDay(units, windows, next) > byDay(units, windows, at)) {
              at = next;
              moved = true;
            }
          }
        }
      }
    }
    for (int w = 0; w < 2; w++) {
      assertEquals(at[w], Math.log(series.windows().get(w).ratio()), 1e-5);
    }
  }

  private static double byDay(List<WatchedSpan> units, List<RiskWindow> windows, double[] log) {
    double sum = 0;
    for (WatchedSpan unit : units) {
      int[] window = unit.windowOfDay(windows);
      double all = 0;
      for (int w : window) {
        all += w == 0 ? 1 : Math.exp(log[w - 1]);
      }
      for (int day : unit.outcomeDays()) {
        int w = window[day - unit.fromDay()];
        sum += (w == 0 ? 0 : log[w - 1]) - Math.log(all);
      }
    }
    return sum;
  }

  static List<WatchedSpan> invented(int seed, int count, List<RiskWindow> windows) {
    Random random = new Random(seed);
    List<WatchedSpan> units = new ArrayList<>();
    for (int u = 0; u < count; u++) {
      int[] exposures = random.ints(3, 0, 200).toArray();
      int until = 120 + random.nextInt(80);
      int[] window = new WatchedSpan(0, until, new int[0], exposures).windowOfDay(windows);
      double base = .01 * (1 + random.nextInt(4));
      List<Integer> days = new ArrayList<>();
      for (int day = 0; day < until; day++) {
        if (random.nextDouble() < base * (1 + window[day])) {
          days.add(day);
        }
      }
      units.add(
          new WatchedSpan(
              0, until, days.stream().mapToInt(Integer::intValue).toArray(), exposures));
    }
    return units;
  }

  @Test
  void allNoneAndNothing() {
    WatchedSpan none = new WatchedSpan(0, 100, new int[] {50, 60, 70}, new int[] {10});
    WindowRatio ratio =
        CaseSeries.of(List.of(none), List.of(AFTER), .95).orThrow().windows().get(0);
    assertEquals(0, ratio.ratio());
    assertEquals(0, ratio.interval().lower());
    // By hand: (1 - s)^3 = .025 at the upper limit.
    double share = 1 - Math.cbrt(.025);
    assertEquals(share / (1 - share) * 92 / 8, ratio.interval().upper(), 1e-7);
    WatchedSpan all = new WatchedSpan(0, 100, new int[] {10, 11, 12}, new int[] {10});
    WindowRatio every = CaseSeries.of(List.of(all), List.of(AFTER), .95).orThrow().windows().get(0);
    assertEquals(Double.POSITIVE_INFINITY, every.ratio());
    assertEquals(1 / (share / (1 - share)) * 92 / 8, every.interval().lower(), 1e-6);
    WatchedSpan unexposed = new WatchedSpan(0, 100, new int[] {10}, new int[0]);
    assertEquals(
        Estimate.notIdentified(
            "no unit has an outcome and days both in and outside of the windows"),
        CaseSeries.of(List.of(unexposed), List.of(AFTER), .95));
    assertEquals(
        Estimate.notIdentified("every outcome lies in a window, so there is no comparison"),
        CaseSeries.of(List.of(all), List.of(AFTER, new RiskWindow("b", -3, -1)), .95));
    List<WindowRatio> two =
        CaseSeries.of(List.of(none), List.of(AFTER, new RiskWindow("later", 20, 50)), .95)
            .orThrow()
            .windows();
    assertEquals(0, two.get(0).ratio());
    assertEquals(0, two.get(0).interval().lower());
    assertEquals(2.0 / 31 / (1.0 / 61), two.get(1).ratio(), 1e-9);
  }
}
