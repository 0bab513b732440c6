package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import sealspan.stats.Interval;
import sealspan.stats.rates.Share;

/** The short version of {@link RepairEffectTruth}: 300 fleets of 100 assemblies. */
class RepairEffectTruthTest {
  private static final RepairEffectTruth.Result RESULT =
      RepairEffectTruth.run(RepairEffectTruth.SETTINGS[1], 300);

  /** Coverage is within .93 to .97 unless an exact binomial test rejects that at p below .001. */
  @Test
  void intervalsCoverTheTruth() {
    for (int of = 0; of < 3; of++) {
      Interval coverage = Share.clopperPearson(RESULT.covered()[of], RESULT.runs(), 0.998);
      assertTrue(
          coverage.lower() <= 0.97 && coverage.upper() >= 0.93,
          RESULT.covered()[of] + " of " + RESULT.runs() + " intervals cover the truth");
    }
    assertEquals(300, RESULT.runs() + RESULT.notIdentified());
    assertTrue(RESULT.runs() > 290, RESULT.notIdentified() + " runs were not identified");
  }

  /** The weighted difference is that of the truth, the raw one is far from it. */
  @Test
  void theChoiceByAgeIsTakenOut() {
    double error = RESULT.deviation()[2] / Math.sqrt(RESULT.runs());
    double truth = RESULT.truth()[2];
    assertEquals(truth, RESULT.mean()[2], 4 * error);
    assertTrue(truth - RESULT.rawDifference() > 10 * error, "raw " + RESULT.rawDifference());
  }
}
