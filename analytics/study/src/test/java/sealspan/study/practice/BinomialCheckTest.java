package sealspan.study.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class BinomialCheckTest {
  @Test
  void agreesWithSumsByHand() {
    // 1 of 4 at one half: P(0) + P(1) = 5/16, twice that is 10/16.
    assertEquals(0.625, BinomialCheck.pValue(0.5, 1, 4), 1e-12);
    // 10 of 10 at .9: .9^10 above; twice that.
    assertEquals(2 * Math.pow(0.9, 10), BinomialCheck.pValue(0.9, 10, 10), 1e-12);
  }
}
