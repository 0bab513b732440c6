package sealspan.app;

/**
 * Something a person has to act on: what is wrong, where, and what to do. The message is shown as
 * it stands.
 */
public final class Problem extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public Problem(String message) {
    super(message);
  }

  public Problem(String message, Throwable cause) {
    super(message, cause);
  }
}
