package sealspan.assembly;

/** A criteria table that cannot be read; the message names line and column, and what to do. */
public final class CriteriaException extends IllegalArgumentException {
  CriteriaException(String message) {
    super(message);
  }
}
