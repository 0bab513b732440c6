package sealspan.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AdjustedProbabilitiesTest {
  /** Benjamini and Hochberg 1995, 15 probabilities (from memory): four claims at .05. */
  @Test
  void theFirstPublishedExample() {
    double[] p = {
      .0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528,
      .7590, 1
    };
    double[] adjusted = AdjustedProbabilities.benjaminiHochberg(p);
    assertEquals(4, Arrays.stream(adjusted).filter(a -> a <= .05).count());
    assertEquals(.0095 * 15 / 4, adjusted[3], 1e-12);
    // By hand: .0278 x 15 / 6 = .0695 is above .0298 x 15 / 7 = .06386, and that below .0645.
    assertEquals(.0298 * 15 / 7, adjusted[5], 1e-12);
    assertEquals(1, adjusted[14]);
  }

  /** Beside the definition: the least of n p / rank over all that are no smaller. */
  @Test
  void theDefinition() {
    double[] p = new Random(5).doubles(40).map(u -> u * u).toArray();
    double[] adjusted = AdjustedProbabilities.benjaminiHochberg(p);
    for (int i = 0; i < p.length; i++) {
      double least = 1;
      for (double other : p) {
        long rank = Arrays.stream(p).filter(q -> q <= other).count();
        least = other >= p[i] ? Math.min(least, p.length * other / rank) : least;
      }
      assertEquals(least, adjusted[i], 1e-12);
    }
    assertArrayEquals(new double[0], AdjustedProbabilities.benjaminiHochberg(new double[0]));
    assertThrows(
        IllegalArgumentException.class,
        () -> AdjustedProbabilities.benjaminiYekutieli(new double[] {Double.NaN}));
  }
}
