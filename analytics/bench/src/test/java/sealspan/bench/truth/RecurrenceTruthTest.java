package sealspan.bench.truth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The short version of {@link RecurrenceTruth}: coverage is within .93 to .97 unless an exact
 * binomial test rejects that at p below .001; seeds fixed.
 */
class RecurrenceTruthTest {
  @Test
  void intervalsCoverTheTruth() {
    List<RecurrenceTruth.Coverage> all = new ArrayList<>();
    all.addAll(RecurrenceTruth.means(400));
    all.addAll(RecurrenceTruth.powers(400));
    all.addAll(RecurrenceTruth.ageing(RecurrenceTruth.AGEING.get(0), 150));
    assertEquals(9, all.size());
    for (RecurrenceTruth.Coverage each : all) {
      assertTrue(each.withinBounds(), each.toString());
    }
  }
}
