package sealspan.avro;

import java.io.IOException;
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
  private static final int REMEMBERED = 1 << 13;
  private static final int LONGEST = 64;

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
    int hash = 0;
    for (byte b : bytes) {
      hash = 31 * hash + b;
    }
    int place = (hash ^ hash >>> 13) & REMEMBERED - 1;
    Known recent = RECENT[place];
    if (recent != null && Arrays.equals(recent.bytes, bytes)) {
      return recent.text;
    }
    String text = utf8.toString();
    RECENT[place] = new Known(bytes, text);
    return text;
  }
}
