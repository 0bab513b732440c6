package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Reference;

class LogRankTest {

  /** Freireich 1963: 16.79, the published log-rank statistic (from memory), p below .0001. */
  @Test
  void agreesWithTheTextbook() {
    List<List<Lifetime>> arms = new ArrayList<>();
    for (String arm : new String[] {"placebo", "6-MP"}) {
      List<Lifetime> lives = new ArrayList<>();
      for (Map<String, String> row : Reference.read("03_km/input.csv").where("arm", arm).rows()) {
        int day = Integer.parseInt(row.get("time"));
        lives.add(
            row.get("status").equals("1") ? Lifetime.ended(0, day) : Lifetime.goingOn(0, day));
      }
      arms.add(lives);
    }
    LogRank test = LogRank.of(arms).orThrow();
    assertEquals(16.79, test.chiSquared(), 5e-3);
    assertEquals(1, test.degreesOfFreedom());
    assertTrue(test.pValue() < 1e-4 && test.pValue() > 1e-5);
    assertEquals(21, test.observed()[0]);
    assertEquals(9, test.observed()[1]);
    assertEquals(10.75, test.expected()[0], 5e-3);
  }

  /** By hand: ends on days 1 (of two, one each) and 2 (alone): (1 - .5)^2 / .25 = 1. */
  @Test
  void workedByHand() {
    LogRank test =
        LogRank.of(List.of(List.of(Lifetime.ended(0, 1)), List.of(Lifetime.ended(0, 2)))).orThrow();
    assertEquals(1, test.chiSquared(), 1e-12);
    assertEquals(0.3173, test.pValue(), 5e-5);
    assertEquals(0.5, test.expected()[0], 1e-12);
    assertEquals(1.5, test.expected()[1], 1e-12);
  }

  /** Independent: two groups day by day by counting each life anew. */
  @Property(tries = 50, seed = "33")
  void agreesWithCountingAnew(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    List<List<Lifetime>> groups = List.of(invented(random, 15), invented(random, 25));
    double difference = 0;
    double variance = 0;
    for (int day = 1; day < 100; day++) {
      double r0 = atRisk(groups.get(0), day);
      double r = r0 + atRisk(groups.get(1), day);
      double d0 = ended(groups.get(0), day);
      double d = d0 + ended(groups.get(1), day);
      if (r > 0) {
        difference += d0 - d * r0 / r;
      }
      if (r > 1) {
        variance += d * (r0 / r) * (1 - r0 / r) * (r - d) / (r - 1);
      }
    }
    LogRank test = LogRank.of(groups).orThrow();
    assertEquals(difference * difference / variance, test.chiSquared(), 1e-9);
    assertEquals(Arrays.stream(test.observed()).sum(), Arrays.stream(test.expected()).sum(), 1e-9);
  }

  private static double atRisk(List<Lifetime> lives, int day) {
    return lives.stream().filter(l -> l.entryDay() < day && day <= l.lowerDay()).count();
  }

  private static double ended(List<Lifetime> lives, int day) {
    return lives.stream()
        .filter(l -> l.exact() && l.lowerDay() == day && l.entryDay() < day)
        .count();
  }

  static List<Lifetime> invented(Random random, int count) {
    List<Lifetime> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int entry = i % 2 == 0 ? 0 : random.nextInt(30);
      int day = entry + random.nextInt(60);
      lives.add(random.nextInt(3) == 0 ? Lifetime.goingOn(entry, day) : Lifetime.ended(entry, day));
    }
    return lives;
  }

  @Test
  void groupsThatWereNeverAtRiskTogetherAreNotCompared() {
    List<Lifetime> early = List.of(Lifetime.ended(0, 3), Lifetime.ended(0, 4));
    List<Lifetime> late = List.of(Lifetime.ended(10, 13), Lifetime.ended(10, 14));
    assertInstanceOf(Estimate.NotIdentified.class, LogRank.of(List.of(early, late)));
    assertInstanceOf(Estimate.NotIdentified.class, LogRank.of(List.of()));
    assertInstanceOf(Estimate.NotIdentified.class, LogRank.of(List.of(early, List.of())));
    assertEquals(1, LogRank.of(List.of(early, early, late)).orThrow().degreesOfFreedom());
    assertThrows(
        IllegalArgumentException.class,
        () -> LogRank.of(List.of(List.of(Lifetime.endedWithin(0, 1, 3)), late)));
  }
}
