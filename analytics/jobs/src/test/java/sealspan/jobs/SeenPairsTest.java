package sealspan.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SeenPairsTest {
  @Test
  void aPairIsNewOnce() {
    SeenPairs seen = new SeenPairs(10);
    assertTrue(seen.isNew("gauge/1", "assembly/1"));
    assertFalse(seen.isNew("gauge/1", "assembly/1"));
    assertTrue(seen.isNew("gauge/1", "assembly/11"));
    assertTrue(seen.isNew("gauge/11", "assembly/1"));
    assertTrue(seen.isNew("assembly/1", "gauge/1"));
  }

  /** Against the set of the pairs themselves, while the table grows nine times. */
  @Test
  void tellsAsTheSetOfAllPairsDoes() {
    SeenPairs seen = new SeenPairs(1_000_000);
    Set<List<String>> pairs = new HashSet<>();
    Random random = new Random(7);
    for (int i = 0; i < 300_000; i++) {
      String one = "gauge/" + random.nextInt(400);
      String other = "assembly/" + random.nextInt(900);
      assertEquals(pairs.add(List.of(one, other)), seen.isNew(one, other), one + " " + other);
    }
    assertTrue(pairs.size() > 1 << 17, "the table had to grow: " + pairs.size());
  }

  @Test
  void whatFindsNoPlaceStaysNew() {
    SeenPairs seen = new SeenPairs(2);
    for (String assembly : List.of("assembly/1", "assembly/2", "assembly/3")) {
      assertTrue(seen.isNew("site/1", assembly));
    }
    assertFalse(seen.isNew("site/1", "assembly/1"));
    assertFalse(seen.isNew("site/1", "assembly/2"));
    assertTrue(seen.isNew("site/1", "assembly/3"));
  }
}
