package sealspan.ingest.validate;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.event.Component;

/** All documented columns. The table is the only place where they are named and explained. */
public final class Columns {
  private static final String PART = "{part}";
  private static final List<Column> DOCUMENTED = new ArrayList<>();
  private static final List<Column> ALL = new ArrayList<>();
  private static final Map<String, Column> BY_BASE = new HashMap<>();
  private static final Map<Component, String> PART_NAMES = new EnumMap<>(Component.class);
  private static final Map<String, Component> PARTS = new HashMap<>();
  private static final Column CONDITION;

  static {
    for (NamedCsvRecord row : Tables.read("parts.csv")) {
      Component component = Component.valueOf(row.getField("component"));
      PART_NAMES.put(component, row.getField("name"));
      PARTS.put(row.getField("name"), component);
    }
    for (NamedCsvRecord row : Tables.read("columns.csv")) {
      String name = row.getField("name");
      DOCUMENTED.add(column(row, name));
      if (name.startsWith(PART)) {
        for (String part : PART_NAMES.values()) {
          add(column(row, part + name.substring(PART.length())));
        }
      } else {
        add(column(row, name));
      }
    }
    CONDITION = named("condition_{name}");
  }

  private Columns() {}

  private static void add(Column column) {
    ALL.add(column);
    if (BY_BASE.put(column.base(), column) != null) {
      throw new IllegalStateException("columns.csv names a column twice: " + column.name());
    }
  }

  private static Column column(NamedCsvRecord row, String name) {
    Suffix suffix = Suffix.of(name);
    boolean measured = suffix != null && !row.getField("unit").isEmpty();
    return new Column(
        ALL.size(),
        name,
        measured ? suffix.base() : name,
        measured ? suffix.dimension() : Column.Dimension.NONE,
        row.getField("block"),
        Column.Plain.valueOf(row.getField("plain").toUpperCase(Locale.ROOT)),
        row.getField("lines").equals("yes"),
        row.getField("unit"),
        row.getField("domain"),
        row.getField("example"),
        row.getField("meaning"));
  }

  /** The columns as documented, those of parts once with {@code {part}} in the name. */
  public static List<Column> documented() {
    return List.copyOf(DOCUMENTED);
  }

  /** How many columns there are; every {@link Column#index()} is below it. */
  public static int count() {
    return ALL.size();
  }

  /** All columns, those of parts once for each part. */
  public static List<Column> all() {
    return List.copyOf(ALL);
  }

  /** The column of a documented name; fails with IllegalArgumentException where there is none. */
  public static Column named(String name) {
    for (Column column : ALL) {
      if (column.name().equals(name)) {
        return column;
      }
    }
    throw new IllegalArgumentException("columns.csv has no column " + name);
  }

  /** The column of a part, such as {@code check1} and {@code action}. */
  static Column ofPart(Component component, String attribute) {
    return named(PART_NAMES.get(component) + "_" + attribute);
  }

  /** The column of a base name (without unit suffix); null where there is none. */
  static Column ofBase(String base) {
    Column column = BY_BASE.get(base);
    if (column == null && base.startsWith("condition_") && base.length() > 10) {
      return CONDITION;
    }
    return column;
  }

  /** Whether a name, with or without prefixes and unit, is that of a column. */
  public static boolean reads(String name) {
    return HeaderCell.of(CodeList.plain(name)) != null;
  }

  /** The name nearest to one that is none; null where none is near. */
  public static String nearest(String name) {
    List<String> names = new ArrayList<>();
    for (Column column : ALL) {
      names.add(column.name());
      if (column.prefixed()) {
        List<String> blocks =
            column.block().equals("repair") ? List.of("repair_") : List.of("found_", "left_");
        blocks.forEach(block -> names.add(block + column.name()));
      }
    }
    return NearMiss.nearest(CodeList.plain(name), names);
  }

  /** Names of the parts, by component. */
  public static Map<Component, String> partNames() {
    return Map.copyOf(PART_NAMES);
  }

  /** The component of a part's name; null where there is none. */
  static Component part(String name) {
    return PARTS.get(name);
  }

  /** Tables that travel with the program. */
  static final class Tables {
    private Tables() {}

    static List<NamedCsvRecord> read(String name) {
      var stream = Columns.class.getResourceAsStream(name);
      if (stream == null) {
        throw new IllegalStateException("The program's own table " + name + " is missing.");
      }
      try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(stream)) {
        return reader.stream().toList();
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }
}
