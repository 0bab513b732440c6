package sealspan.avro;

import java.io.IOException;
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

  private static final String[] RECENT = new String[REMEMBERED];
  private static final ThreadLocal<Utf8> SCRATCH = new ThreadLocal<>();

  private Texts() {}

  static String read(Decoder in) throws IOException {
    Utf8 utf8 = in.readString(SCRATCH.get());
    int length = utf8.getByteLength();
    if (length > LONGEST) {
      SCRATCH.remove(); // else each thread would keep the longest text that it ever read
      return utf8.toString();
    }
    SCRATCH.set(utf8);
    byte[] bytes = utf8.getBytes();
    int hash = 0;
    for (int i = 0; i < length; i++) {
      hash = 31 * hash + bytes[i];
    }
    int place = (hash ^ hash >>> 13) & REMEMBERED - 1;
    String recent = RECENT[place];
    if (recent != null && same(recent, bytes, length)) {
      return recent;
    }
    String text = utf8.toString();
    RECENT[place] = text;
    return text;
  }

  /** Whether an ASCII text has these bytes; any other text is never found. */
  private static boolean same(String text, byte[] bytes, int length) {
    if (text.length() != length) {
      return false;
    }
    for (int i = 0; i < length; i++) {
      if (text.charAt(i) != bytes[i] || bytes[i] < 0) {
        return false;
      }
    }
    return true;
  }
}
