package sealspan.ingest.log;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.kafka.common.header.Header;
import org.apache.kafka.common.header.Headers;
import org.apache.kafka.common.header.internals.RecordHeader;
import org.apache.kafka.common.header.internals.RecordHeaders;
import sealspan.event.EventHeaders;

/**
 * An entry ready to be looked up and sent.
 *
 * @param named with its id
 * @param id by which entries are the same
 * @param hash of the id
 * @param digest of the content
 * @param key of its record
 * @param content what of it is written already
 * @param headers those that do not wait for the recorded time
 */
record Prepared<T>(
    T named, String id, long hash, long digest, byte[] key, byte[] content, Headers headers)
    implements AppendLog.Ready<T> {
  /** Headers that many entries have alike, by name and text. */
  private static final Map<String, Map<String, Header>> SHARED = new ConcurrentHashMap<>();

  static <T> Prepared<T> of(T entry, EntryForm<T> form) {
    T named = form.named(entry);
    byte[] content = form.content(named);
    String id = form.id(named);
    byte[] key = form.key(named).getBytes(StandardCharsets.UTF_8);
    Headers headers = new RecordHeaders();
    form.headers(named, content, (name, text) -> headers.add(header(name, text)));
    long digest = form.digest(named, content);
    return new Prepared<>(named, id, hash(id), digest, key, content, headers);
  }

  static Header header(String name, String text) {
    if (!EventHeaders.SHARED.contains(name)) {
      return made(name, text);
    }
    Map<String, Header> ofName = SHARED.computeIfAbsent(name, n -> new ConcurrentHashMap<>());
    Header shared =
        ofName.get(text); // No lock; by computeIfAbsent alone an import took a twentieth more.
    return shared == null ? ofName.computeIfAbsent(text, t -> made(name, t)) : shared;
  }

  private static Header made(String name, String text) {
    return new RecordHeader(name, text.getBytes(StandardCharsets.UTF_8));
  }

  static long hash(String id) {
    return IdTable.hash(id.getBytes(StandardCharsets.UTF_8));
  }
}
