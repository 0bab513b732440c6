package sealspan.answers;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.IOException;
import java.io.Writer;
import java.time.LocalDateTime;
import java.time.ZoneOffset;

/**
 * The rows of an answer as CSV (RFC 4180): a header, then the rows, in full precision. What is not
 * known is an empty field; an empty text is a quoted empty field. Notes are not in it.
 */
public final class CsvText {
  private CsvText() {}

  /** Writes the rows; the writer is flushed, not closed. */
  public static void write(Answer answer, Writer out) throws IOException {
    CsvWriter csv =
        CsvWriter.builder()
            .lineDelimiter(LineDelimiter.CRLF)
            .quoteStrategy(QuoteStrategies.EMPTY)
            .build(out);
    csv.writeRecord(answer.table().columns().stream().map(c -> c.name()).toList());
    for (var row : answer.table().rows()) {
      csv.writeRecord(row.stream().map(CsvText::field).toList());
    }
    csv.flush();
    out.flush();
  }

  private static String field(Object value) {
    if (value == null) {
      return null;
    }
    return value instanceof LocalDateTime time
        ? time.toInstant(ZoneOffset.UTC).toString()
        : value.toString();
  }
}
