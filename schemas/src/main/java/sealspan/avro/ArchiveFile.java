package sealspan.avro;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.apache.avro.Schema;
import org.apache.avro.SchemaBuilder;
import org.apache.avro.file.CodecFactory;
import org.apache.avro.file.DataFileReader;
import org.apache.avro.file.DataFileWriter;
import org.apache.avro.generic.GenericData;
import org.apache.avro.generic.GenericDatumReader;
import org.apache.avro.generic.GenericDatumWriter;
import org.apache.avro.generic.GenericRecord;

/**
 * Records of a topic in an object container file of the Avro 1.12 specification, compressed by
 * deflate. Any Avro library reads it.
 */
public final class ArchiveFile {
  private static final int DEFLATE_LEVEL = 3;

  /** The schema of a record in the file. */
  public static final Schema SCHEMA = schema();

  private static final Schema HEADER = SCHEMA.getField("headers").schema().getElementType();

  static {
    ReadLimits.hold();
  }

  private ArchiveFile() {}

  /** Writes one file. */
  public static final class Writer implements Closeable {
    private final DataFileWriter<GenericRecord> file;

    /** Makes the file, or writes over one of that name. */
    public Writer(Path path) throws IOException {
      file = new DataFileWriter<>(new GenericDatumWriter<>(SCHEMA));
      file.setCodec(CodecFactory.deflateCodec(DEFLATE_LEVEL));
      file.create(SCHEMA, path.toFile());
    }

    /** Writes a record behind those before it. */
    public void append(ArchivedRecord r) throws IOException {
      GenericRecord row = new GenericData.Record(SCHEMA);
      row.put("partition", r.partition());
      row.put("offset", r.offset());
      row.put("timestamp", r.timestampMillis());
      row.put("key", wrapped(r.key()));
      row.put("value", wrapped(r.value()));
      List<GenericRecord> headers = new ArrayList<>(r.headers().size());
      for (ArchivedRecord.Header h : r.headers()) {
        GenericRecord header = new GenericData.Record(HEADER);
        header.put("name", h.name());
        header.put("value", wrapped(h.value()));
        headers.add(header);
      }
      row.put("headers", headers);
      file.append(row);
    }

    /** Ends the file and makes it durable. */
    @Override
    public void close() throws IOException {
      file.fSync();
      file.close();
    }
  }

  /**
   * Reads a file from its first record to its last.
   *
   * @throws SingleObjectCodec.DamagedBytes where it is not what a {@link Writer} wrote
   */
  public static void read(Path path, Consumer<ArchivedRecord> each) throws IOException {
    try (DataFileReader<GenericRecord> file = opened(path)) {
      for (ArchivedRecord r = next(file, path); r != null; r = next(file, path)) {
        each.accept(r);
      }
    }
  }

  private static DataFileReader<GenericRecord> opened(Path path) throws IOException {
    try {
      return new DataFileReader<>(path.toFile(), new GenericDatumReader<>(SCHEMA, SCHEMA));
    } catch (RuntimeException e) {
      throw damaged(path, e);
    }
  }

  private static ArchivedRecord next(DataFileReader<GenericRecord> file, Path path) {
    try {
      return file.hasNext() ? record(file.next()) : null;
    } catch (RuntimeException e) {
      throw damaged(path, e);
    }
  }

  /** Bytes of chance fail in any way that there is. */
  private static SingleObjectCodec.DamagedBytes damaged(Path path, RuntimeException e) {
    return new SingleObjectCodec.DamagedBytes(path.getFileName() + " is damaged.", e);
  }

  private static ArchivedRecord record(GenericRecord row) {
    List<ArchivedRecord.Header> headers = new ArrayList<>();
    for (Object o : (List<?>) row.get("headers")) {
      GenericRecord h = (GenericRecord) o;
      headers.add(new ArchivedRecord.Header(h.get("name").toString(), bytes(h.get("value"))));
    }
    return new ArchivedRecord(
        (Integer) row.get("partition"),
        (Long) row.get("offset"),
        (Long) row.get("timestamp"),
        bytes(row.get("key")),
        bytes(row.get("value")),
        headers);
  }

  private static ByteBuffer wrapped(byte[] bytes) {
    return bytes == null ? null : ByteBuffer.wrap(bytes);
  }

  private static byte[] bytes(Object value) {
    if (value == null) {
      return null;
    }
    ByteBuffer buffer = (ByteBuffer) value;
    byte[] bytes = new byte[buffer.remaining()];
    buffer.duplicate().get(bytes);
    return bytes;
  }

  private static Schema schema() {
    Schema header =
        SchemaBuilder.record("Header")
            .namespace("sealspan.archive")
            .fields()
            .requiredString("name")
            .optionalBytes("value")
            .endRecord();
    return SchemaBuilder.record("ArchivedRecord")
        .namespace("sealspan.archive")
        .doc("A record of a Kafka topic as it stands there; timestamp is its recorded time.")
        .fields()
        .requiredInt("partition")
        .requiredLong("offset")
        .requiredLong("timestamp")
        .optionalBytes("key")
        .optionalBytes("value")
        .name("headers")
        .type()
        .array()
        .items(header)
        .noDefault()
        .endRecord();
  }
}
