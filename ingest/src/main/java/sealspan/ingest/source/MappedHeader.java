package sealspan.ingest.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.ingest.validate.HeaderException;
import sealspan.ingest.validate.RowPlan;

/** A header with its mapping applied: what the cells are, and what is to be put in their place. */
final class MappedHeader {
  private final RowPlan plan;
  private final int fileCells;
  private final String[] constants;
  private final List<Map<String, String>> translations = new ArrayList<>();
  private final boolean asTheyAre;

  private MappedHeader(RowPlan plan, List<String> header, Mapping mapping) {
    this.plan = plan;
    this.fileCells = header.size();
    this.constants = mapping.constants().values().toArray(new String[0]);
    for (String theirs : header) {
      translations.add(translation(theirs, mapping));
    }
    this.asTheyAre =
        constants.length == 0 && translations.stream().allMatch(java.util.Objects::isNull);
  }

  static MappedHeader of(List<String> header, Mapping mapping) throws HeaderException {
    List<String> ours = new ArrayList<>();
    List<String> names = new ArrayList<>(header);
    header.forEach(theirs -> ours.add(mapping.ourName(theirs)));
    mapping
        .constants()
        .keySet()
        .forEach(
            constant -> {
              ours.add(constant);
              names.add(constant + " (constant of the mapping)");
            });
    return new MappedHeader(RowPlan.of(ours, names), header, mapping);
  }

  private static Map<String, String> translation(String theirs, Mapping mapping) {
    Map<String, String> words = new HashMap<>();
    String ours = mapping.ourName(theirs);
    mapping
        .values()
        .forEach(
            (column, values) -> {
              if (Mapping.key(column).equals(Mapping.key(theirs)) || column.equals(ours)) {
                words.putAll(values);
              }
            });
    return words.isEmpty() ? null : words;
  }

  RowPlan plan() {
    return plan;
  }

  /** How many cells a row of the file has. */
  int fileCells() {
    return fileCells;
  }

  /** The cells as the plan expects them. */
  String[] cells(String[] file) {
    if (asTheyAre) {
      return file;
    }
    String[] cells = new String[fileCells + constants.length];
    for (int i = 0; i < fileCells; i++) {
      Map<String, String> words = translations.get(i);
      cells[i] = words == null ? file[i] : words.getOrDefault(Mapping.key(file[i]), file[i]);
    }
    System.arraycopy(constants, 0, cells, fileCells, constants.length);
    return cells;
  }
}
