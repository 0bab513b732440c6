package sealspan.ingest.validate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The page that explains the columns, written from the same tables that rows are read by. */
public final class ColumnGuide {
  private static final Map<String, String> BLOCKS = new LinkedHashMap<>();

  static {
    BLOCKS.put("row", "Every row");
    BLOCKS.put(
        "act",
        "Test, repair or other event. In a row per visit with the prefix `found_`, `repair_` or"
            + " `left_`");
    BLOCKS.put("place", "Site and position");
    BLOCKS.put("site", "What is known of the site");
    BLOCKS.put("assembly", "The assembly");
    BLOCKS.put("round", "Test round. In a row per visit with the prefix `found_` or `left_`");
    BLOCKS.put(
        "repair",
        "Repair. In a row per visit with the prefix `repair_`; `{part}` is one of the parts below");
    BLOCKS.put("job", "Costs");
    BLOCKS.put("attempt", "A visit on which no test could be made");
    BLOCKS.put("change", "A change of an assembly (`event` is `change`)");
    BLOCKS.put("inspection", "Inspection (`event` is `inspection`)");
    BLOCKS.put("service", "Service state (`event` is `service`)");
    BLOCKS.put("removal", "Removal (`event` is `removal`)");
    BLOCKS.put("disturbance", "Disturbance of the water (`event` is `disturbance`)");
    BLOCKS.put("validity", "Calibration or certificate");
    BLOCKS.put("calibration", "Calibration of a gauge (`event` is `calibration`)");
    BLOCKS.put("certificate", "Certificate of a tester (`event` is `certificate`)");
    BLOCKS.put("sample", "Result of a water sample (`event` is `sample`)");
  }

  private ColumnGuide() {}

  /** The page as Markdown. */
  public static String markdown() {
    StringBuilder page = new StringBuilder(INTRODUCTION);
    Map<String, List<Column>> blocks = new LinkedHashMap<>();
    BLOCKS.keySet().forEach(block -> blocks.put(block, new ArrayList<>()));
    for (Column column : Columns.documented()) {
      List<Column> block = blocks.get(column.block());
      if (block == null) {
        throw new IllegalStateException("columns.csv has an unknown block: " + column.block());
      }
      block.add(column);
    }
    blocks.forEach((block, columns) -> addBlock(page, BLOCKS.get(block), columns));
    page.append("\n## Parts\n\n| Part | Meaning |\n|---|---|\n");
    Columns.Tables.read("parts.csv")
        .forEach(part -> addRow(page, code(part.getField("name")), part.getField("meaning")));
    page.append("\n## Codes and words\n\nCase and punctuation do not matter.\n");
    Codes.all().forEach(list -> addCodes(page, list));
    return page.toString();
  }

  private static final String INTRODUCTION =
      """
      # Columns

      A table has one row per visit, or one row per event and then a column `event`. Names are in
      lower case with underscores; case and punctuation do not matter. Leave out what you do not
      have: an empty cell, `-`, `n/a` or `not recorded` is *not recorded*, never zero, no or passed.
      JSON Lines have the same names as members of one object per line.

      - A row per visit may tell of a test as found, a repair and a test as left side by side. It
        needs `assembly_id` and `date`. A column of the groups below that name a prefix needs it,
        unless it is marked *both*: then the plain name holds for every part of the visit. A plain
        name marked *found* is that of the as-found test.
      - A detector assembly has a bypass, and may have several mainlines: put `bypass_` or `main2_`
        to `main9_` before the whole name of a column marked *lines*, as in
        `bypass_found_check1_psid`.
      - A reading is a number or words. `_psid` (or `_psi`) may be `_kpa` or `_bar`; without either,
        the unit of the mapping holds, else psi. A cell may name the unit itself: `13.8 kPa`.
        1 psi is 6.894757 kPa (NIST SP 811). `_in` may be `_mm`, and `_c` may be `_f`.
      - Days are written as 2025-03-31, other forms are named in a mapping. Numbers have a decimal
        point and no thousands mark.
      - To correct an event, write it anew with its right content, and add `corrects_event_id`,
        `corrected_on`, `corrected_by` and `corrected_why`.
      """;

  private static void addBlock(StringBuilder page, String title, List<Column> columns) {
    page.append("\n## ").append(title).append("\n\n");
    page.append("| Column | | Meaning | Unit | What may stand there | Example |\n");
    page.append("|---|---|---|---|---|---|\n");
    for (Column column : columns) {
      addRow(
          page,
          code(column.name()),
          marks(column),
          column.meaning(),
          column.unit(),
          column.domain(),
          column.example().isEmpty() ? "" : code(column.example()));
    }
  }

  private static String marks(Column column) {
    List<String> marks = new ArrayList<>(2);
    if (column.prefixed() && column.plain() == Column.Plain.ALL) {
      marks.add("*both*");
    }
    if (column.prefixed() && column.plain() == Column.Plain.FOUND) {
      marks.add("*found*");
    }
    if (column.plain() == Column.Plain.EVENT) {
      marks.add("*event rows only*");
    }
    if (column.lines()) {
      marks.add("*lines*");
    }
    return String.join(" ", marks);
  }

  private static <E extends Enum<E>> void addCodes(StringBuilder page, CodeList<E> list) {
    page.append("\n### ").append(list.name()).append("\n\n");
    page.append("| Code | Also | Meaning |\n|---|---|---|\n");
    list.meanings()
        .forEach(
            (code, meaning) ->
                addRow(
                    page,
                    code(code.name().toLowerCase(Locale.ROOT)),
                    String.join(", ", list.words(code)),
                    meaning));
  }

  private static String code(String text) {
    return "`" + text + "`";
  }

  private static void addRow(StringBuilder page, String... cells) {
    page.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }
}
