package sealspan.ingest.validate;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The values that a coded field may have and the words that stand for them, as {@code codes.csv}
 * gives them.
 *
 * @param <E> the codes
 */
public final class CodeList<E extends Enum<E>> {
  private final String name;
  private final Class<E> type;
  private final Map<String, E> byWord = new LinkedHashMap<>();
  private final Map<String, E> asWritten = new HashMap<>();
  private final Map<E, String> meanings = new LinkedHashMap<>();
  private final Map<E, List<String>> words = new LinkedHashMap<>();

  private CodeList(String name, Class<E> type) {
    this.name = name;
    this.type = type;
  }

  /**
   * The list of a name.
   *
   * @throws IllegalStateException where the table names a code that the type does not have
   */
  static <E extends Enum<E>> CodeList<E> of(String name, Class<E> type) {
    CodeList<E> list = new CodeList<>(name, type);
    for (NamedCsvRecord row : CodeTable.ROWS) {
      if (row.getField("list").equals(name)) {
        list.add(row);
      }
    }
    if (list.words.isEmpty()) {
      throw new IllegalStateException("codes.csv has no list " + name);
    }
    return list;
  }

  private static final class CodeTable {
    static final List<NamedCsvRecord> ROWS = Columns.Tables.read("codes.csv");
  }

  private void add(NamedCsvRecord row) {
    E code = Enum.valueOf(type, row.getField("code"));
    List<String> own = new ArrayList<>();
    for (String word : row.getField("words").split(";")) {
      if (!word.isBlank()) {
        own.add(word.trim());
        put(word, code);
      }
    }
    put(code.name(), code);
    words.put(code, List.copyOf(own));
    meanings.put(code, row.getField("meaning"));
  }

  private void put(String word, E code) {
    E other = byWord.put(plain(word), code);
    if (other != null && other != code) {
      throw new IllegalStateException(
          "codes.csv, list " + name + ": '" + word + "' means both " + other + " and " + code);
    }
    asWritten.put(word, code);
    asWritten.put(word.toLowerCase(Locale.ROOT), code);
  }

  /** Name of the list. */
  public String name() {
    return name;
  }

  /** The codes with their meanings, in the order of the table. */
  public Map<E, String> meanings() {
    return java.util.Collections.unmodifiableMap(meanings);
  }

  /** The words that stand for a code beside its own name. */
  public List<String> words(E code) {
    return words.getOrDefault(code, List.of());
  }

  /** The code that a text stands for, whatever its case and punctuation; null for none. */
  public E parse(String text) {
    E code = asWritten.get(text); // As most files have it, and sooner found.
    return code != null ? code : byWord.get(plain(text));
  }

  /** What to write instead of a text that stands for nothing. */
  String advice(String text) {
    String near = NearMiss.nearest(plain(text), byWord.keySet());
    String all = String.join(", ", words.keySet().stream().map(CodeList::shown).toList());
    return near == null
        ? "Write one of: " + all + "."
        : "Did you mean " + shown(byWord.get(near)) + "? It may be one of: " + all + ".";
  }

  private static String shown(Enum<?> code) {
    return code.name().toLowerCase(Locale.ROOT);
  }

  /** Lower case, with one underscore for whatever is neither letter nor digit. */
  static String plain(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    boolean gap = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isLetterOrDigit(c)) {
        if (gap && plain.length() > 0) {
          plain.append('_');
        }
        gap = false;
        plain.append(Character.toLowerCase(c));
      } else {
        gap = true;
      }
    }
    return plain.toString();
  }
}
