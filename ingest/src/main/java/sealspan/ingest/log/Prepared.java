package sealspan.ingest.log;

import java.nio.charset.StandardCharsets;
import java.time.Instant;

/**
 * An entry ready to be looked up and sent.
 *
 * @param stored with id and recorded time set
 * @param id by which entries are the same
 * @param hash of the id
 * @param digest of the content
 * @param value as it is written
 */
record Prepared<T>(T stored, String id, long hash, long digest, byte[] value) {
  static <T> Prepared<T> of(T entry, EntryForm<T> form, Instant recordedAt) {
    T stored = form.stored(entry, recordedAt);
    byte[] value = form.value(stored);
    String id = form.id(stored);
    return new Prepared<>(stored, id, hash(id), form.digest(stored, value), value);
  }

  static long hash(String id) {
    return IdTable.hash(id.getBytes(StandardCharsets.UTF_8));
  }
}
