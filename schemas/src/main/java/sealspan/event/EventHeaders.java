package sealspan.event;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import sealspan.event.LoggedEvent.Arrival;
import sealspan.event.LoggedEvent.ReportedOrigin;

/**
 * The envelope of an event as record headers: the Kafka binding of CloudEvents 1.0 in binary mode,
 * where each attribute is a header named {@code ce_} and the attribute, in UTF-8. The record's key
 * is the subject, its value the event in Avro single-object encoding.
 *
 * <p>{@code ce_time} is there only where the minute and the time zone were recorded: a date alone
 * is no instant. The reported time, its origin, the recorded time and the arrival are extensions.
 */
public final class EventHeaders {
  /** Names of those headers whose text many events share. */
  public static final Set<String> SHARED =
      Set.of(
          "ce_specversion",
          "ce_source",
          "ce_type",
          "content-type",
          "ce_dataschema",
          "ce_reportedorigin",
          "ce_arrival");

  private static final String TYPE_PREFIX = "sealspan.event.";
  private static final Map<Enum<?>, String> LOWER = new ConcurrentHashMap<>();

  private EventHeaders() {}

  /**
   * The headers of an event, in a fixed order.
   *
   * @param schemaFingerprint CRC-64-AVRO fingerprint of the schema that the value is written with
   * @throws IllegalArgumentException when the log has not set the recorded time
   */
  public static Map<String, String> of(LoggedEvent e, long schemaFingerprint) {
    if (e.recordedAt() == null) {
      throw new IllegalArgumentException("Event " + e.id() + " has no recorded time yet.");
    }
    Map<String, String> headers = new LinkedHashMap<>();
    given(e, schemaFingerprint, headers::put);
    recorded(e.recordedAt(), headers::put);
    return headers;
  }

  /** Gives out, name and text, those headers that do not wait for the recorded time. */
  public static void given(
      LoggedEvent e, long schemaFingerprint, BiConsumer<String, String> header) {
    Written written = Written.of(e.event().getClass(), schemaFingerprint);
    header.accept("ce_specversion", "1.0");
    header.accept("ce_id", e.id());
    header.accept("ce_source", uriReference(e.source()));
    header.accept("ce_type", written.type());
    header.accept("ce_subject", e.event().subject().key());
    header.accept("content-type", "application/avro");
    header.accept("ce_dataschema", written.schemaName());
    Moment when = e.event().when();
    if (when.minuteOfDay() != null && when.timeZone() != null) {
      header.accept("ce_time", InstantText.of(when.instant()));
    }
    if (e.reportedAt() != null) {
      header.accept("ce_reportedtime", InstantText.of(e.reportedAt()));
    }
    if (e.reportedOrigin() != null) {
      header.accept("ce_reportedorigin", lower(e.reportedOrigin()));
    }
    if (e.arrival() != null) {
      header.accept("ce_arrival", lower(e.arrival()));
    }
  }

  /** Gives out the header of the recorded time. */
  public static void recorded(Instant recordedAt, BiConsumer<String, String> header) {
    header.accept("ce_recordedtime", InstantText.of(recordedAt));
  }

  /** What the headers of all events of a type say, put together once. */
  private record Written(long fingerprint, String type, String schemaName) {
    private static final Map<Class<?>, Written> KNOWN = new ConcurrentHashMap<>();

    static Written of(Class<?> event, long fingerprint) {
      Written known = KNOWN.get(event);
      if (known == null || known.fingerprint != fingerprint) {
        String type = TYPE_PREFIX + event.getSimpleName();
        String name = "urn:sealspan:schema:" + type + ":" + HexFormat.of().toHexDigits(fingerprint);
        known = new Written(fingerprint, type, name);
        KNOWN.put(event, known);
      }
      return known;
    }
  }

  /** CloudEvents wants a URI reference: what may not stand in one is percent-encoded (RFC 3986). */
  private static String uriReference(String source) {
    boolean plain = true;
    for (int i = 0; i < source.length(); i++) {
      plain &= standsInUris(source.charAt(i));
    }
    if (plain) {
      return source;
    }
    StringBuilder out = new StringBuilder();
    for (byte b : source.getBytes(StandardCharsets.UTF_8)) {
      if (standsInUris(b)) {
        out.append((char) b);
      } else {
        out.append(String.format("%%%02X", b & 0xFF));
      }
    }
    return out.toString();
  }

  private static boolean standsInUris(int c) {
    return c > ' ' && c < 127 && "\"%<>[\\]^`{|}".indexOf(c) < 0;
  }

  private static String text(String uriReference) {
    return uriReference.indexOf('%') < 0
        ? uriReference
        : URLDecoder.decode(uriReference.replace("+", "%2B"), StandardCharsets.UTF_8);
  }

  /**
   * Reads the envelope back.
   *
   * @param header value of a header by its name, null where there is none
   * @param event the decoded value
   * @throws IllegalArgumentException when a required header is missing or one is not well formed
   */
  public static LoggedEvent read(UnaryOperator<String> header, AssemblyEvent event) {
    return new LoggedEvent(
        required(header, "ce_id"),
        text(required(header, "ce_source")),
        event,
        instant(header, "ce_reportedtime"),
        constant(ReportedOrigin.class, header, "ce_reportedorigin"),
        instant(header, "ce_recordedtime"),
        constant(Arrival.class, header, "ce_arrival"));
  }

  private static String required(UnaryOperator<String> header, String name) {
    String value = header.apply(name);
    if (value == null) {
      throw new IllegalArgumentException("The header " + name + " is missing.");
    }
    return value;
  }

  private static Instant instant(UnaryOperator<String> header, String name) {
    String value = header.apply(name);
    try {
      return value == null ? null : InstantText.parse(value);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("The header " + name + " is no time: " + value, e);
    }
  }

  private static <E extends Enum<E>> E constant(
      Class<E> type, UnaryOperator<String> header, String name) {
    String value = header.apply(name);
    if (value == null) {
      return null;
    }
    for (E constant : type.getEnumConstants()) {
      if (value.equalsIgnoreCase(constant.name())) {
        return constant;
      }
    }
    throw new IllegalArgumentException("The header " + name + " may not be: " + value);
  }

  private static String lower(Enum<?> constant) {
    return LOWER.computeIfAbsent(constant, c -> c.name().toLowerCase(Locale.ROOT));
  }
}
