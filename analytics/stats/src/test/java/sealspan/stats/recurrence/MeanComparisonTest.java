package sealspan.stats.recurrence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;

class MeanComparisonTest {

  /**
   * By hand: two units against two over ten days. Means 3/2 (events 2; 4; 4) and 1/2 (event 3);
   * variances 1/8 and 1/8.
   */
  @Test
  void workedByHand() {
    List<EventHistory> first =
        List.of(EventHistory.watched(0, 10, 2, 4), EventHistory.watched(0, 10, 4));
    List<EventHistory> second =
        List.of(EventHistory.watched(0, 10, 3), EventHistory.watched(0, 10));
    PointEstimate difference =
        MeanComparison.of(first, second, Mark.COUNT).orThrow().differenceAt(10, .95).orThrow();
    assertEquals(1, difference.value(), 1e-15);
    assertEquals(.5, difference.standardError(), 1e-15);
    assertEquals(1 - 1.959963984540054 * .5, difference.interval().lower(), 1e-12);
    MeanComparison.Equality equality =
        MeanComparison.of(first, second, Mark.COUNT).orThrow().equality().orThrow();
    // both groups have two units throughout, so the weight is 1: (3/2 - 1/2) / sqrt(1/8 + 1/8)
    assertEquals(2, equality.statistic(), 1e-12);
    assertEquals(.04550026, equality.twoSidedP(), 1e-8);
  }

  /** Independent: weights, sums and shares summed day by day. */
  @Property(tries = 120, seed = "21")
  void agreesWithTheDefinition(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<EventHistory> first = invented(random, 3 + seed % 5);
    List<EventHistory> second = invented(random, 2 + seed % 7);
    for (Mark mark : Mark.values()) {
      if (!(MeanComparison.of(first, second, mark)
          instanceof Estimate.Identified<MeanComparison> c)) {
        continue;
      }
      double[] a = slow(first, second, mark, c.value());
      double[] b = slow(second, first, mark, c.value());
      if (a[1] + b[1] > 1e-12) {
        assertEquals(
            (a[0] - b[0]) / Math.sqrt(a[1] + b[1]),
            c.value().equality().orThrow().statistic(),
            1e-8);
      }
    }
  }

  private static double[] slow(
      List<EventHistory> own, List<EventHistory> other, Mark mark, MeanComparison c) {
    double[] share = new double[own.size()];
    double sum = 0;
    for (int day = c.fromDay() + 1; day <= c.toDay(); day++) {
      int on = day;
      double watched = own.stream().filter(u -> u.watchedOn(on)).count();
      double others = other.stream().filter(u -> u.watchedOn(on)).count();
      if (watched == 0 || others == 0) {
        continue;
      }
      double weight = watched * others / (watched + others);
      double[] mine = new double[own.size()];
      for (int i = 0; i < mine.length; i++) {
        EventHistory u = own.get(i);
        for (int e = 0; e < u.eventDays().length && u.watchedOn(day); e++) {
          mine[i] += u.eventDays()[e] != day ? 0 : mark == Mark.COUNT ? 1 : u.marks()[e];
        }
      }
      double mean = Arrays.stream(mine).sum() / watched;
      sum += weight * mean;
      for (int i = 0; i < mine.length; i++) {
        share[i] += own.get(i).watchedOn(day) ? weight / watched * (mine[i] - mean) : 0;
      }
    }
    return new double[] {sum, Arrays.stream(share).map(s -> s * s).sum()};
  }

  /**
   * Groups that go alike are told apart about one time in twenty: 1,500 pairs, seed fixed
   * beforehand; fails only where a binomial test rejects [.03, .07] at p &lt; .001.
   */
  @Test
  void holdsItsLevelAndSeesADifference() {
    Random random = new Random(8);
    int rejected = 0;
    int found = 0;
    int covered = 0;
    for (int run = 0; run < 1_500; run++) {
      List<EventHistory> first = poisson(random, 60, 1);
      List<EventHistory> second = poisson(random, 80, 1);
      MeanComparison alike = MeanComparison.of(first, second, Mark.COUNT).orThrow();
      rejected += alike.equality().orThrow().twoSidedP() < .05 ? 1 : 0;
      covered += alike.differenceAt(900, .95).orThrow().interval().contains(0) ? 1 : 0;
      MeanComparison twice =
          MeanComparison.of(poisson(random, 60, 2), second, Mark.COUNT).orThrow();
      found += twice.equality().orThrow().twoSidedP() < .05 ? 1 : 0;
    }
    assertTrue(rejected >= 45 - 21 && rejected <= 105 + 31, "rejected " + rejected);
    assertTrue(covered >= 1395 - 31 && covered <= 1455 + 21, "covered " + covered);
    assertTrue(found > 1_000, "found " + found);
  }

  @Property(tries = 40, seed = "21")
  void orderIsOfNoAccount(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<EventHistory> first = poisson(random, 9, 1);
    List<EventHistory> second = poisson(random, 8, 2);
    MeanComparison one = MeanComparison.of(first, second, Mark.COUNT).orThrow();
    Collections.reverse(first);
    Collections.shuffle(second, random);
    MeanComparison two = MeanComparison.of(first, second, Mark.COUNT).orThrow();
    assertEquals(one.equality(), two.equality());
    assertEquals(one.differenceAt(500, .95), two.differenceAt(500, .95));
  }

  @Test
  void saysWhyThereIsNoAnswer() {
    List<EventHistory> one = List.of(EventHistory.watched(0, 10, 3));
    List<EventHistory> later = List.of(EventHistory.watched(20, 30, 25));
    assertInstanceOf(Estimate.NotIdentified.class, MeanComparison.of(List.of(), one, Mark.COUNT));
    assertInstanceOf(Estimate.NotIdentified.class, MeanComparison.of(one, later, Mark.COUNT));
    MeanComparison alone = MeanComparison.of(one, one, Mark.COUNT).orThrow();
    assertInstanceOf(Estimate.NotIdentified.class, alone.differenceAt(10, .95));
    assertInstanceOf(Estimate.NotIdentified.class, alone.equality());
    List<EventHistory> none = Collections.nCopies(3, EventHistory.watched(0, 10));
    assertInstanceOf(
        Estimate.NotIdentified.class,
        MeanComparison.of(none, none, Mark.COUNT).orThrow().equality());
  }

  private static List<EventHistory> poisson(Random random, int count, double perYear) {
    List<EventHistory> units = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      // a unit's rate is exponential; it enters within the first year
      double rate = -Math.log(1 - random.nextDouble()) * perYear / 365;
      int entry = i == 0 ? 0 : random.nextInt(365);
      List<Integer> days = new ArrayList<>();
      double t = entry;
      while (true) {
        t -= Math.log(1 - random.nextDouble()) / rate;
        if (t > 1000) {
          break;
        }
        days.add((int) Math.ceil(t));
      }
      units.add(
          EventHistory.watched(entry, 1000, days.stream().mapToInt(Integer::intValue).toArray()));
    }
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
      Arrays.sort(days);
      units.add(new EventHistory(new int[] {entry, again}, new int[] {exit, end}, days, marks));
    }
    return units;
  }
}
