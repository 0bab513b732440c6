package sealspan.avro;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Set;
import org.apache.avro.Schema;
import org.apache.avro.SchemaNormalization;
import sealspan.event.AssemblyEvent;

/** Events to and from bytes, and the digest by which two contents are told apart. */
public final class EventCodec {
  /** Whom an event is about, when it was, and whom it refers to. */
  private static final Set<String> GLANCED =
      Set.of(
          "assemblyId", "siteId", "zoneId", "gaugeId", "testerId", "when", "about", "replacement");

  private static final SingleObjectCodec CODEC =
      new SingleObjectCodec(
          Arrays.asList(AssemblyEvent.class.getPermittedSubclasses()),
          PastSchemas.of("event"),
          GLANCED);

  private EventCodec() {}

  /** The bytes of an event, in Avro single-object encoding. */
  public static byte[] encode(AssemblyEvent event) {
    return CODEC.encode(event);
  }

  /** Reads an event back, also one that an older version wrote. */
  public static AssemblyEvent decode(byte[] bytes) {
    return (AssemblyEvent) CODEC.decode(bytes);
  }

  /** The same, of bytes that begin at a place and go to the end. */
  public static AssemblyEvent decode(byte[] bytes, int from) {
    return (AssemblyEvent) CODEC.decode(bytes, from);
  }

  /**
   * Reads of an event its type, whom it is about, when it was, and whom it refers to; the rest is
   * as if it had not been recorded. For who reads the log from end to end and needs no more.
   */
  public static AssemblyEvent glance(byte[] bytes) {
    return (AssemblyEvent) CODEC.glance(bytes);
  }

  /** CRC-64-AVRO fingerprint of the schema that a type of event is written with. */
  public static long fingerprintOf(Class<? extends AssemblyEvent> type) {
    return SchemaNormalization.parsingFingerprint64(schemaOf(type));
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
    StringBuilder text = new StringBuilder(2048);
    RecordShape.of(event.getClass()).text(event, text);
    try {
      return MessageDigest.getInstance("SHA-256")
          .digest(text.toString().getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
