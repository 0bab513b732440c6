package sealspan.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** R's p.adjust. */
@LiveR.Needed
class AdjustedProbabilitiesAgainstRTest {
  @Test
  void bothWays() {
    double[] p = new Random(6).doubles(30).map(u -> u * u * u).toArray();
    p[4] = p[7];
    Map<String, double[]> r =
        LiveR.given("p", p).ask("answer <- list(bh = p.adjust(p, 'BH'), by = p.adjust(p, 'BY'))");
    assertArrayEquals(r.get("bh"), AdjustedProbabilities.benjaminiHochberg(p), 1e-12);
    assertArrayEquals(r.get("by"), AdjustedProbabilities.benjaminiYekutieli(p), 1e-12);
  }
}
