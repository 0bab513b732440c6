package sealspan.app.cli;

import java.io.PrintStream;
import sealspan.app.engine.EngineDoor;
import sealspan.app.engine.Letters.Wish;

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

  /** Asks something of the engine, shows meanwhile how far it is, and gives its answer. */
  static String ask(EngineDoor door, Wish wish) {
    try (StatusLine line = new StatusLine()) {
      return door.ask(wish, line::show);
    }
  }

  /** Shows a text in place of the last one. */
  void show(String text) {
    if (out != null) {
      out.print(BACK + text);
      out.flush();
      shown = true;
    }
  }

  /**
   * Shows how far the answers are.
   *
   * @param done events in them
   * @param all events that shall be
   * @param meanwhile how far the engine is with the rest; empty where it does not say
   */
  void showAnswers(long done, long all, String meanwhile) {
    show(meanwhile.isEmpty() ? "in the answers: " + done + " of " + all + " events" : meanwhile);
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
