package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The short version of {@link WaterTruth}: 30 fleets of 480 assemblies, seeds 1 to 30. */
class WaterTruthTest {
  private static final int RUNS = 30;

  /** Coverage is at least .93 unless an exact binomial test rejects that at p below .001. */
  @Test
  void injectedBreaksAreFoundWithRightCoverage() {
    WaterTruth.Result result = WaterTruth.run(WaterTruth.SETTINGS[0], RUNS);
    for (Coverage one : new Coverage[] {result.effect(), result.future(), result.otherZone()}) {
      assertTrue(one.chance() >= 1e-3, one.row());
      assertTrue(one.runs() > RUNS / 2, one.row());
    }
    assertTrue(result.trueRatio() > 1.5, "true ratio " + result.trueRatio());
    assertTrue(
        Math.abs(Math.log(result.meanRatio() / result.trueRatio())) < 0.15,
        "true " + result.trueRatio() + ", estimated " + result.meanRatio());
    assertTrue(result.claims() > RUNS / 2, result.claims() + " runs with a claim");
  }
}
