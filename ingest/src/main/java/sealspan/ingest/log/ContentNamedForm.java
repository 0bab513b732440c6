package sealspan.ingest.log;

import java.time.Instant;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Entries whose id follows from their content, so that there is no conflict among them: the same id
 * is the same entry.
 */
abstract class ContentNamedForm<T> implements EntryForm<T> {
  @Override
  public long digest(T stored, byte[] value) {
    return ContentId.leading(id(stored));
  }

  @Override
  public String digestVersion() {
    return "1";
  }

  @Override
  public Mark mark(byte[] value, UnaryOperator<String> header) {
    String id = id(read(value, header));
    return new Mark(id, ContentId.leading(id));
  }

  @Override
  public String key(T stored) {
    return id(stored);
  }

  @Override
  public Map<String, String> headers(T stored, byte[] value, Instant recordedAt) {
    return Map.of();
  }
}
