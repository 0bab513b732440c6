package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The short version of {@link WaterRecordTruth}: 40 records of each setting, seeds 1 to 40. */
class WaterRecordTruthTest {
  private static final int RUNS = 40;

  /** Coverage is as asked for unless an exact binomial test rejects that at p below .001. */
  @Test
  void whatWasPutInIsFoundWithRightCoverage() {
    List<WaterRecordTruth.Figure> figures = new ArrayList<>(WaterRecordTruth.windows(RUNS));
    figures.addAll(WaterRecordTruth.weeks(RUNS));
    figures.addAll(WaterRecordTruth.qualities(RUNS));
    for (WaterRecordTruth.Figure figure : figures) {
      Coverage one = figure.coverage();
      assertTrue(one.runs() > RUNS / 2, one.row());
      // With so few runs all may be covered: only too few are a failure.
      Coverage least =
          new Coverage(
              one.what(), one.runs(), one.notIdentified(), one.covered(), Coverage.Side.LOWER);
      assertTrue(least.chance() >= 1e-3, one.row());
      assertTrue(
          Math.abs(Math.log(figure.meanRatio() / figure.truth())) < .15,
          one.what() + ": true " + figure.truth() + ", estimated " + figure.meanRatio());
    }
  }
}
