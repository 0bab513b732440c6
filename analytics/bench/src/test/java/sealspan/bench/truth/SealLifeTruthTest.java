package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SealLifeTruthTest {

  /** The short version of the study in TRUTH.md, with the same seeds. */
  @Test
  void intervalsHoldTheTruth() {
    List<Coverage> study = SealLifeTruth.study(300);
    assertEquals(8, study.size());
    for (Coverage coverage : study) {
      assertTrue(coverage.chance() > 1e-3, coverage.row());
      assertTrue(coverage.notIdentified() < 0.05 * coverage.runs(), coverage.row());
    }
  }

  /** By hand: of 100 all or 80 covered lies outside, 95 inside; wide intervals may cover all. */
  @Test
  void theRangeCanBeMissed() {
    assertTrue(new Coverage("", 100, 0, 80, Coverage.Side.BOTH).chance() < 1e-3);
    assertTrue(new Coverage("", 1_000, 0, 1_000, Coverage.Side.BOTH).chance() < 1e-3);
    assertTrue(new Coverage("", 1_000, 0, 950, Coverage.Side.BOTH).chance() > 0.5);
    assertEquals(1, new Coverage("", 100, 0, 100, Coverage.Side.LOWER).chance(), 1e-12);
  }
}
