package sealspan.ingest.log;

import java.time.Instant;
import java.util.function.BiConsumer;
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

  /** An entry as it was handed in, with its id and within the bounds of a record. */
  T named(T entry);

  /** The id by which entries are the same. */
  String id(T named);

  /** What of the content can be written before the recorded time is known. */
  byte[] content(T named);

  /** First eight bytes of the SHA-256 of the content. */
  long digest(T named, byte[] content);

  /** Entries with one key stay in order. */
  String key(T named);

  /** Gives out, name and text, the headers of a record that do not wait for the recorded time. */
  void headers(T named, byte[] content, BiConsumer<String, String> header);

  /** Gives out the others. */
  void headersOf(Instant recordedAt, BiConsumer<String, String> header);

  /** An entry as it is stored: with the recorded time. */
  T stored(T named, Instant recordedAt);

  /** An entry as it is written. */
  byte[] value(T named, byte[] content, Instant recordedAt);

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
