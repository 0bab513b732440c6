package sealspan.ingest.source;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A first mapping for somebody else's table, made from the words of its header and a few of its
 * rows. It is a draft for a person to correct, never used unseen.
 *
 * @param columns our column for each of theirs that could be placed
 * @param unplaced columns that could not be placed
 * @param missing columns of ours that every table of visits needs and none was found for
 * @param notes what the rows show, in words
 * @param dateFormats forms of days that fit the rows, beside 2025-03-31
 * @param decimalMark the mark before decimals, {@code .} or {@code ,}
 */
public record MappingProposal(
    Map<String, String> columns,
    List<String> unplaced,
    List<String> missing,
    List<String> notes,
    List<String> dateFormats,
    String decimalMark) {

  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * Proposes a mapping.
   *
   * @param header names of the columns
   * @param rows a few rows; none is well, but then nothing is said of days and decimals
   */
  public static MappingProposal of(List<String> header, List<String[]> rows) {
    Map<String, String> columns = new LinkedHashMap<>();
    List<String> unplaced = new ArrayList<>();
    Set<String> taken = new LinkedHashSet<>();
    boolean rounds = header.stream().map(TradeWords::read).anyMatch(TradeWords.Words::namesLeft);
    for (String name : header) {
      if (name.isBlank()) {
        continue;
      }
      String ours = TradeWords.read(name).column(rounds);
      if (ours == null || !taken.add(ours)) {
        unplaced.add(name);
      } else {
        columns.put(name, ours);
      }
    }
    List<String> notes = new ArrayList<>();
    if (!taken.contains("date")) {
      List<String> days = new ArrayList<>(unplaced);
      days.retainAll(SampledCells.ofDays(header, rows));
      if (days.size() == 1) {
        unplaced.remove(days.get(0));
        columns.put(days.get(0), "date");
        taken.add("date");
        notes.add("'" + days.get(0) + "' is taken as the day of the visit: its cells are days.");
      }
    }
    List<String> missing = new ArrayList<>();
    for (String needed : List.of("assembly_id", "date")) {
      if (!taken.contains(needed)) {
        missing.add(needed);
      }
    }
    SampledCells sampled = SampledCells.of(header, rows, columns);
    notes.addAll(sampled.notes());
    return new MappingProposal(
        java.util.Collections.unmodifiableMap(columns),
        List.copyOf(unplaced),
        List.copyOf(missing),
        List.copyOf(notes),
        sampled.dateFormats(),
        sampled.decimalMark());
  }

  /** The proposal as the text of a mapping file, with remarks on what is left to do. */
  public String json() {
    StringBuilder text = new StringBuilder("{\n");
    text.append("  // A proposal from the header. Check every line before you import by it.\n");
    for (String name : missing) {
      text.append("  // No column was found for ").append(name).append(", which is needed.\n");
    }
    for (String note : notes) {
      text.append("  // ").append(note).append('\n');
    }
    text.append("  \"columns\": {");
    String comma = "\n";
    for (Map.Entry<String, String> column : columns.entrySet()) {
      text.append(comma).append("    ").append(quoted(column.getKey())).append(": ");
      text.append(quoted(column.getValue()));
      comma = ",\n";
    }
    if (!unplaced.isEmpty()) {
      text.append(comma);
      text.append("    // Not placed: name one of our columns, or leave the column out with \"\".");
      comma = "\n";
    }
    for (String name : unplaced) {
      text.append(comma).append("    ").append(quoted(name)).append(": \"\"");
      comma = ",\n";
    }
    text.append("\n  },\n  \"constants\": {},\n  \"values\": {},\n  \"dateFormats\": [");
    text.append(String.join(", ", dateFormats.stream().map(MappingProposal::quoted).toList()));
    text.append("],\n  \"decimalMark\": ").append(quoted(decimalMark));
    return text.append(",\n  \"pressureUnit\": \"psi\"\n}\n").toString();
  }

  private static String quoted(String text) {
    try {
      return JSON.writeValueAsString(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("Every text can be written as JSON.", e);
    }
  }
}
