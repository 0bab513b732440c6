package sealspan.avro;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.avro.Schema;
import sealspan.event.AssemblyEvent;

/** Events to and from bytes, and the digest by which two contents are told apart. */
public final class EventCodec {
  private static final String PAST = "/avro/event/past/";

  private static final SingleObjectCodec CODEC =
      new SingleObjectCodec(Arrays.asList(AssemblyEvent.class.getPermittedSubclasses()), past());

  private EventCodec() {}

  /** The bytes of an event, in Avro single-object encoding. */
  public static byte[] encode(AssemblyEvent event) {
    return CODEC.encode(event);
  }

  /** Reads an event back, also one that an older version wrote. */
  public static AssemblyEvent decode(byte[] bytes) {
    return (AssemblyEvent) CODEC.decode(bytes);
  }

  /** The schema that a type of event is written with. */
  public static Schema schemaOf(Class<? extends AssemblyEvent> type) {
    return CODEC.schemaOf(type);
  }

  /**
   * SHA-256 of a canonical text of the content. Fields that were not recorded do not count, so the
   * digest of an event stays the same when a later version adds fields.
   */
  public static byte[] digest(AssemblyEvent event) {
    StringBuilder text = new StringBuilder(512);
    RecordShape.of(event.getClass()).text(event, text);
    try {
      return MessageDigest.getInstance("SHA-256")
          .digest(text.toString().getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }

  /** The schemas of earlier versions, named in the file {@code index} of their folder. */
  static List<Schema> past() {
    List<Schema> schemas = new ArrayList<>();
    try (BufferedReader index =
        new BufferedReader(new InputStreamReader(resource("index"), StandardCharsets.UTF_8))) {
      for (String name = index.readLine(); name != null; name = index.readLine()) {
        if (!name.isBlank()) {
          try (InputStream file = resource(name.trim())) {
            schemas.add(new Schema.Parser().parse(file));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return schemas;
  }

  private static InputStream resource(String name) throws IOException {
    InputStream in = EventCodec.class.getResourceAsStream(PAST + name);
    if (in == null) {
      throw new IOException("The program's own file " + PAST + name + " is missing.");
    }
    return in;
  }
}
