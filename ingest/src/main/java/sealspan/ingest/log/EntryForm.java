package sealspan.ingest.log;

import java.time.Instant;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * How the entries of one topic are told apart and written.
 *
 * @param <T> the kind of entries
 */
interface EntryForm<T> {
  String topic();

  /** Partitions of the topic when it has to be made. */
  int partitions();

  /** An entry as it is to be stored: id and recorded time set. */
  T stored(T entry, Instant recordedAt);

  /** The id by which entries are the same. */
  String id(T stored);

  /**
   * First eight bytes of the SHA-256 of the content.
   *
   * @param value the entry as it is written
   */
  long digest(T stored, byte[] value);

  /** Entries with one key stay in order. */
  String key(T stored);

  byte[] value(T stored);

  Map<String, String> headers(T stored, byte[] value, Instant recordedAt);

  /** Tells this version's writing apart from one whose digests would differ. */
  String digestVersion();

  /** Reads what tells an entry apart, without reading more of it than has to be. */
  Mark mark(byte[] value, UnaryOperator<String> header);

  /** What tells an entry apart. */
  record Mark(String id, long digest) {}

  /**
   * Reads an entry back.
   *
   * @throws RuntimeException when the bytes are damaged or of an unknown schema
   */
  T read(byte[] value, UnaryOperator<String> header);
}
