package sealspan.app.cli;

import java.io.PrintStream;

/**
 * One line at the bottom of a terminal that tells how far something is. Where the error stream is
 * no terminal, nothing is shown.
 */
final class StatusLine implements AutoCloseable {
  private static final String BACK = "\r\u001b[K";

  private final PrintStream out;
  private boolean shown;

  StatusLine() {
    this.out = System.console() == null || System.getenv("TERM") == null ? null : System.err;
  }

  /** Shows a text in place of the last one. */
  void show(String text) {
    if (out != null) {
      out.print(BACK + text);
      out.flush();
      shown = true;
    }
  }

  /** Takes the line away. */
  @Override
  public void close() {
    if (shown) {
      out.print(BACK);
      out.flush();
      shown = false;
    }
  }
}
