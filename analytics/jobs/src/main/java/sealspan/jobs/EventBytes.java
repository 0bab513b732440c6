package sealspan.jobs;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import sealspan.avro.EventCodec;
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

  private EventBytes() {}

  /**
   * Packs an event.
   *
   * @param content what {@link EventCodec} reads as the event, as the log has it
   */
  static byte[] pack(LoggedEvent event, byte[] content) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(content.length + 80);
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeUTF(event.id());
      out.writeUTF(event.source());
      write(out, event.reportedAt());
      write(out, event.reportedOrigin());
      write(out, event.recordedAt());
      write(out, event.arrival());
      out.write(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  static LoggedEvent unpack(byte[] bytes) {
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      String id = in.readUTF();
      String source = in.readUTF();
      Instant reportedAt = readInstant(in);
      ReportedOrigin origin = readConstant(in, ORIGINS);
      Instant recordedAt = readInstant(in);
      Arrival arrival = readConstant(in, ARRIVALS);
      return new LoggedEvent(
          id,
          source,
          EventCodec.decode(in.readAllBytes()),
          reportedAt,
          origin,
          recordedAt,
          arrival);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(DataOutputStream out, Instant at) throws IOException {
    out.writeBoolean(at != null);
    if (at != null) {
      out.writeLong(at.getEpochSecond());
      out.writeInt(at.getNano());
    }
  }

  private static Instant readInstant(DataInputStream in) throws IOException {
    return in.readBoolean() ? Instant.ofEpochSecond(in.readLong(), in.readInt()) : null;
  }

  private static void write(DataOutputStream out, Enum<?> constant) throws IOException {
    out.writeByte(constant == null ? -1 : constant.ordinal());
  }

  private static <E> E readConstant(DataInputStream in, E[] constants) throws IOException {
    int ordinal = in.readByte();
    return ordinal < 0 ? null : constants[ordinal];
  }
}
