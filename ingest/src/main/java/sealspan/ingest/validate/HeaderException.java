package sealspan.ingest.validate;

/** A header that no row can be read by; the message says why and what to do. */
public final class HeaderException extends Exception {
  private static final long serialVersionUID = 1;

  HeaderException(String message) {
    super(message);
  }
}
