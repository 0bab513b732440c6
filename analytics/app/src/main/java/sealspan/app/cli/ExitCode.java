package sealspan.app.cli;

/** What a command tells the shell. */
public final class ExitCode {
  public static final int DONE = 0;

  /** It failed; a message says why. */
  public static final int FAILED = 1;

  /** It was called in a way it does not understand. */
  public static final int USAGE = 2;

  /** Done in part: rows were rejected. Of {@code status}: no engine runs. */
  public static final int IN_PART = 3;

  private ExitCode() {}
}
