package sealspan.ingest.source;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.event.Unit;
import sealspan.ingest.validate.Columns;
import sealspan.ingest.validate.DayForms;
import sealspan.ingest.validate.NearMiss;
import sealspan.ingest.validate.Notation;

/** The mapping file, a JSON object; {@link #guide()} explains its keys. */
public final class MappingFile {
  private static final List<String> KEYS =
      List.of(
          "columns",
          "constants",
          "values",
          "pressureUnit",
          "dateFormats",
          "decimalMark",
          "separator",
          "encoding",
          "skipLines",
          "timeZone",
          "source",
          "usualReportLagDays");

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
          .enable(JsonReadFeature.ALLOW_TRAILING_COMMA)
          .build();

  private MappingFile() {}

  /** The page that explains the mapping file, as Markdown. */
  public static String guide() {
    try (InputStream in = MappingFile.class.getResourceAsStream("mapping-file.md")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads a mapping file.
   *
   * @throws SourceException where it is missing or cannot be understood, naming the key at fault
   */
  public static Mapping read(Path file) throws SourceException {
    try {
      return parse(Files.readString(file), file.toString());
    } catch (NoSuchFileException e) {
      throw new SourceException("There is no mapping file " + file + ". Check the path.", e);
    } catch (IOException e) {
      throw new SourceException(
          "The mapping file " + file + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  /**
   * Reads a mapping.
   *
   * @param json its text
   * @param name how messages call it
   */
  public static Mapping parse(String json, String name) throws SourceException {
    try {
      JsonNode root = JSON.readTree(json);
      if (!(root instanceof ObjectNode object)) {
        throw wrong(name, "it is no JSON object", "It begins with { and ends with }.");
      }
      return new Parser(object, name).mapping();
    } catch (JacksonException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      throw new SourceException(
          "Mapping " + name + ", line " + line + ": this is not JSON: " + e.getOriginalMessage(),
          e);
    }
  }

  private static SourceException wrong(String name, String what, String remedy) {
    return new SourceException("Mapping " + name + ": " + what + ". " + remedy);
  }

  private record Parser(ObjectNode root, String name) {
    Mapping mapping() throws SourceException {
      for (Map.Entry<String, JsonNode> entry : root.properties()) {
        if (!KEYS.contains(entry.getKey())) {
          String near = NearMiss.nearest(entry.getKey(), KEYS);
          throw wrong(
              name,
              "there is no key '" + entry.getKey() + "'",
              (near == null ? "" : "Did you mean " + near + "? ")
                  + "The keys are: "
                  + String.join(", ", KEYS)
                  + ".");
        }
      }
      Map<String, String> columns = texts("columns", root.get("columns"));
      Map<String, String> constants = texts("constants", root.get("constants"));
      for (String column : columns.values()) {
        check("columns", column);
      }
      for (String column : constants.keySet()) {
        check("constants", column);
      }
      return new Mapping(
          columns,
          constants,
          values(),
          new Notation(dayForms(), decimalMark(), pressureUnit(), timeZone()),
          separator(),
          text("encoding"),
          whole("skipLines") == null ? 0 : whole("skipLines"),
          text("source"),
          whole("usualReportLagDays"));
    }

    private String text(String key) throws SourceException {
      JsonNode node = root.get(key);
      if (node == null || node.isNull()) {
        return null;
      }
      if (!node.isTextual() || node.textValue().isEmpty()) {
        throw wrong(name, key + " is no text", "Write it in quotation marks.");
      }
      return node.textValue();
    }

    private Integer whole(String key) throws SourceException {
      JsonNode node = root.get(key);
      if (node == null || node.isNull()) {
        return null;
      }
      if (!node.isInt() || node.intValue() < 0) {
        throw wrong(name, key + " is no whole number", "Write 0 or more, without quotation marks.");
      }
      return node.intValue();
    }

    private Map<String, String> texts(String key, JsonNode node) throws SourceException {
      Map<String, String> texts = new LinkedHashMap<>();
      if (node == null) {
        return texts;
      }
      if (!node.isObject()) {
        throw wrong(name, key + " is no object", "Write it as {\"theirs\": \"ours\"}.");
      }
      for (Map.Entry<String, JsonNode> entry : node.properties()) {
        JsonNode value = entry.getValue();
        if (!value.isValueNode()) {
          throw wrong(
              name, key + ", " + entry.getKey() + ": this is no text", "Write a text in quotes.");
        }
        texts.put(entry.getKey(), value.isNull() ? "" : value.asText());
      }
      return texts;
    }

    private void check(String key, String column) throws SourceException {
      if (!column.isBlank() && !Columns.reads(column)) {
        String near = Columns.nearest(column);
        throw wrong(
            name,
            key + " names '" + column + "', and there is no such column of ours",
            near == null ? "See the list of columns." : "Did you mean " + near + "?");
      }
    }

    private Map<String, Map<String, String>> values() throws SourceException {
      Map<String, Map<String, String>> values = new LinkedHashMap<>();
      JsonNode node = root.get("values");
      if (node != null && !node.isObject()) {
        throw wrong(
            name, "values is no object", "Write it as {\"column\": {\"theirs\": \"ours\"}}.");
      }
      if (node != null) {
        for (Map.Entry<String, JsonNode> entry : node.properties()) {
          values.put(entry.getKey(), texts("values, " + entry.getKey(), entry.getValue()));
        }
      }
      return values;
    }

    private DayForms dayForms() throws SourceException {
      JsonNode node = root.get("dateFormats");
      List<String> forms = new ArrayList<>();
      if (node != null) {
        if (node.isTextual()) {
          forms.add(node.textValue());
        }
        node.forEach(form -> forms.add(form.asText()));
      }
      try {
        return DayForms.of(forms);
      } catch (IllegalArgumentException e) {
        throw wrong(
            name,
            "dateFormats has a form that is none: " + e.getMessage(),
            "Write such as M/d/yyyy, d.M.yyyy or d MMM yy.");
      }
    }

    private Notation.DecimalMark decimalMark() throws SourceException {
      String mark = text("decimalMark");
      if (mark == null || mark.equals(".")) {
        return Notation.DecimalMark.POINT;
      }
      if (mark.equals(",")) {
        return Notation.DecimalMark.COMMA;
      }
      throw wrong(name, "decimalMark is '" + mark + "'", "Write \".\" or \",\".");
    }

    private Unit pressureUnit() throws SourceException {
      String unit = text("pressureUnit");
      if (unit == null) {
        return Unit.PSI;
      }
      return switch (unit.toLowerCase(java.util.Locale.ROOT)) {
        case "psi", "psid" -> Unit.PSI;
        case "kpa" -> Unit.KPA;
        case "bar" -> Unit.BAR;
        default -> throw wrong(name, "pressureUnit is '" + unit + "'", "Write psi, kPa or bar.");
      };
    }

    private String timeZone() throws SourceException {
      String zone = text("timeZone");
      try {
        return zone == null ? null : ZoneId.of(zone).getId();
      } catch (DateTimeException e) {
        throw wrong(
            name,
            "timeZone '" + zone + "' is no time zone",
            "Write an IANA name such as America/Denver.");
      }
    }

    private Character separator() throws SourceException {
      String text = text("separator");
      if (text == null) {
        return null;
      }
      if (text.equalsIgnoreCase("tab")) {
        return '\t';
      }
      if (text.length() != 1 || text.equals("\"")) {
        throw wrong(name, "separator is '" + text + "'", "Write one character, or tab.");
      }
      return text.charAt(0);
    }
  }
}
