package sealspan.ingest.log;

import java.time.Instant;
import java.util.function.UnaryOperator;
import sealspan.avro.TableCodec;
import sealspan.event.Topics;
import sealspan.table.QuarantinedRow;

/** Quarantined rows: the id follows from source, complaint and row. */
final class QuarantineForm extends ContentNamedForm<QuarantinedRow> {
  /** A row that swallowed half a file, for want of a closing quote, must still fit a record. */
  static final int ROW_TEXT_MAX_CHARS = 100_000;

  @Override
  public String topic() {
    return Topics.QUARANTINE;
  }

  @Override
  public int partitions() {
    return 1;
  }

  @Override
  public QuarantinedRow named(QuarantinedRow r) {
    String id = r.id() == null ? contentId(r) : r.id();
    return with(id, r, shortened(r.rowText()), r.firstSeenAt());
  }

  @Override
  public QuarantinedRow stored(QuarantinedRow r, Instant recordedAt) {
    return with(r.id(), r, r.rowText(), recordedAt);
  }

  private static QuarantinedRow with(
      String id, QuarantinedRow r, String rowText, Instant recordedAt) {
    return new QuarantinedRow(
        id,
        r.source(),
        r.file(),
        r.line(),
        r.field(),
        r.kind(),
        r.reason(),
        rowText,
        recordedAt,
        r.putsRight());
  }

  /** The id that follows from source, complaint and row. */
  static String contentId(QuarantinedRow r) {
    boolean noText = r.rowText() == null || r.rowText().isBlank();
    return ContentId.of(
        r.source(),
        r.kind(),
        r.field(),
        r.reason(),
        r.rowText(),
        noText ? r.file() + ":" + r.line() : null);
  }

  private static String shortened(String text) {
    return text == null || text.length() <= ROW_TEXT_MAX_CHARS
        ? text
        : text.substring(0, ROW_TEXT_MAX_CHARS) + " [... " + text.length() + " characters in all]";
  }

  @Override
  public String id(QuarantinedRow r) {
    return r.id();
  }

  @Override
  public byte[] value(QuarantinedRow r, byte[] content, Instant recordedAt) {
    return TableCodec.encode(stored(r, recordedAt));
  }

  @Override
  public QuarantinedRow read(byte[] value, UnaryOperator<String> header) {
    return TableCodec.decode(value, QuarantinedRow.class);
  }
}
