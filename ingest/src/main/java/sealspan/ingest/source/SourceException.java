package sealspan.ingest.source;

/** A file that cannot be read at all; the message says why and what to do. */
public final class SourceException extends Exception {
  private static final long serialVersionUID = 1;

  SourceException(String message) {
    super(message);
  }

  SourceException(String message, Throwable cause) {
    super(message, cause);
  }
}
