package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;

class AalenJohansenTest {
  private static EndedLife life(int day, int reason) {
    return new EndedLife(0, day, reason, 1);
  }

  /**
   * By hand, eight lives: 1/8; then 7/8 x 1/7 for the other reason; 3/4 x 1/5; 3/5 x 1/4; 9/20 x
   * 1/2 each.
   */
  @Test
  void workedByHand() {
    List<EndedLife> lives =
        List.of(
            life(1, 0),
            life(2, 1),
            life(2, EndedLife.GOING_ON),
            life(3, 0),
            life(5, 0),
            life(5, EndedLife.GOING_ON),
            life(6, 1),
            life(7, 0));
    AalenJohansen curves = AalenJohansen.of(lives, 2).orThrow();
    assertArrayEquals(new int[] {1, 2, 3, 5, 6, 7}, curves.days());
    double[] first = curves.incidence(0);
    double[] second = curves.incidence(1);
    assertArrayEquals(new double[] {0.125, 0.125, 0.275, 0.425, 0.425, 0.65}, first, 1e-12);
    assertArrayEquals(new double[] {0, 0.125, 0.125, 0.125, 0.35, 0.35}, second, 1e-12);
    assertEquals(4, curves.total(0));
    assertEquals(2, curves.total(1));
    // On day 1 it is a share of 8: p (1 - p) / 8.
    assertEquals(0.125 * 0.875 / 8, curves.variance(0)[0], 1e-15);
    PointEstimate none = curves.incidence(1, 1, 0.95).orThrow();
    assertEquals(0, none.value());
    assertEquals(0, none.interval().lower());
    assertTrue(none.interval().upper() > 0.125 && none.interval().upper() < 1);
  }

  /** With one reason it is one minus Kaplan-Meier, Greenwood and all. */
  @Property(tries = 50, seed = "31")
  void oneReasonIsKaplanMeier(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<EndedLife> lives = invented(new Random(seed), 40, 1);
    AalenJohansen curves = AalenJohansen.of(lives, 1).orThrow();
    SurvivalCurve curve = curves.any().curve();
    for (int j = 0; j < curve.days().length; j++) {
      assertEquals(1 - curve.survival()[j], curves.incidence(0)[j], 1e-12);
      if (curve.survival()[j] > 0) {
        assertEquals(curve.variance()[j], curves.variance(0)[j], 1e-12);
        PointEstimate share = curves.incidence(0, curve.days()[j], 0.95).orThrow();
        PointEstimate going = curve.at(curve.days()[j], 0.95).orThrow();
        assertEquals(1 - going.interval().upper(), share.interval().lower(), 1e-10);
        assertEquals(1 - going.interval().lower(), share.interval().upper(), 1e-10);
      }
    }
  }

  /** Independent: shares by their sum, and the variance by small changes of each day's chances. */
  @Property(tries = 40, seed = "32")
  void agreesWithSmallChangesOfEachDaysChances(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<EndedLife> lives = invented(new Random(seed), 30, 3);
    AalenJohansen curves = AalenJohansen.of(lives, 3).orThrow();
    SurvivalCurve curve = curves.any().curve();
    int n = curve.days().length;
    double[][] chance = new double[3][n];
    for (int k = 0; k < 3; k++) {
      for (int j = 0; j < n; j++) {
        chance[k][j] = curves.ended(k)[j] / curve.atRisk()[j];
      }
    }
    for (int k = 0; k < 3; k++) {
      double[] plain = shares(chance, k);
      for (int t = 0; t < n; t++) {
        assertEquals(plain[t], curves.incidence(k)[t], 1e-12);
        if (curve.survival()[t] > 0) {
          assertEquals(variance(chance, curve.atRisk(), k, t), curves.variance(k)[t], 1e-7);
        }
      }
    }
    for (int j = 0; j < n; j++) {
      double sum = curve.survival()[j];
      for (int k = 0; k < 3; k++) {
        sum += curves.incidence(k)[j];
      }
      assertEquals(1, sum, 1e-12);
    }
  }

  private static double[] shares(double[][] chance, int reason) {
    double[] shares = new double[chance[0].length];
    double going = 1;
    double sum = 0;
    for (int j = 0; j < shares.length; j++) {
      sum += going * chance[reason][j];
      shares[j] = sum;
      going *= 1 - chance[0][j] - chance[1][j] - chance[2][j];
    }
    return shares;
  }

  private static double variance(double[][] chance, double[] atRisk, int reason, int t) {
    double sum = 0;
    for (int j = 0; j <= t; j++) {
      double[] slope = new double[3];
      for (int k = 0; k < 3; k++) {
        double old = chance[k][j];
        chance[k][j] = old + 1e-6;
        double up = shares(chance, reason)[t];
        chance[k][j] = old - 1e-6;
        double down = shares(chance, reason)[t];
        chance[k][j] = old;
        slope[k] = (up - down) / 2e-6;
      }
      for (int k = 0; k < 3; k++) {
        for (int l = 0; l < 3; l++) {
          double p = chance[k][j];
          double covariance = ((k == l ? p : 0) - p * chance[l][j]) / atRisk[j];
          sum += slope[k] * slope[l] * covariance;
        }
      }
    }
    return sum;
  }

  @Test
  void hardInputsGiveAnAnswerOrAReason() {
    assertInstanceOf(Estimate.NotIdentified.class, AalenJohansen.of(List.of(), 2));
    assertInstanceOf(
        Estimate.NotIdentified.class, AalenJohansen.of(List.of(new EndedLife(5, 5, 0, 1)), 2));
    AalenJohansen none = AalenJohansen.of(List.of(life(9, EndedLife.GOING_ON)), 2).orThrow();
    assertEquals(0, none.incidence(1, 9, 0.95).orThrow().value());
    assertEquals(0.975, none.incidence(1, 9, 0.95).orThrow().interval().upper(), 1e-12);
    AalenJohansen one = AalenJohansen.of(List.of(life(9, 0)), 2).orThrow();
    assertEquals(1, one.incidence(0, 9, 0.95).orThrow().value());
    assertInstanceOf(Estimate.NotIdentified.class, none.incidence(0, 10, 0.95));
    assertThrows(IllegalArgumentException.class, () -> AalenJohansen.of(List.of(life(1, 2)), 2));
    assertThrows(IllegalArgumentException.class, () -> new EndedLife(0, -1, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new EndedLife(0, 1, -2, 1));
  }

  /** Lives with up to so many reasons; some entered late, some going on. */
  static List<EndedLife> invented(Random random, int count, int reasons) {
    List<EndedLife> lives = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int entry = i % 3 == 0 ? random.nextInt(20) : 0;
      int day = entry + 1 + random.nextInt(60);
      lives.add(new EndedLife(entry, day, random.nextInt(reasons + 1) - 1, 1));
    }
    return lives;
  }
}
