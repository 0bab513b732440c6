package sealspan.avro;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.apache.avro.Schema;
import org.apache.avro.SchemaNormalization;
import org.apache.avro.io.BinaryEncoder;
import org.apache.avro.io.Decoder;
import org.apache.avro.io.DecoderFactory;
import org.apache.avro.io.EncoderFactory;

/**
 * Avro single-object encoding (Avro 1.12 specification) of a family of records: two marker bytes C3
 * 01, the little-endian CRC-64-AVRO fingerprint of the writer's schema, then the body.
 */
public final class SingleObjectCodec {
  private static final int HEADER = 10;

  /** A buffer for a usual event: the default is larger than most of what is written. */
  private static final EncoderFactory ENCODERS = new EncoderFactory().configureBufferSize(512);

  static {
    ReadLimits.hold();
  }

  /** What a thread writes on, again and again. */
  private static final class Sheet {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
    private BinaryEncoder out;
    private boolean inUse;

    byte[] write(Known known, Object record) throws IOException {
      out = ENCODERS.binaryEncoder(bytes, out); // Brings out what broken-off writing left in it.
      bytes.reset();
      bytes.writeBytes(known.opening());
      known.shape().write(record, out);
      out.flush();
      return bytes.toByteArray();
    }
  }

  private static final ThreadLocal<Sheet> SHEETS = ThreadLocal.withInitial(Sheet::new);

  private record Known(
      RecordShape shape, Glance glance, Schema writer, byte[] opening, boolean current) {}

  private final Map<Class<?>, Known> byClass = new HashMap<>();
  private final Map<Long, Known> byFingerprint = new HashMap<>();
  private final Set<String> glanced;

  /**
   * A codec of some record classes.
   *
   * @param types the classes, each in its present form
   * @param past schemas that wrote bytes which must still be read; matched to a class by name
   * @param glanced names of the fields that {@link #glance} reads
   */
  public SingleObjectCodec(
      Collection<? extends Class<?>> types, Collection<Schema> past, Set<String> glanced) {
    this.glanced = glanced;
    Map<String, RecordShape> byName = new HashMap<>();
    for (Class<?> type : types) {
      RecordShape shape = RecordShape.of(type);
      byName.put(shape.schema().getFullName(), shape);
      Known known = know(shape, shape.schema(), true);
      byClass.put(type, known);
    }
    for (Schema writer : past) {
      RecordShape shape = byName.get(writer.getFullName());
      if (shape == null) {
        throw new IllegalArgumentException(
            "No record reads the past schema " + writer.getFullName());
      }
      if (!byFingerprint.containsKey(SchemaNormalization.parsingFingerprint64(writer))) {
        know(shape, writer, false);
      }
    }
  }

  private Known know(RecordShape shape, Schema writer, boolean current) {
    long fingerprint = SchemaNormalization.parsingFingerprint64(writer);
    Known known =
        new Known(shape, new Glance(shape, glanced), writer, opening(fingerprint), current);
    byFingerprint.put(fingerprint, known);
    return known;
  }

  private static byte[] opening(long fingerprint) {
    return ByteBuffer.allocate(HEADER)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put((byte) 0xC3)
        .put((byte) 0x01)
        .putLong(fingerprint)
        .array();
  }

  /** The schema that a class is written with. */
  public Schema schemaOf(Class<?> type) {
    return byClass.get(type).writer();
  }

  /** The bytes of a record. */
  public byte[] encode(Object record) {
    Known known = byClass.get(record.getClass());
    if (known == null) {
      throw new IllegalArgumentException("Not of this codec: " + record.getClass().getName());
    }
    Sheet own = SHEETS.get();
    Sheet sheet = own.inUse ? new Sheet() : own; // A record may hold another of the family.
    sheet.inUse = true;
    try {
      return sheet.write(known, record);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      sheet.inUse = false;
    }
  }

  /**
   * Reads a record back; throws {@link DamagedBytes} where the bytes are not one of this family.
   */
  public Object decode(byte[] bytes) {
    return decode(bytes, 0);
  }

  /** The same, of bytes that begin at a place and go to the end. */
  public Object decode(byte[] bytes, int from) {
    return read(bytes, from, false);
  }

  /**
   * Reads a few fields of a record, the others are as if they had not been recorded: for whoever
   * looks at very many and needs little of each. Throws {@link DamagedBytes} where the bytes are
   * none of this family as far as they were read.
   */
  public Object glance(byte[] bytes) {
    return read(bytes, 0, true);
  }

  /**
   * The values of a record from the first on, in the order and of the types of its present schema.
   * Throws {@link DamagedBytes} where the bytes are not written with it.
   */
  Decoder values(byte[] bytes) {
    Known known = writerOf(bytes, 0);
    if (!known.current()) {
      throw new DamagedBytes(
          "The bytes were written as an earlier " + known.writer().getName() + ".", null);
    }
    return body(bytes, 0);
  }

  private static Decoder body(byte[] bytes, int from) {
    int body = from + HEADER;
    return DecoderFactory.get().binaryDecoder(bytes, body, bytes.length - body, null);
  }

  private Object read(byte[] bytes, int from, boolean glance) {
    Known known = writerOf(bytes, from);
    try {
      Decoder in = body(bytes, from);
      if (!known.current()) {
        in = DecoderFactory.get().resolvingDecoder(known.writer(), known.shape().schema(), in);
        return known.shape().read(in);
      }
      return glance ? known.glance().read(in) : known.shape().read(in);
    } catch (IOException | RuntimeException e) { // Bytes of chance fail in any way that there is.
      throw new DamagedBytes(
          "The bytes are damaged: they are no " + known.writer().getName() + ".", e);
    }
  }

  private Known writerOf(byte[] bytes, int from) {
    if (bytes.length - from < HEADER || bytes[from] != (byte) 0xC3 || bytes[from + 1] != 0x01) {
      throw new DamagedBytes(
          "The bytes do not begin with the marker of an Avro single object.", null);
    }
    long fingerprint = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getLong(from + 2);
    Known known = byFingerprint.get(fingerprint);
    if (known == null) {
      throw new DamagedBytes(
          "The bytes name a schema that this version does not know: "
              + Long.toHexString(fingerprint)
              + ". A newer version of the program may have written them.",
          null);
    }
    return known;
  }

  /** Bytes that are not what they should be. */
  public static final class DamagedBytes extends RuntimeException {
    /** Says what is damaged, in a sentence, and what showed it. */
    public DamagedBytes(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
