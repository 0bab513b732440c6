package sealspan.ingest.source;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import sealspan.ingest.validate.Column;
import sealspan.ingest.validate.Columns;
import sealspan.ingest.validate.NearMiss;

/** The words by which spreadsheets of the trade call our columns. */
final class TradeWords {
  private static final Map<String, List<String>> COLUMNS_BY_WORDS = read();
  private static final Set<String> FOUND = Set.of("found", "initial", "before", "init");
  private static final Set<String> LEFT = Set.of("left", "final", "after", "retest");
  private static final Set<String> REPAIR = Set.of("repair", "repairs", "repaired");
  private static final Set<String> FILLERS =
      Set.of("the", "of", "test", "as", "reading", "value", "held", "at");
  private static final Map<String, String> UNITS =
      Map.of("psi", "psid", "psid", "psid", "kpa", "kpa", "bar", "bar");

  private TradeWords() {}

  private static Map<String, List<String>> read() {
    Map<String, List<String>> columns = new HashMap<>();
    try (InputStream in = TradeWords.class.getResourceAsStream("trade-words.csv");
        CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(in)) {
      for (NamedCsvRecord row : rows) {
        String column = Columns.named(row.getField("column")).name();
        for (String words : row.getField("words").split(";")) {
          columns.computeIfAbsent(words.trim(), w -> new ArrayList<>(1)).add(column);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    for (Column column : Columns.all()) {
      columns
          .computeIfAbsent(column.base().replace('_', ' '), w -> new ArrayList<>(1))
          .add(column.name());
    }
    return columns;
  }

  /** The words of a column's name, with what they say of line, block and unit taken out. */
  static Words read(String name) {
    Words words = new Words(new ArrayList<>(), new ArrayList<>());
    for (String word : name.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+")) {
      if (!word.isEmpty()) {
        words.all.add(word);
      }
    }
    words.rest.addAll(words.all);
    words.bypass = words.rest.remove("bypass") || words.rest.remove("bp");
    words.block = words.takeBlock();
    for (Map.Entry<String, String> unit : UNITS.entrySet()) {
      if (words.rest.remove(unit.getKey())) {
        words.unit = unit.getValue();
      }
    }
    return words;
  }

  /** Words of a name while they are read. */
  static final class Words {
    private final List<String> all;
    private final List<String> rest;
    private boolean bypass;
    private String block;
    private String unit;

    private Words(List<String> all, List<String> rest) {
      this.all = all;
      this.rest = rest;
    }

    private String takeBlock() {
      if (rest.removeIf(FOUND::contains)) {
        return "found_";
      }
      if (rest.removeIf(LEFT::contains)) {
        return "left_";
      }
      return rest.stream().anyMatch(REPAIR::contains) ? "repair_" : null;
    }

    /** Whether the name speaks of a final test. */
    boolean namesLeft() {
      return "left_".equals(block);
    }

    /**
     * Our column for the name; null where none fits.
     *
     * @param rounds whether other names of the header speak of a final test
     */
    String column(boolean rounds) {
      List<String> candidates = COLUMNS_BY_WORDS.get(String.join(" ", all));
      if (candidates != null && (block == null || !prefixed(candidates.get(0)))) {
        return placed(candidates.get(0));
      }
      candidates = COLUMNS_BY_WORDS.get(String.join(" ", rest));
      if (candidates == null) {
        List<String> core = rest.stream().filter(word -> !FILLERS.contains(word)).toList();
        candidates = COLUMNS_BY_WORDS.get(String.join(" ", core));
      }
      if (candidates == null && "repair_".equals(block)) {
        List<String> core = rest.stream().filter(word -> !REPAIR.contains(word)).toList();
        candidates = COLUMNS_BY_WORDS.get(String.join(" ", core));
      }
      if (candidates == null) {
        String near = NearMiss.nearest(String.join(" ", rest), COLUMNS_BY_WORDS.keySet());
        candidates = near == null || near.length() < 4 ? null : COLUMNS_BY_WORDS.get(near);
      }
      return candidates == null ? null : placed(ofBlock(candidates));
    }

    /** Where words stand for a reading and for a repair, the block decides. */
    private String ofBlock(List<String> candidates) {
      for (String candidate : candidates) {
        boolean ofRepair = Columns.named(candidate).block().equals("repair");
        if (ofRepair == "repair_".equals(block)) {
          return candidate;
        }
      }
      return candidates.get(0);
    }

    private static boolean prefixed(String name) {
      Column column = Columns.named(name);
      return column.prefixed() && column.plain() == Column.Plain.NO;
    }

    private String placed(String name) {
      Column column = Columns.named(name);
      String own =
          column.dimension() == Column.Dimension.PRESSURE
              ? column.base() + "_" + (unit == null ? "psid" : unit)
              : name;
      if (column.plain() == Column.Plain.EVENT) {
        return null;
      }
      String line = bypass && column.lines() ? "bypass_" : "";
      if (column.block().equals("repair")) {
        return line + "repair_" + own;
      }
      boolean needs = column.plain() == Column.Plain.NO;
      if (block == null || block.equals("repair_")) {
        return needs ? line + "found_" + own : own;
      }
      return column.prefixed() ? line + block + own : own;
    }
  }
}
