package sealspan.avro;

import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.nio.ByteBuffer;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.avro.JsonProperties;
import org.apache.avro.LogicalTypes;
import org.apache.avro.Schema;
import org.apache.avro.io.Decoder;
import org.apache.avro.io.Encoder;
import sealspan.event.AssemblyEvent;

/** How one Java value is written in Avro. */
interface ValueShape {
  /** The Avro schema of the value. */
  Schema schema();

  /** The default that stands for a field which older bytes lack; null for none. */
  Object absent();

  void write(Object value, Encoder out) throws IOException;

  Object read(Decoder in) throws IOException;

  /** Goes past a value without making it. */
  void skip(Decoder in) throws IOException;

  /** Appends a canonical text of a value that is there; equal values give equal text. */
  default void text(Object value, StringBuilder out) {
    String plain = value.toString();
    out.append(plain.length()).append(':').append(plain);
  }

  /** The shape of a Java type that a record component may have. */
  static ValueShape of(Type type) {
    if (type instanceof ParameterizedType list && list.getRawType() == List.class) {
      return new ListShape(present(list.getActualTypeArguments()[0]));
    }
    ValueShape present = present(type);
    return ((Class<?>) type).isPrimitive() ? present : new OptionalShape(present);
  }

  private static ValueShape present(Type type) {
    Class<?> c = (Class<?>) type;
    if (c == String.class) {
      return new Plain(
          Schema.create(Schema.Type.STRING),
          (v, o) -> o.writeString((String) v),
          Texts::read,
          Decoder::skipString);
    }
    if (c == int.class || c == Integer.class) {
      return new Plain(
          Schema.create(Schema.Type.INT),
          (v, o) -> o.writeInt((Integer) v),
          Decoder::readInt,
          Decoder::readInt);
    }
    if (c == long.class || c == Long.class) {
      return new Plain(
          Schema.create(Schema.Type.LONG),
          (v, o) -> o.writeLong((Long) v),
          Decoder::readLong,
          Decoder::readLong);
    }
    if (c == double.class || c == Double.class) {
      return new Plain(
          Schema.create(Schema.Type.DOUBLE),
          (v, o) -> o.writeDouble((Double) v),
          Decoder::readDouble,
          Decoder::readDouble);
    }
    if (c == boolean.class || c == Boolean.class) {
      return new Plain(
          Schema.create(Schema.Type.BOOLEAN),
          (v, o) -> o.writeBoolean((Boolean) v),
          Decoder::readBoolean,
          Decoder::readBoolean);
    }
    if (c == LocalDate.class) {
      Schema date = LogicalTypes.date().addToSchema(Schema.create(Schema.Type.INT));
      return new Plain(
          date,
          (v, o) -> o.writeInt(Math.toIntExact(((LocalDate) v).toEpochDay())),
          in -> Days.of(in.readInt()),
          Decoder::readInt);
    }
    if (c == Instant.class) {
      Schema instant = LogicalTypes.timestampMillis().addToSchema(Schema.create(Schema.Type.LONG));
      return new Plain(
          instant,
          (v, o) -> o.writeLong(((Instant) v).toEpochMilli()),
          in -> Instant.ofEpochMilli(in.readLong()),
          Decoder::readLong);
    }
    if (c == AssemblyEvent.class) {
      return new Plain(
          Schema.create(Schema.Type.BYTES),
          (v, o) -> o.writeBytes(EventCodec.encode((AssemblyEvent) v)),
          ValueShape::readEvent,
          Decoder::skipBytes);
    }
    return c.isEnum() ? enumShape(c) : RecordShape.of(c);
  }

  private static Object readEvent(Decoder in) throws IOException {
    ByteBuffer bytes = in.readBytes(null);
    byte[] copy = new byte[bytes.remaining()];
    bytes.get(copy);
    return EventCodec.decode(copy);
  }

  private static ValueShape enumShape(Class<?> type) {
    Object[] constants = type.getEnumConstants();
    List<String> names = Arrays.stream(constants).map(c -> ((Enum<?>) c).name()).toList();
    return new Plain(
        Schema.createEnum(RecordShape.nameOf(type), null, type.getPackageName(), names),
        (v, o) -> o.writeEnum(((Enum<?>) v).ordinal()),
        in -> constants[in.readEnum()],
        Decoder::readEnum);
  }

  /** Writes one value. */
  interface Writer {
    void write(Object value, Encoder out) throws IOException;
  }

  /** Reads one value. */
  interface Reader {
    Object read(Decoder in) throws IOException;
  }

  /** Goes past one value. */
  interface Skipper {
    void skip(Decoder in) throws IOException;
  }

  /** A value that is always there. */
  record Plain(Schema schema, Writer writer, Reader reader, Skipper skipper) implements ValueShape {
    @Override
    public Object absent() {
      return null;
    }

    @Override
    public void write(Object value, Encoder out) throws IOException {
      writer.write(value, out);
    }

    @Override
    public Object read(Decoder in) throws IOException {
      return reader.read(in);
    }

    @Override
    public void skip(Decoder in) throws IOException {
      skipper.skip(in);
    }
  }

  /** A value that may be absent: a union with null first. */
  record OptionalShape(ValueShape present) implements ValueShape {
    @Override
    public Schema schema() {
      return Schema.createUnion(Schema.create(Schema.Type.NULL), present.schema());
    }

    @Override
    public Object absent() {
      return JsonProperties.NULL_VALUE;
    }

    @Override
    public void write(Object value, Encoder out) throws IOException {
      out.writeIndex(value == null ? 0 : 1);
      if (value == null) {
        out.writeNull();
      } else {
        present.write(value, out);
      }
    }

    @Override
    public Object read(Decoder in) throws IOException {
      if (in.readIndex() == 0) {
        in.readNull();
        return null;
      }
      return present.read(in);
    }

    @Override
    public void skip(Decoder in) throws IOException {
      if (in.readIndex() == 0) {
        in.readNull();
      } else {
        present.skip(in);
      }
    }

    @Override
    public void text(Object value, StringBuilder out) {
      present.text(value, out);
    }
  }

  /** A list of values that are there. */
  record ListShape(ValueShape element) implements ValueShape {
    /** Room made beforehand; the count in damaged bytes may be anything. */
    private static final long MOST_EXPECTED = 256;

    @Override
    public Schema schema() {
      return Schema.createArray(element.schema());
    }

    @Override
    public Object absent() {
      return List.of();
    }

    @Override
    public void write(Object value, Encoder out) throws IOException {
      List<?> list = (List<?>) value;
      out.writeArrayStart();
      out.setItemCount(list.size());
      for (Object item : list) {
        out.startItem();
        element.write(item, out);
      }
      out.writeArrayEnd();
    }

    @Override
    public Object read(Decoder in) throws IOException {
      long n = in.readArrayStart();
      if (n == 0) {
        return List.of();
      }
      List<Object> list = new ArrayList<>((int) Math.min(n, MOST_EXPECTED));
      for (; n != 0; n = in.arrayNext()) {
        for (long i = 0; i < n; i++) {
          list.add(element.read(in));
        }
      }
      return list;
    }

    @Override
    public void skip(Decoder in) throws IOException {
      for (long n = in.skipArray(); n != 0; n = in.skipArray()) {
        for (long i = 0; i < n; i++) {
          element.skip(in);
        }
      }
    }

    @Override
    public void text(Object value, StringBuilder out) {
      out.append('[');
      for (Object item : (List<?>) value) {
        element.text(item, out);
        out.append(',');
      }
      out.append(']');
    }
  }
}
