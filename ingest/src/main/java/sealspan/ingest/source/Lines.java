package sealspan.ingest.source;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;

/** The lines of a text, ended by LF, CRLF or CR, with a cap on the length of each. */
final class Lines {
  /** Longest line that is kept, bytes. */
  static final int LONGEST = 1 << 20;

  private static final Charset FALLBACK = Charset.forName("windows-1252");

  /** What is wrong with a line as text. */
  enum State {
    SOUND,
    /** Its bytes are no text in the encoding; the text is a reading as windows-1252. */
    NOT_IN_ENCODING,
    /** It is longer than {@link #LONGEST}; the text is its beginning. */
    TOO_LONG
  }

  /** A line without its end, and its number from 1. */
  record Line(long number, String text, State state) {}

  private final InputStream in;
  private final Charset charset;
  private final byte[] buffer = new byte[1 << 16];
  private final Deque<Line> back = new ArrayDeque<>();
  private int at;
  private int end;
  private long number;
  private boolean afterCarriageReturn;

  Lines(InputStream in, Charset charset) {
    this.in = in;
    this.charset = charset;
  }

  /** The next line; null after the last. */
  Line next() throws IOException {
    if (!back.isEmpty()) {
      return back.pop();
    }
    ByteArrayOutputStream long_ = null;
    boolean tooLong = false;
    while (true) {
      if (at == end && !fill()) {
        return long_ == null ? null : line(long_.toByteArray(), 0, long_.size(), tooLong);
      }
      if (afterCarriageReturn) {
        afterCarriageReturn = false;
        if (buffer[at] == '\n') {
          at++;
          continue;
        }
      }
      int stop = lineEnd();
      int length = stop - at;
      if (long_ == null && stop < end) {
        Line line = line(buffer, at, length, false);
        pass(stop);
        return line;
      }
      long_ = long_ == null ? new ByteArrayOutputStream() : long_;
      int room = LONGEST - long_.size();
      tooLong |= length > room;
      long_.write(buffer, at, Math.min(length, room));
      if (stop < end) {
        pass(stop);
        return line(long_.toByteArray(), 0, long_.size(), tooLong);
      }
      at = end;
    }
  }

  private void pass(int stop) {
    afterCarriageReturn = buffer[stop] == '\r';
    at = stop + 1;
  }

  private boolean fill() throws IOException {
    at = 0;
    end = Math.max(0, in.read(buffer, 0, buffer.length));
    return end > 0;
  }

  private int lineEnd() {
    for (int i = at; i < end; i++) {
      byte b = buffer[i];
      if (b == '\n' || b == '\r') {
        return i;
      }
    }
    return end;
  }

  private Line line(byte[] bytes, int from, int length, boolean tooLong) {
    number++;
    if (tooLong) {
      return new Line(number, new String(bytes, from, 200, charset), State.TOO_LONG);
    }
    String text = new String(bytes, from, length, charset);
    if (text.indexOf('\uFFFD') >= 0 && !isSound(bytes, from, length)) {
      return new Line(number, new String(bytes, from, length, FALLBACK), State.NOT_IN_ENCODING);
    }
    return new Line(number, text, State.SOUND);
  }

  private boolean isSound(byte[] bytes, int from, int length) {
    if (!charset.equals(StandardCharsets.UTF_8)) {
      return false;
    }
    try {
      charset
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(bytes, from, length));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  /** Puts lines back, so that they come next in their order. */
  void putBack(List<Line> lines) {
    for (Iterator<Line> last = new ArrayDeque<>(lines).descendingIterator(); last.hasNext(); ) {
      back.push(last.next());
    }
  }
}
