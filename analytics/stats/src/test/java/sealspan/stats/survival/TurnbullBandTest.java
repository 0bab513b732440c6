package sealspan.stats.survival;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;

class TurnbullBandTest {
  private static final int[] DAYS = {1, 10, 30, 60, 90};

  /** Independent: for known and open ends Greenwood's interval is about as wide. */
  @Test
  void isAboutAsWideAsGreenwoodsWhereThatHolds() {
    List<Lifetime> lives = new ArrayList<>();
    Random random = new Random(5);
    for (int i = 0; i < 200; i++) {
      int end = 1 + random.nextInt(120);
      lives.add(end > 100 ? Lifetime.goingOn(0, 100) : Lifetime.ended(0, end));
    }
    TurnbullBand band = TurnbullBand.of(lives, DAYS, 0.95).orThrow();
    for (int i = 1; i < DAYS.length; i++) {
      Interval greenwood =
          KaplanMeier.of(lives).orThrow().curve().at(DAYS[i], 0.95).orThrow().interval();
      double ratio =
          (band.at(i).upper() - band.at(i).lower()) / (greenwood.upper() - greenwood.lower());
      assertTrue(ratio > 0.8 && ratio < 1.25, DAYS[i] + ": " + ratio);
    }
  }

  @Test
  void orderIsOfNoAccountAndTheCurveLiesInside() {
    List<Lifetime> lives = TurnbullTest.invented(new Random(6), 80, 20);
    List<Lifetime> shuffled = new ArrayList<>(lives);
    Collections.shuffle(shuffled, new Random(7));
    TurnbullBand band = TurnbullBand.of(lives, DAYS, 0.95).orThrow();
    TurnbullBand again = TurnbullBand.of(shuffled, DAYS, 0.95).orThrow();
    Turnbull fit = Turnbull.of(lives).orThrow();
    for (int i = 0; i < DAYS.length; i++) {
      assertEquals(band.at(i), again.at(i));
      if (fit.at(DAYS[i]) instanceof Estimate.Identified<Turnbull.Known> known) {
        assertTrue(band.at(i).lower() <= known.value().atLeast());
        assertTrue(band.at(i).upper() >= known.value().atMost());
      }
      assertTrue(band.at(i).lower() >= 0 && band.at(i).upper() <= 1);
    }
  }

  /** By hand: none of 20 seen to end; a curve below .025^(1/20) = .8316 makes that too unlikely. */
  @Test
  void withoutEndsTheLowerLimitIsExact() {
    TurnbullBand band =
        TurnbullBand.of(List.of(Lifetime.goingOn(0, 50).times(20)), new int[] {50}, 0.95).orThrow();
    assertEquals(0.8316, band.at(0).lower(), 5e-5);
    assertEquals(1, band.at(0).upper());
    assertInstanceOf(Estimate.NotIdentified.class, TurnbullBand.of(List.of(), new int[] {5}, 0.95));
  }

  /** More lives, narrower; far more than are drawn, narrower still. */
  @Test
  void narrowsWithTheLives() {
    double[] width = new double[3];
    int[] times = {1, 10, 1_000};
    for (int i = 0; i < times.length; i++) {
      List<Lifetime> lives = new ArrayList<>();
      for (Lifetime life : TurnbullTest.invented(new Random(8), 100, 0)) {
        lives.add(life.times(times[i]));
      }
      Interval interval = TurnbullBand.of(lives, new int[] {50}, 0.95).orThrow().at(0);
      width[i] = interval.upper() - interval.lower();
    }
    assertTrue(
        width[0] > 1.5 * width[1] && width[1] > 1.5 * width[2],
        width[0] + " " + width[1] + " " + width[2]);
  }
}
