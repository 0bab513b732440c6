package sealspan.stats.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sealspan.stats.scan.CounterRandom;

class MixtureWatchTest {
  private static final int[] FIRST = {0};
  private static final int[] NONE = {};

  /**
   * By hand. One zone, p = .1: a case counts 1.5, 2.5 and 4, no case .85/.9, .75/.9 and .6/.9. A
   * case, then a test elsewhere, then none: the sums are 1.5, 2.5, 4; 2.5, 3.5, 5; 3.5 x 17/18, 4.5
   * x 5/6, 6 x 2/3.
   */
  @Test
  void addsUpAsByHand() {
    MixtureWatch watch = new MixtureWatch(new double[] {1}, 100);
    watch.observe(FIRST, .1, true);
    assertEquals(8 / 3.0, watch.evidence(), 1e-14);
    watch.observe(NONE, .1, true);
    assertEquals(11 / 3.0, watch.evidence(), 1e-14);
    watch.observe(FIRST, .1, false);
    assertEquals((3.5 * 17 / 18 + 4.5 * 5 / 6 + 6 * 2 / 3.0) / 3, watch.evidence(), 1e-14);
    assertEquals(3, watch.tests());
  }

  /** By hand: the same zone; the fourth case takes the sum of 4 to 4 + 16 + 64 + 256 = 340. */
  @Test
  void saysWhatCarriesTheAlarmAndStartsAnew() {
    double[] weight = {.5, .5};
    MixtureWatch watch = new MixtureWatch(weight, 60);
    watch.observe(FIRST, .1, false);
    watch.observe(new int[] {1}, .1, false);
    for (int i = 0; i < 3; i++) {
      assertFalse(watch.observe(FIRST, .1, true).isPresent(), "case " + i);
    }
    Raised raised = watch.observe(FIRST, .1, true).orElseThrow();
    assertEquals(6, raised.test());
    assertEquals(6, raised.tests());
    assertEquals(0, raised.zone());
    assertEquals(4, raised.multiplier());
    assertEquals(3, raised.since());
    assertEquals(4, raised.inZone());
    assertEquals(4, raised.cases());
    assertEquals(.4, raised.expected(), 1e-15);
    assertTrue(raised.share() > .9 && raised.share() < 1);
    assertEquals(0, watch.evidence());
    assertEquals(0, watch.testsSinceAlarm());
    watch.observe(NONE, .1, false);
    assertEquals(1, watch.evidence(), 1e-15);
  }

  @Test
  void equalsTheDefinitionWithZonesThatOverlap() {
    int zones = 7;
    double[] weight = new double[zones];
    for (int z = 0; z < zones; z++) {
      weight[z] = (z + 1) / 28.0;
    }
    CounterRandom random = CounterRandom.of(20_261_127L, 1);
    MixtureWatch fast = new MixtureWatch(weight, 150);
    SlowWatch slow = new SlowWatch(weight);
    long counter = 0;
    int alarms = 0;
    for (int test = 0; test < 600; test++) {
      boolean[] in = new boolean[zones];
      int[] list = new int[zones];
      int n = 0;
      for (int z = 0; z < zones; z++) {
        in[z] = random.uniform(counter++) < .3;
        if (in[z]) {
          list[n++] = z;
        }
      }
      double p = .02 + .5 * random.uniform(counter++);
      boolean found = random.uniform(counter++) < p;
      double expected = slow.observe(in, p, found);
      Optional<Raised> raised = fast.observe(Arrays.copyOf(list, n), p, found);
      double evidence = raised.map(Raised::evidence).orElse(fast.evidence());
      assertEquals(expected, evidence, 1e-9 * expected, "test " + test);
      assertEquals(expected >= 150, raised.isPresent());
      if (raised.isPresent()) {
        alarms++;
        slow.restart();
      }
      if (test % 50 == 0) {
        fast = fast.copy();
      }
    }
    assertTrue(alarms >= 2, "alarms " + alarms);
  }

  @Test
  void otherZonesNeverAddEvidence() {
    MixtureWatch watch = new MixtureWatch(new double[] {.2, .8}, 1_000);
    watch.observe(FIRST, .1, true);
    watch.observe(new int[] {1}, .1, false);
    watch.observe(FIRST, .1, true);
    double before = watch.evidence();
    int[] asBefore = {0, 1};
    assertEquals(
        before, watch.over(new double[] {.2, .8}, asBefore, 1_000).evidence(), 1e-12 * before);
    assertEquals(
        before, watch.over(new double[] {.6, .4}, asBefore, 1_000).evidence(), 1e-12 * before);
    assertEquals(0, watch.over(new double[] {1}, new int[] {-1}, 1_000).evidence());
    MixtureWatch one = watch.over(new double[] {1}, FIRST, 1_000);
    assertTrue(one.evidence() < before);
    one.observe(NONE, .5, false);
    MixtureWatch kept = watch.over(new double[] {.5, .5}, new int[] {0, -1}, 1_000);
    assertEquals(one.evidence() - 1, kept.evidence(), 1e-12);
    assertEquals(3, kept.tests());
  }

