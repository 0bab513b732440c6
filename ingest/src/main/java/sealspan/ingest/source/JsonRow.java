package sealspan.ingest.source;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * One JSON object as a row: each member is a cell. A member of an object inside is named by both
 * names with an underscore between them, so {@code {"found": {"check1_psid": 8.2}}} is the column
 * {@code found_check1_psid}; the values of an array are parted by semicolons. Numbers keep their
 * digits as written.
 *
 * @param names names of the cells
 * @param cells the cells; an empty cell for null
 */
record JsonRow(List<String> names, String[] cells) {
  private static final JsonFactory JSON =
      new JsonFactoryBuilder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

  /** Reads an object; fails with JsonProcessingException where the text is none. */
  static JsonRow of(String text) throws IOException {
    try (JsonParser parser = JSON.createParser(text)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        throw new com.fasterxml.jackson.core.JsonParseException(parser, "it does not begin with {");
      }
      List<String> names = new ArrayList<>();
      List<String> cells = new ArrayList<>();
      members(parser, "", names, cells);
      if (parser.nextToken() != null) {
        throw new com.fasterxml.jackson.core.JsonParseException(
            parser, "more follows after the object");
      }
      return new JsonRow(names, cells.toArray(new String[0]));
    }
  }

  private static void members(
      JsonParser parser, String prefix, List<String> names, List<String> cells) throws IOException {
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String name = prefix + parser.currentName();
      JsonToken token = parser.nextToken();
      if (token == JsonToken.START_OBJECT) {
        members(parser, name + "_", names, cells);
        continue;
      }
      names.add(name);
      cells.add(token == JsonToken.START_ARRAY ? array(parser) : value(parser, token));
    }
  }

  private static String value(JsonParser parser, JsonToken token) throws IOException {
    return token == JsonToken.VALUE_NULL ? "" : parser.getText();
  }

  private static String array(JsonParser parser) throws IOException {
    List<String> values = new ArrayList<>();
    for (JsonToken token = parser.nextToken();
        token != JsonToken.END_ARRAY;
        token = parser.nextToken()) {
      if (token.isStructStart()) {
        throw new com.fasterxml.jackson.core.JsonParseException(
            parser, "an array may hold texts and numbers only");
      }
      values.add(value(parser, token));
    }
    return String.join("; ", values);
  }
}
