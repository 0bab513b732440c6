package sealspan.answers;

/** Something that a person has to know or do; the message says what, where, and what to do. */
public final class AnswersException extends RuntimeException {
  /** A refusal or failure in words. */
  public AnswersException(String message) {
    super(message);
  }

  /** A failure in words, with what caused it. */
  public AnswersException(String message, Throwable cause) {
    super(message, cause);
  }
}
