package sealspan.answers.freesql;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import sealspan.answers.AnswersException;

/** Input of which no more than a number of megabytes is taken; then {@link AnswersException}. */
final class CountedInput extends FilterInputStream {
  private final int megabytes;
  private long read;

  CountedInput(InputStream in, int megabytes) {
    super(in);
    this.megabytes = megabytes;
  }

  @Override
  public int read() throws IOException {
    int b = super.read();
    count(b < 0 ? 0 : 1);
    return b;
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    int n = super.read(bytes, from, length);
    count(Math.max(0, n));
    return n;
  }

  private void count(int n) {
    read += n;
    if (read > (long) megabytes << 20) {
      throw new AnswersException(
          "The query was stopped: its result has more than "
              + megabytes
              + " MB. Ask for fewer rows or columns.");
    }
  }
}
