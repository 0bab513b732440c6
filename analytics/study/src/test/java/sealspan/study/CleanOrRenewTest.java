package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class CleanOrRenewTest {
  /**
   * By hand: a difference of .17 saves .17 x 400 = 68 of visits and costs 50 more: 18 saved. With
   * limits .03 and .31 the standard error is .28 / 3.919928 = .0714299, times 400 is 28.57196; 18
   * over it is .629988, whose normal probability is .735649 (tables). Break even is 50 / .17.
   */
  @Test
  void byHand() {
    CleanOrRenew decision = CleanOrRenew.of(0.17, 0.03, 0.31, 50, 400);
    assertEquals(18, decision.expectedSaving(), 1e-12);
    assertEquals(0.735649, decision.probabilityRenewalPays(), 2e-6);
    assertEquals(50 / 0.17, decision.breakEvenRevisit(), 1e-9);
    assertEquals("a toss-up; P that a new seal is cheaper: 0.74", decision.verdict());
  }

  /** The regret of the favoured choice by drawing the true difference a million times. */
  @Test
  void regretIsWhatDrawsGive() {
    CleanOrRenew decision = CleanOrRenew.of(0.17, 0.03, 0.31, 50, 400);
    Random random = new Random(1);
    double error = 0.28 / 3.919928;
    double sum = 0;
    for (int i = 0; i < 1_000_000; i++) {
      double saving = 400 * (0.17 + error * random.nextGaussian()) - 50;
      sum += Math.max(0, -saving);
    }
    assertEquals(sum / 1e6, decision.expectedRegret(), 0.05);
  }

  @Test
  void saysWhichWhenItIsClear() {
    assertTrue(CleanOrRenew.of(0.17, 0.1, 0.24, 10, 900).verdict().startsWith("a new seal by"));
    assertTrue(CleanOrRenew.of(0.01, -0.02, 0.04, 50, 200).verdict().startsWith("cleaning by"));
    assertNull(CleanOrRenew.of(-0.01, -0.04, 0.02, 50, 200).breakEvenRevisit());
    assertThrows(IllegalArgumentException.class, () -> CleanOrRenew.of(0.1, 0.1, 0.1, 50, 200));
    assertThrows(IllegalArgumentException.class, () -> CleanOrRenew.of(0.1, 0, 0.2, 0, 200));
  }
}
