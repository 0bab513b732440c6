package sealspan.jobs;

/** A job that cannot run; the message says what is wrong, for people. */
public final class JobException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  JobException(String message) {
    super(message);
  }

  JobException(String message, Throwable cause) {
    super(message, cause);
  }
}
