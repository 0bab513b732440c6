package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * The pairs of keys that were seen before, each kept as 127 bits of its SHA-256: 16 bytes where the
 * keys themselves would be hundreds, and with billions of pairs no two are taken for one. So many
 * fit and no more; those that come later stay new for ever.
 */
final class SeenPairs {
  private static final int FIRST_PLACES = 1 << 10;

  private final MessageDigest sha256;
  private final int most;

  /** Two numbers a place; both are zero where it is free. At most half of the places are taken. */
  private long[] places = new long[2 * FIRST_PLACES];

  private int size;

  /**
   * Nothing is seen yet.
   *
   * @param most the most pairs that are kept
   */
  SeenPairs(int most) {
    this.most = most;
    try {
      sha256 = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }

  /** Takes note of a pair, and tells whether it was new; keys hold no zero character. */
  boolean isNew(String one, String other) {
    sha256.update(one.getBytes(UTF_8));
    sha256.update((byte) 0);
    ByteBuffer digest = ByteBuffer.wrap(sha256.digest(other.getBytes(UTF_8)));
    long high = digest.getLong();
    long low = digest.getLong() | 1; // never both zero
    int place = place(high, low);
    if (places[place + 1] != 0) {
      return false;
    }
    if (size < most) {
      put(place, high, low);
    }
    return true;
  }

  private void put(int place, long high, long low) {
    places[place] = high;
    places[place + 1] = low;
    size++;
    if (4 * size >= places.length) {
      long[] before = places;
      places = new long[2 * before.length];
      for (int i = 0; i < before.length; i += 2) {
        if (before[i + 1] != 0) {
          int to = place(before[i], before[i + 1]);
          places[to] = before[i];
          places[to + 1] = before[i + 1];
        }
      }
    }
  }

  /** Where a pair lies, or would lie: the first such place from the one that its bits name. */
  private int place(long high, long low) {
    int mask = places.length - 1;
    int place = (int) high << 1 & mask;
    while (places[place + 1] != 0 && (places[place] != high || places[place + 1] != low)) {
      place = place + 2 & mask;
    }
    return place;
  }
}
