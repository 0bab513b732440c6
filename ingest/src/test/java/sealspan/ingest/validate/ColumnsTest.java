package sealspan.ingest.validate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of columns and the parser say the same. */
class ColumnsTest {
  private static final Validator VALIDATOR =
      new Validator(Intake.imported("test", LocalDate.of(2026, 1, 1)));

  private static Map<String, String> rowOf(String event) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put("event", event);
    row.put("date", "2025-04-01");
    switch (event) {
      case "site" -> row.put("site_id", "S-1");
      case "test" -> row.put("phase", "as_left");
      case "inspection" -> row.put("inspection_kind", "visual");
      case "attempt" -> row.put("attempt_reason", "refused");
      case "service" -> row.put("service_state", "off");
      case "sample" -> {
        row.put("zone_id", "Z");
        row.put("characteristic", "Lead");
        row.put("detection", "not_detected");
      }
      case "disturbance" -> {
        row.put("zone_id", "Z");
        row.put("disturbance", "flushing");
      }
      case "calibration" -> row.put("gauge_id", "G");
      case "certificate" -> row.put("tester_id", "T");
      case "void" -> {
        row.put("corrects_event_id", "E");
        row.put("corrected_on", "2025-05-03");
        row.put("corrected_why", "entered twice");
      }
      default -> {
        // The assembly is enough.
      }
    }
    row.putIfAbsent("assembly_id", "A-1");
    return row;
  }

  private static String eventOf(Column column) {
    return switch (column.block()) {
      case "round" -> "test";
      case "place", "site" -> "site";
      case "validity" -> "calibration";
      case "row", "act" -> "test";
      default -> column.block();
    };
  }

  private static Validation validate(Map<String, String> row) throws HeaderException {
    List<String> names = new ArrayList<>(row.keySet());
    RowPlan plan = RowPlan.of(names, names);
    assertEquals(List.of(), plan.unused());
    return VALIDATOR.validate(
        new RowDraft(
            new Origin("test", 2, ""), plan, row.values().toArray(new String[0]), Notation.OWN));
  }

  private static String told(Map<String, String> row) throws HeaderException {
    Validation validation = validate(row);
    assertTrue(validation instanceof Validation.Accepted, () -> row + ": " + validation);
    return validation.toString();
  }

  static Stream<Column> columns() {
    return Columns.all().stream().filter(column -> !column.name().equals("event"));
  }

  @ParameterizedTest
  @MethodSource("columns")
  void theExampleOfEachColumnIsTakenAndChangesTheEvent(Column column) throws HeaderException {
    Map<String, String> row = rowOf(eventOf(column));
    switch (column.name()) {
      case "currency" -> {
        row = rowOf("job");
        row.put("labour", "1");
        row.put("currency", "XTS");
      }
      case "corrects_event_id" -> {
        row.put("corrected_on", "2025-05-02");
        row.put("corrected_why", "digits swapped");
      }
      case "corrected_on", "corrected_by", "corrected_why", "about" -> row = rowOf("void");
      case "confirmation_of" -> {
        row.put("confirmation_of", "check2");
        row.put("confirmation_psid", "1.0");
      }
      case "confirmation_psid" -> {
        row.put("confirmation_of", "check1");
        row.put("confirmation_psid", "1.1");
      }
      case "gauge_resolution_psid" -> row.put("check1_psid", "1.1");
      case "latitude" -> {
        row.put("latitude", "1");
        row.put("longitude", "1");
      }
      case "longitude" -> {
        row.put("latitude", "1");
        row.put("longitude", "2");
      }
      case "value" -> row.remove("detection");
      case "detection" -> row.put("value", "1");
      default -> {
        if (column.block().equals("job") || column.name().endsWith("_unit_price")) {
          row.put("currency", "USD");
        }
        if (column.name().endsWith("_reason") && column.block().equals("repair")) {
          row.put(column.name().replace("_reason", "_action"), "disc_replaced");
        }
      }
    }
    String name = column.name().replace("{name}", "drained");
    String example = column.example().isEmpty() ? "ab".repeat(32) : column.example();
    Map<String, String> with = new LinkedHashMap<>(row);
    with.put(name, example);
    String before = accepted(row) ? told(row) : "";
    assertNotEquals(before, told(with));
  }

  private static boolean accepted(Map<String, String> row) throws HeaderException {
    return validate(row) instanceof Validation.Accepted;
  }

  @ParameterizedTest
  @MethodSource("columns")
  void nonsenseIsRefusedWhereverACodeNumberDayOrTimeIsAsked(Column column) throws HeaderException {
    boolean free =
        column.domain().equals("text")
            || column.domain().startsWith("text,")
            || column.name().equals("event");
    if (free) {
      return;
    }
    Map<String, String> row =
        rowOf(
            switch (column.name()) {
              case "about" -> "void";
              case "currency" -> "job";
              default -> eventOf(column);
            });
    row.remove("detection");
    row.put("currency", "USD");
    if (column.name().equals("currency")) {
      row.put("labour", "1");
    }
    row.put(column.name().replace("{name}", "drained"), "n0nsense \u00a7");
    assertFalse(accepted(row), column.name());
  }

  @Test
  void everyCodeListOfTheColumnsExists() {
    List<String> lists = Codes.all().stream().map(CodeList::name).toList();
    for (Column column : Columns.all()) {
      int at = column.domain().indexOf("codes ");
      if (at >= 0) {
        String list = column.domain().substring(at + 6).split("[^a-z_]")[0];
        assertTrue(lists.contains(list), column.name() + " names the list " + list);
      }
    }
  }

  @Test
  void theGuideNamesEveryColumnPartAndCode() {
    String guide = ColumnGuide.markdown();
    for (Column column : Columns.documented()) {
      assertTrue(guide.contains("| `" + column.name() + "` |"), column.name());
    }
    for (CodeList<?> list : Codes.all()) {
      assertTrue(guide.contains("### " + list.name()), list.name());
    }
    Columns.partNames().values().forEach(part -> assertTrue(guide.contains("| `" + part + "` |")));
  }
}
