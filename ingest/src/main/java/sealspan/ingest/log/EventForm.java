package sealspan.ingest.log;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Instant;
import java.util.Map;
import java.util.function.UnaryOperator;
import sealspan.avro.EventCodec;
import sealspan.event.EventHeaders;
import sealspan.event.LoggedEvent;
import sealspan.event.Topics;

/** Events: keyed by subject, envelope in the headers. */
final class EventForm implements EntryForm<LoggedEvent> {
  /**
   * Where the two marker bytes of Avro's single-object encoding are followed by the fingerprint.
   */
  private static final int FINGERPRINT_AT = 2;

  @Override
  public String topic() {
    return Topics.EVENTS;
  }

  @Override
  public int partitions() {
    return 4;
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
  public long digest(LoggedEvent e) {
    return ByteBuffer.wrap(EventCodec.digest(e.event())).getLong();
  }

  @Override
  public String key(LoggedEvent e) {
    return e.event().subject().key();
  }

  @Override
  public byte[] value(LoggedEvent e) {
    return EventCodec.encode(e.event());
  }

  @Override
  public Map<String, String> headers(LoggedEvent e, byte[] value, Instant recordedAt) {
    long fingerprint =
        ByteBuffer.wrap(value).order(ByteOrder.LITTLE_ENDIAN).getLong(FINGERPRINT_AT);
    return EventHeaders.of(e, fingerprint);
  }

  @Override
  public LoggedEvent read(byte[] value, UnaryOperator<String> header) {
    return EventHeaders.read(header, EventCodec.decode(value));
  }
}
