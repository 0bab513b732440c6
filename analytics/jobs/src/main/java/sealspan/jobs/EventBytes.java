package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.time.Instant;
import sealspan.avro.EventCodec;
import sealspan.avro.SingleObjectCodec;
import sealspan.event.AssemblyEvent;
import sealspan.event.LoggedEvent;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;

/**
 * An event with its envelope as compact bytes, for the wires and the state of the jobs. The form is
 * not kept over versions of the program: state is disposable. Equal records of the log give equal
 * bytes.
 */
final class EventBytes {
  private static final ReportedOrigin[] ORIGINS = ReportedOrigin.values();
  private static final Arrival[] ARRIVALS = Arrival.values();

  /** Two lengths, two instants and two constants. */
  private static final int FIXED_BYTES = 2 * 4 + 2 * 12 + 2;

  /** In place of the second of an instant that is not there. */
  private static final long NONE = Long.MIN_VALUE;

  private EventBytes() {}

  /**
   * Packs an event.
   *
   * @param event what counts of it is the envelope
   * @param content what {@link EventCodec} reads as the event, as the log has it
   */
  static byte[] pack(LoggedEvent event, byte[] content) {
    byte[] id = event.id().getBytes(UTF_8);
    byte[] source = event.source().getBytes(UTF_8);
    ByteBuffer out = ByteBuffer.allocate(FIXED_BYTES + id.length + source.length + content.length);
    out.putInt(id.length).put(id).putInt(source.length).put(source);
    put(out, event.reportedAt());
    put(out, event.reportedOrigin());
    put(out, event.recordedAt());
    put(out, event.arrival());
    return out.put(content).array();
  }

  /**
   * Reads an event back.
   *
   * @throws JobException when the content is damaged
   */
  static LoggedEvent unpack(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    String id = text(in);
    String source = text(in);
    Instant reportedAt = instant(in);
    ReportedOrigin origin = constant(in, ORIGINS);
    Instant recordedAt = instant(in);
    Arrival arrival = constant(in, ARRIVALS);
    AssemblyEvent event = content(id, bytes, in.position());
    return new LoggedEvent(id, source, event, reportedAt, origin, recordedAt, arrival);
  }

  private static AssemblyEvent content(String id, byte[] bytes, int from) {
    try {
      return EventCodec.decode(bytes, from);
    } catch (SingleObjectCodec.DamagedBytes e) {
      throw new JobException(
          "The event %s in the log cannot be read. %s".formatted(id, e.getMessage()), e);
    }
  }

  private static String text(ByteBuffer in) {
    int length = in.getInt();
    String text = new String(in.array(), in.position(), length, UTF_8);
    in.position(in.position() + length);
    return text;
  }

  private static void put(ByteBuffer out, Instant at) {
    out.putLong(at == null ? NONE : at.getEpochSecond()).putInt(at == null ? 0 : at.getNano());
  }

  private static Instant instant(ByteBuffer in) {
    long second = in.getLong();
    int nano = in.getInt();
    return second == NONE ? null : Instant.ofEpochSecond(second, nano);
  }

  private static void put(ByteBuffer out, Enum<?> constant) {
    out.put((byte) (constant == null ? -1 : constant.ordinal()));
  }

  private static <E> E constant(ByteBuffer in, E[] constants) {
    int ordinal = in.get();
    return ordinal < 0 ? null : constants[ordinal];
  }
}
