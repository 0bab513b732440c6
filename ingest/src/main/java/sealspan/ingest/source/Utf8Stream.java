package sealspan.ingest.source;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Bytes of a wide encoding as UTF-8, so that a line end is one byte. */
final class Utf8Stream extends InputStream {
  private final Reader reader;
  private final char[] chars = new char[1 << 14];
  private int kept;
  private byte[] bytes = {};
  private int next;

  Utf8Stream(InputStream in, Charset charset) {
    this.reader = new InputStreamReader(in, charset);
  }

  private boolean fill() throws IOException {
    while (next == bytes.length) {
      int read = reader.read(chars, kept, chars.length - kept);
      if (read < 0 && kept == 0) {
        return false;
      }
      int length = kept + Math.max(0, read);
      // Half a surrogate pair waits for its other half.
      kept = read >= 0 && Character.isHighSurrogate(chars[length - 1]) ? 1 : 0;
      bytes = new String(chars, 0, length - kept).getBytes(StandardCharsets.UTF_8);
      next = 0;
      if (kept == 1) {
        chars[0] = chars[length - 1];
      }
    }
    return true;
  }

  @Override
  public int read() throws IOException {
    return fill() ? bytes[next++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (!fill()) {
      return -1;
    }
    int taken = Math.min(length, bytes.length - next);
    System.arraycopy(bytes, next, into, from, taken);
    next += taken;
    return taken;
  }

  @Override
  public void close() throws IOException {
    reader.close();
  }
}
