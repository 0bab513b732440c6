package sealspan.ingest.log;

/**
 * Trouble with the log that a person has to act on. The message says what is wrong, where, and what
 * to do, and is fit to be shown as it stands.
 */
public final class LogException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public LogException(String message) {
    super(message);
  }

  public LogException(String message, Throwable cause) {
    super(message, cause);
  }
}
