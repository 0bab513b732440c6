package sealspan.ingest.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IdIndexTest {
  private static final Instant T0 = Instant.parse("2024-01-01T00:00:00Z");
  private static final long[] END = {1_000_000, 1_000_000};

  @TempDir Path folder;

  private IdIndex open(String identity, long... end) throws IOException {
    return IdIndex.open(folder.resolve("ids"), identity, end);
  }

  /** Few hashes, many digests: hashes that several ids share are the rule here. */
  @Test
  void agreesWithAMapOverSavesAndReopenings() throws IOException {
    Map<List<Long>, Place> model = new HashMap<>();
    Random random = new Random(11);
    IdIndex index = open("topic", END);
    for (int i = 0; i < 30_000; i++) {
      long hash = IdTable.hash(new byte[] {(byte) random.nextInt(100), (byte) random.nextInt(100)});
      long digest = random.nextInt(20);
      Place place = new Place(random.nextInt(2), i);
      index.put(hash, digest, place, T0.plusMillis(i));
      model.putIfAbsent(List.of(hash, digest), place);
      if (i % 7_000 == 6_999) {
        index.cover(0, i);
        index.save();
        index = open("topic", END);
        assertEquals(i, index.covered(0));
        assertEquals(0, index.covered(1));
        assertEquals(T0.plusMillis(i), index.latest());
      }
    }
    assertEquals(model.size(), index.count());
    Map<Long, List<Place>> byHash = new HashMap<>();
    for (Map.Entry<List<Long>, Place> e : model.entrySet()) {
      assertEquals(e.getValue(), index.find(e.getKey().get(0), e.getKey().get(1)));
      byHash.computeIfAbsent(e.getKey().get(0), h -> new ArrayList<>()).add(e.getValue());
      assertNull(index.find(e.getKey().get(0), 99));
    }
    for (Map.Entry<Long, List<Place>> e : byHash.entrySet()) {
      List<Place> found = index.places(e.getKey());
      assertEquals(e.getValue().size(), found.size());
      assertTrue(found.containsAll(e.getValue()));
    }
    assertEquals(List.of(), index.places(IdTable.hash(new byte[] {1, 2, 3})));
  }

  @Test
  void aFullTableHoldsWhatWasPutAndNothingElse() {
    Random random = new Random(12);
    IdTable table = IdTable.onHeap(1_000);
    Set<Long> put = new HashSet<>();
    while (!table.isFull()) {
      long hash = random.nextLong() | 1;
      table.put(hash, 7, put.size());
      put.add(hash);
    }
    for (long hash : put) {
      assertTrue(table.holds(hash));
      assertEquals(put.contains(hash ^ 2), table.holds(hash ^ 2));
    }
  }

  @Test
  void packsLargePlaces() {
    Place place = new Place(32_767, (1L << 48) - 1);
    assertEquals(place, IdTable.unpacked(IdTable.packed(place)));
  }

  @Test
  void keepsHashesApartAndNeverGivesTheMarkOfAFreeSlot() {
    Map<Long, Integer> seen = new HashMap<>();
    for (int i = 0; i < 200_000; i++) {
      long hash =
          IdTable.hash(Integer.toString(i).getBytes(java.nio.charset.StandardCharsets.UTF_8));
      assertTrue(hash != 0);
      assertNull(seen.put(hash, i));
    }
  }

  @Test
  void doesNotUseAFileOfAnotherTopicOrOfALongerLog() throws IOException {
    IdIndex index = open("cluster/one", 50, 50);
    index.put(5, 6, new Place(1, 7), T0);
    index.cover(1, 8);
    index.save();

    assertEquals(new Place(1, 7), open("cluster/one", 50, 8).find(5, 6));
    assertEquals(new Place(1, 7), open("cluster/one", 50, 8, 3).find(5, 6), "more partitions");
    assertNull(open("cluster/two", 50, 50).find(5, 6));
    assertNull(open("cluster/one", 50, 7).find(5, 6));
    assertNull(open("cluster/one", 50).find(5, 6));
  }

  @Test
  void doesNotUseADamagedFile() throws IOException {
    IdIndex index = open("topic", END);
    index.put(5, 6, new Place(1, 7), T0);
    index.save();
    byte[] whole = Files.readAllBytes(folder.resolve("ids"));
    for (int length : new int[] {0, 10, 16_383, 16_384, whole.length - 1}) {
      Files.write(folder.resolve("ids"), java.util.Arrays.copyOf(whole, length));
      assertNull(open("topic", END).find(5, 6), "cut to " + length);
    }
    Files.write(folder.resolve("ids"), whole);
    assertEquals(new Place(1, 7), open("topic", END).find(5, 6));
  }

  @Test
  void leavesNoDraftBehindAndWritesOnlyWhenItPays() throws IOException {
    IdIndex index = open("topic", END);
    index.put(5, 6, new Place(1, 7), T0);
    index.saveIfWorthwhile();
    assertFalse(Files.exists(folder.resolve("ids")));
    for (int i = 0; i < 10_000; i++) {
      index.put(IdTable.hash(new byte[] {(byte) i, (byte) (i >> 8)}), i, new Place(0, i), T0);
    }
    index.saveIfWorthwhile();
    try (var files = Files.list(folder)) {
      assertEquals(List.of(folder.resolve("ids")), files.toList());
    }
  }
}
