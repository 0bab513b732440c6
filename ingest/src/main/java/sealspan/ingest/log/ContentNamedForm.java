package sealspan.ingest.log;

import java.time.Instant;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;

/**
 * Entries whose id follows from their content, so that there is no conflict among them: the same id
 * is the same entry.
 */
abstract class ContentNamedForm<T> implements EntryForm<T> {
  private static final byte[] NOTHING = {};

  @Override
  public long digest(T named, byte[] content) {
    return ContentId.leading(id(named));
  }

  /** The id tells the content. */
  @Override
  public byte[] content(T named) {
    return NOTHING;
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
  public String key(T named) {
    return id(named);
  }

  @Override
  public void headers(T named, byte[] content, BiConsumer<String, String> header) {}

  @Override
  public void headersOf(Instant recordedAt, BiConsumer<String, String> header) {}
}