  /** The quiet of a zone adds to its evidence too: it may carry most of it, and hold no test. */
  @Test
  void aZoneThatCameWithOtherZonesAndHoldsNoTestSaysNothingOfTests() {
    MixtureWatch watch = new MixtureWatch(new double[] {.5, .5}, 1_000);
    watch.observe(FIRST, .5, false);
    MixtureWatch fresh = watch.over(new double[] {1}, new int[] {-1}, 3);
    MixtureWatch kept = watch.over(new double[] {1}, new int[] {1}, 3);
    for (MixtureWatch each : List.of(fresh, kept)) {
      Optional<Raised> raised = Optional.empty();
      while (raised.isEmpty()) {
        raised = each.observe(NONE, .5, false);
      }
      assertEquals(raised.get().test(), raised.get().since());
      assertEquals(0, raised.get().inZone());
    }
  }

  @Test
  void copesWithWhatIsHard() {
    MixtureWatch nothing = new MixtureWatch(new double[0], 10);
    MixtureWatch untested = new MixtureWatch(new double[] {1}, 10);
    for (int i = 0; i < 9; i++) {
      assertFalse(nothing.observe(NONE, .5, true).isPresent());
      assertFalse(untested.observe(NONE, .5, true).isPresent());
    }
    assertEquals(0, nothing.evidence());
    Raised raised = untested.observe(NONE, .5, true).orElseThrow();
    assertEquals(0, raised.inZone());
    assertEquals(0, raised.cases());
    MixtureWatch certain = new MixtureWatch(new double[] {1}, 1e6);
    for (int i = 0; i < 1_000; i++) {
      certain.observe(FIRST, .95, i % 2 == 0);
    }
    assertEquals(1_000, certain.evidence(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> certain.observe(FIRST, 0, false));
    assertThrows(IllegalArgumentException.class, () -> certain.observe(FIRST, 1, true));
    assertThrows(IllegalArgumentException.class, () -> new MixtureWatch(new double[] {.5}, 10));
  }

  /**
   * Golden, from a reckoning outside this project: threshold 1,000, probability .08, places 30:
   * 1,221 tests on average (standard error 79); 1,117 (106) in another setting. Zones were not
   * stated there, so the ring's own mean is held to the promise and to that neighbourhood. Seeds
   * fixed beforehand; the promise is rejected at p < .001 only.
   */
  @Test
  void keepsItsPromiseAndBreaksItWhereProbabilitiesAreTooLow() {
    double[] right = means(300, .08, 1);
    assertTrue(right[0] + 3.1 * right[1] >= 1_000, "mean " + right[0] + " +- " + right[1]);
    assertEquals(1_221, right[0], 3.3 * Math.hypot(79, right[1]));
    double[] low = means(300, .096, 1);
    assertEquals(602, low[0], 3.3 * Math.hypot(50, low[1]));
    assertTrue(low[0] + 3.1 * low[1] < 1_000, "mean " + low[0] + " +- " + low[1]);
  }

  /**
   * Golden, same source: three times the risk in 6 of 30 places is found after 132 tests in the
   * middle of the runs; here from test 300 on, in runs that had no alarm before.
   */
  @Test
  void findsAClusterSoonAndWhereItIs() {
    int from = 300;
    List<Raised> found = new ArrayList<>();
    for (int run = 0; run < 300; run++) {
      Raised raised = RingTown.run(20_261_129L, run, 1_000, .08, .08, 3, from);
      if (raised.test() > from) {
        found.add(raised);
      }
    }
    found.sort(Comparator.comparingLong(Raised::test));
    assertTrue(found.size() > 250, "runs without an alarm before: " + found.size());
    assertEquals(132, found.get(found.size() / 2).test() - from, 25.0, "median delay");
    long there = found.stream().filter(r -> RingTown.touchesTheFirstSix(r.zone())).count();
    assertTrue(there > .9 * found.size(), "carried by a zone that touches it: " + there);
  }

  private static double[] means(int runs, double truth, double risk) {
    double sum = 0;
    double squares = 0;
    for (int run = 0; run < runs; run++) {
      double tests = RingTown.run(20_261_128L, run, 1_000, .08, truth, risk, 0).test();
      sum += tests;
      squares += tests * tests;
    }
    double mean = sum / runs;
    return new double[] {mean, Math.sqrt((squares / runs - mean * mean) / (runs - 1))};
  }
}
