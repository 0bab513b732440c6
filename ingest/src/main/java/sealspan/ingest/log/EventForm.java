package sealspan.ingest.log;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import sealspan.avro.EventCodec;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;

/** Events: keyed by subject, envelope in the headers. */
final class EventForm implements EntryForm<LoggedEvent> {
  /**
   * Where the two marker bytes of Avro's single-object encoding are followed by the fingerprint.
   */
  private static final int FINGERPRINT_AT = 2;

  /** The schemas that this version writes, each with its event's name, by fingerprint. */
  private static final Map<Long, String> WRITTEN = written();

  @Override
  public String topic() {
    return Topics.EVENTS;
  }

  @Override
  public int partitions() {
    return 4;
  }

  @Override
  public LoggedEvent named(LoggedEvent e) {
    return e;
  }

  @Override
  public LoggedEvent stored(LoggedEvent e, Instant recordedAt) {
    return e.recorded(recordedAt);
  }

  @Override
  public String id(LoggedEvent e) {
    return e.id();
  }

  @Override
  public long digest(LoggedEvent e, byte[] content) {
    return ContentId.leading(content);
  }

  /** The digest is one of the bytes as this version writes them. */
  @Override
  public String digestVersion() {
    return ContentId.of(new TreeSet<>(WRITTEN.values()).toString());
  }

  @Override
  public Mark mark(byte[] value, UnaryOperator<String> header) {
    String id = header.apply("ce_id");
    if (id == null || !asWrittenNow(value)) {
      LoggedEvent event = read(value, header);
      return new Mark(event.id(), ContentId.leading(content(event)));
    }
    return new Mark(id, ContentId.leading(value));
  }

  /** A correction holds another event, which may be of an older schema than itself. */
  private static boolean asWrittenNow(byte[] value) {
    return value != null
        && value.length >= FINGERPRINT_AT + Long.BYTES
        && WRITTEN.containsKey(fingerprint(value))
        && !WRITTEN.get(fingerprint(value)).startsWith(EventCorrected.class.getSimpleName());
  }

  private static long fingerprint(byte[] value) {
    return ByteBuffer.wrap(value).order(ByteOrder.LITTLE_ENDIAN).getLong(FINGERPRINT_AT);
  }

  private static Map<Long, String> written() {
    Map<Long, String> names = new HashMap<>();
    for (Class<?> c : AssemblyEvent.class.getPermittedSubclasses()) {
      long fingerprint = EventCodec.fingerprintOf(c.asSubclass(AssemblyEvent.class));
      names.put(fingerprint, c.getSimpleName() + " " + Long.toHexString(fingerprint));
    }
    return names;
  }

  @Override
  public String key(LoggedEvent e) {
    return e.event().subject().key();
  }

  @Override
  public byte[] content(LoggedEvent e) {
    return EventCodec.encode(e.event());
  }

  /** All but the content goes to the headers. */
  @Override
  public byte[] value(LoggedEvent e, byte[] content, Instant recordedAt) {
    return content;
  }

  @Override
  public void headers(LoggedEvent e, byte[] content, BiConsumer<String, String> header) {
    EventHeaders.given(e, fingerprint(content), header);
  }

  @Override
  public void headersOf(Instant recordedAt, BiConsumer<String, String> header) {
    EventHeaders.recorded(recordedAt, header);
  }

  @Override
  public LoggedEvent read(byte[] value, UnaryOperator<String> header) {
    return EventHeaders.read(header, EventCodec.decode(value));
  }
}
