package sealspan.answers;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;

/**
 * An answer as one JSON object: question, title, as_of, notes, and rows as an array of objects.
 * What is not known, and a number that is not finite, is null; days and times are texts in ISO
 * 8601.
 */
public final class JsonText {
  private JsonText() {}

  /** Writes the answer and a line break; the writer is flushed, not closed. */
  public static void write(Answer answer, Writer out) throws IOException {
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.useDefaultPrettyPrinter();
      json.writeStartObject();
      json.writeStringField("question", answer.name());
      json.writeStringField("title", answer.title());
      json.writeStringField("as_of", answer.asOf());
      if (!answer.words().isEmpty()) {
        json.writeArrayFieldStart("in_words");
        for (String line : answer.words()) {
          json.writeString(line);
        }
        json.writeEndArray();
      }
      json.writeArrayFieldStart("notes");
      for (String note : answer.notes()) {
        json.writeString(note);
      }
      json.writeEndArray();
      json.writeArrayFieldStart("rows");
      for (List<Object> row : answer.table().rows()) {
        json.writeStartObject();
        for (int i = 0; i < row.size(); i++) {
          json.writeFieldName(answer.table().columns().get(i).name());
          write(row.get(i), json);
        }
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    out.write('\n');
    out.flush();
  }

  private static void write(Object value, JsonGenerator json) throws IOException {
    if (value == null || value instanceof Double number && !Double.isFinite(number)) {
      json.writeNull();
    } else if (value instanceof Boolean flag) {
      json.writeBoolean(flag);
    } else if (value instanceof Integer || value instanceof Long) {
      json.writeNumber(((Number) value).longValue());
    } else if (value instanceof Double number) {
      json.writeNumber(number);
    } else if (value instanceof BigDecimal number) {
      json.writeNumber(number);
    } else if (value instanceof BigInteger number) {
      json.writeNumber(number);
    } else if (value instanceof LocalDateTime time) {
      json.writeString(time.toInstant(ZoneOffset.UTC).toString());
    } else {
      json.writeString(value.toString());
    }
  }
}
