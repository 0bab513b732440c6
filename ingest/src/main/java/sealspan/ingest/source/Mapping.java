package sealspan.ingest.source;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.event.LoggedEvent;
import sealspan.ingest.validate.Intake;
import sealspan.ingest.validate.Notation;

/**
 * How the columns and cells of somebody else's table are to be read.
 *
 * @param columns our column name for each of theirs; an empty name leaves the column out
 * @param constants what holds for every row, by our column name, for columns that the table lacks
 * @param values our value for each of theirs, by their or our column name, in lower case
 * @param notation how days and numbers are written
 * @param separator separator of cells; null for the one that the header shows
 * @param encoding name of the encoding; null for UTF-8 or what a byte-order mark says
 * @param skipLines lines above the header
 * @param source name of the source; null where the mapping gives none
 * @param usualReportLagDays days from an event to its report, assumed where a row does not tell;
 *     null for no assumption
 */
public record Mapping(
    Map<String, String> columns,
    Map<String, String> constants,
    Map<String, Map<String, String>> values,
    Notation notation,
    Character separator,
    String encoding,
    int skipLines,
    String source,
    Integer usualReportLagDays) {

  /** For tables with our own columns. */
  public static final Mapping NONE =
      new Mapping(Map.of(), Map.of(), Map.of(), Notation.OWN, null, null, 0, null, null);

  public Mapping {
    columns = ordered(columns);
    constants = ordered(constants);
    Map<String, Map<String, String>> lower = new LinkedHashMap<>();
    values.forEach((column, words) -> lower.put(column, lowerKeys(words)));
    values = java.util.Collections.unmodifiableMap(lower);
  }

  private static Map<String, String> ordered(Map<String, String> map) {
    return java.util.Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  private static Map<String, String> lowerKeys(Map<String, String> words) {
    Map<String, String> lower = new HashMap<>();
    words.forEach((word, value) -> lower.put(key(word), value));
    return lower;
  }

  static String key(String word) {
    return word.trim().toLowerCase(Locale.ROOT);
  }

  /** What is taken for granted of the rows of the table, on the day of the import. */
  public Intake intake(LocalDate today) {
    return new Intake(
        source == null ? "import" : source,
        today,
        usualReportLagDays,
        LoggedEvent.Arrival.IMPORTED);
  }

  /** The same mapping with another encoding; null for that of the mapping. */
  public Mapping inEncoding(String name) {
    return name == null
        ? this
        : new Mapping(
            columns,
            constants,
            values,
            notation,
            separator,
            name,
            skipLines,
            source,
            usualReportLagDays);
  }

  /** Our name for a column of theirs; null where it is to be left out. */
  String ourName(String theirs) {
    String ours = columns.get(theirs);
    if (ours == null) {
      for (Map.Entry<String, String> entry : columns.entrySet()) {
        if (key(entry.getKey()).equals(key(theirs))) {
          ours = entry.getValue();
        }
      }
    }
    return ours == null ? theirs : ours.isBlank() ? null : ours;
  }

  /** The names of theirs that a mapping speaks of and a header does not have. */
  List<String> absent(List<String> header) {
    List<String> keys = header.stream().map(Mapping::key).toList();
    return columns.keySet().stream().filter(name -> !keys.contains(key(name))).toList();
  }
}
