package sealspan.event;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
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
  private static final String TYPE_PREFIX = "sealspan.event.";

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
    String type = TYPE_PREFIX + e.event().getClass().getSimpleName();
    Map<String, String> headers = new LinkedHashMap<>();
    headers.put("ce_specversion", "1.0");
    headers.put("ce_id", e.id());
    headers.put("ce_source", uriReference(e.source()));
    headers.put("ce_type", type);
    headers.put("ce_subject", e.event().subject().key());
    headers.put("content-type", "application/avro");
    headers.put(
        "ce_dataschema",
        "urn:sealspan:schema:" + type + ":" + HexFormat.of().toHexDigits(schemaFingerprint));
    Moment when = e.event().when();
    if (when.minuteOfDay() != null && when.timeZone() != null) {
      headers.put("ce_time", when.instant().toString());
    }
    headers.put("ce_recordedtime", e.recordedAt().toString());
    if (e.reportedAt() != null) {
      headers.put("ce_reportedtime", e.reportedAt().toString());
    }
    if (e.reportedOrigin() != null) {
      headers.put("ce_reportedorigin", lower(e.reportedOrigin()));
    }
    if (e.arrival() != null) {
      headers.put("ce_arrival", lower(e.arrival()));
    }
    return headers;
  }

  /** CloudEvents wants a URI reference: what may not stand in one is percent-encoded (RFC 3986). */
  private static String uriReference(String source) {
    StringBuilder out = new StringBuilder();
    for (byte b : source.getBytes(StandardCharsets.UTF_8)) {
      if (b > ' ' && b < 127 && "\"%<>[\\]^`{|}".indexOf(b) < 0) {
        out.append((char) b);
      } else {
        out.append(String.format("%%%02X", b & 0xFF));
      }
    }
    return out.toString();
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
    return constant.name().toLowerCase(Locale.ROOT);
  }
}
