package sealspan.ingest.source;

import java.io.IOException;
import java.util.List;

/** A file opened as a stream of rows, each read once and kept nowhere. */
public interface DraftSource extends AutoCloseable {
  /** The next row; null after the last. */
  Item next() throws IOException;

  /** Name of the file, as messages call it. */
  String name();

  /** How the file was understood, in words: separator, encoding, columns that were not used. */
  List<String> notes();

  /** Empty lines passed so far. */
  long emptyLines();

  /** Bytes read so far. */
  long readBytes();

  /** Bytes of the whole file. */
  long totalBytes();

  @Override
  void close() throws IOException;
}
