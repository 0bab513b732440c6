package sealspan.avro;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.apache.avro.io.Decoder;
import org.apache.avro.util.Utf8;

/**
 * Reads texts, and gives those that came a short while ago again as the same object. Codes, ids of
 * assemblies and of events stand in row after row: texts were four fifths of the memory of unpacked
 * rows, and most of them copies.
 *
 * <p>Threads share what is remembered without any order: each entry is whole, and whether a text is
 * found there changes nothing but memory.
 */
final class Texts {
  /**
   * So few that they stay near the processor: of eight times as many reading took a tenth longer.
   */
  private static final int REMEMBERED = 1 << 10;

  private static final int LONGEST = 64;

  private static final VarHandle EIGHT =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  /** Odd, half of its bits set: 2 to the 64 by the golden ratio. */
  private static final long SPREAD = 0x9E3779B97F4A7C15L;

  /** A text and its bytes in UTF-8, which are quicker to compare than its characters. */
  private record Known(byte[] bytes, String text) {}

  private static final Known[] RECENT = new Known[REMEMBERED];

  private Texts() {}

  static String read(Decoder in) throws IOException {
    Utf8 utf8 = in.readString(null);
    int length = utf8.getByteLength();
    if (length > LONGEST) {
      return utf8.toString();
    }
    byte[] bytes = utf8.getBytes();
    int place = hash(bytes) & REMEMBERED - 1;
    Known recent = RECENT[place];
    if (recent != null && Arrays.equals(recent.bytes, bytes)) {
      return recent.text;
    }
    String text = utf8.toString();
    RECENT[place] = new Known(bytes, text);
    return text;
  }

  /** A hash that takes eight bytes at a time: texts are most of what is read. */
  private static int hash(byte[] bytes) {
    long hash = bytes.length;
    int i = 0;
    for (; i + Long.BYTES <= bytes.length; i += Long.BYTES) {
      hash = Long.rotateLeft((hash ^ (long) EIGHT.get(bytes, i)) * SPREAD, 29);
    }
    for (; i < bytes.length; i++) {
      hash = Long.rotateLeft((hash ^ bytes[i]) * SPREAD, 29);
    }
    return (int) (hash ^ hash >>> 32);
  }
}
