package sealspan.assembly;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Unit;

/**
 * The rows of a criteria table, read from CSV.
 *
 * @param limits the limits of readings, in the order of the file
 * @param rules the rules about gauges, in the order of the file
 */
record CriteriaTable(List<Criterion> limits, List<ProgrammeRule> rules) {
  /** The columns, in the order of the shipped table. */
  static final List<String> COLUMNS =
      List.of(
          "jurisdiction",
          "assembly_type",
          "component",
          "measure",
          "method",
          "procedure_edition",
          "valid_from",
          "valid_to",
          "comparator",
          "limit",
          "unit",
          "compare",
          "strength",
          "derived",
          "source");

  private static final String GAUGE = "gauge";

  /** Reads the rows; fails with {@link CriteriaException} at the first that cannot be read. */
  static CriteriaTable read(String csv) {
    List<Criterion> limits = new ArrayList<>();
    List<ProgrammeRule> rules = new ArrayList<>();
    Map<Object, Long> lines = new HashMap<>();
    try (CsvReader<NamedCsvRecord> reader =
        CsvReader.builder()
            .commentStrategy(CommentStrategy.SKIP)
            .ofNamedCsvRecord(withoutMark(csv))) {
      for (NamedCsvRecord row : reader) {
        Row fields = new Row(row);
        Object key;
        if (fields.text("component").equalsIgnoreCase(GAUGE)) {
          ProgrammeRule rule = rule(fields);
          rules.add(rule);
          key = List.of(rule.jurisdiction(), rule.subject(), String.valueOf(rule.validFrom()));
        } else {
          Criterion limit = limit(fields);
          limits.add(limit);
          key = keyOf(limit);
        }
        Long earlier = lines.putIfAbsent(key, fields.line());
        if (earlier != null) {
          throw fields.wrong(
              "valid_from",
              "this row sets the same limit as line " + earlier,
              "Give the two rows different days of validity, or take one out.");
        }
      }
    } catch (CsvParseException e) {
      throw new CriteriaException("The criteria table is not readable as CSV: " + e.getMessage());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new CriteriaTable(limits, rules);
  }

  /** The text without the byte-order mark that some spreadsheets write first. */
  private static String withoutMark(String csv) {
    return csv.startsWith("\uFEFF") ? csv.substring(1) : csv;
  }

  private static Object keyOf(Criterion row) {
    return Arrays.asList(
        row.jurisdiction().toLowerCase(Locale.ROOT),
        row.type(),
        row.at(),
        row.measure(),
        row.method(),
        row.procedureEdition(),
        row.validFrom());
  }

  private static Criterion limit(Row row) {
    Criterion.Comparator comparator = row.oneOf("comparator", Criterion.Comparator.class);
    boolean seen = comparator == Criterion.Comparator.IS;
    return new Criterion(
        row.needed("jurisdiction"),
        row.oneOf("assembly_type", AssemblyType.class),
        row.component("component", row.needed("component")),
        row.oneOf("measure", Measure.class),
        row.optional("method"),
        row.optional("procedure_edition"),
        row.day("valid_from"),
        row.lastDay(),
        comparator,
        seen ? null : row.number("limit"),
        seen ? row.oneOf("limit", Observation.class) : null,
        seen ? null : row.oneOf("unit", Unit.class),
        seen ? Criterion.Rounding.BEFORE_ROUNDING : row.oneOf("compare", Criterion.Rounding.class),
        row.oneOf("strength", Criterion.Strength.class),
        row.difference("derived"),
        row.needed("source"));
  }

  private static ProgrammeRule rule(Row row) {
    ProgrammeRule.Subject subject =
        switch (row.needed("measure").toLowerCase(Locale.ROOT)) {
          case "accuracy" -> ProgrammeRule.Subject.GAUGE_ACCURACY;
          case "range" -> ProgrammeRule.Subject.GAUGE_RANGE;
          case "calibration_interval" -> ProgrammeRule.Subject.CALIBRATION_INTERVAL;
          default ->
              throw row.wrong(
                  "measure",
                  "'" + row.needed("measure") + "' is nothing that a gauge has",
                  "Write accuracy, range or calibration_interval.");
        };
    boolean months = subject == ProgrammeRule.Subject.CALIBRATION_INTERVAL;
    if (months && !row.needed("unit").equalsIgnoreCase("months")) {
      throw row.wrong("unit", "an interval is given in months", "Write months.");
    }
    BigDecimal amount = row.number("limit");
    if (amount.signum() <= 0 || months && amount.stripTrailingZeros().scale() > 0) {
      throw row.wrong(
          "limit",
          "'" + amount.toPlainString() + "' is not possible",
          months ? "Write whole months, such as 12." : "Write a number above 0.");
    }
    return new ProgrammeRule(
        row.needed("jurisdiction"),
        subject,
        amount,
        months ? null : row.oneOf("unit", Unit.class),
        row.day("valid_from"),
        row.lastDay(),
        row.needed("source"));
  }

  /** The fields of one row, with errors that say where. */
  private record Row(NamedCsvRecord row) {
    long line() {
      return row.getStartingLineNumber();
    }

    CriteriaException wrong(String column, String what, String remedy) {
      return new CriteriaException(
          "Criteria table, line " + line() + ", column " + column + ": " + what + ". " + remedy);
    }

    String text(String column) {
      return row.findField(column)
          .orElseThrow(
              () ->
                  wrong(
                      column,
                      "the row has no such column",
                      "The header reads " + String.join(",", COLUMNS) + "."))
          .trim();
    }

    String optional(String column) {
      String text = text(column);
      return text.isEmpty() ? null : text;
    }

    String needed(String column) {
      String text = text(column);
      if (text.isEmpty()) {
        throw wrong(column, "it is empty", "Every row needs it.");
      }
      return text;
    }

    BigDecimal number(String column) {
      String text = needed(column);
      try {
        return new BigDecimal(text);
      } catch (NumberFormatException e) {
        throw wrong(column, "'" + text + "' is not a number", "Write a decimal such as 1.0.");
      }
    }

    LocalDate day(String column) {
      String text = text(column);
      try {
        return text.isEmpty() ? null : LocalDate.parse(text);
      } catch (DateTimeException e) {
        throw wrong(column, "'" + text + "' is not a day", "Write it as 2020-12-31.");
      }
    }

    LocalDate lastDay() {
      LocalDate from = day("valid_from");
      LocalDate to = day("valid_to");
      if (from != null && to != null && to.isBefore(from)) {
        throw wrong("valid_to", to + " is before valid_from", "Write the last day it is valid.");
      }
      return to;
    }

    <E extends Enum<E>> E oneOf(String column, Class<E> type) {
      String text = needed(column);
      for (E constant : type.getEnumConstants()) {
        if (constant.name().equalsIgnoreCase(text)) {
          return constant;
        }
      }
      throw wrong(
          column,
          "'" + text + "' is not known here",
          "Write one of "
              + Arrays.toString(type.getEnumConstants()).toLowerCase(Locale.ROOT)
              + ".");
    }

    ComponentAt component(String column, String text) {
      try {
        return ComponentAt.ofText(text);
      } catch (IllegalArgumentException e) {
        throw wrong(
            column,
            "'" + text + "' is no component",
            "Write it as check1, relief_valve or bypass.check1.");
      }
    }

    Criterion.Difference difference(String column) {
      String text = text(column);
      if (text.isEmpty()) {
        return null;
      }
      int minus = text.indexOf(" - ");
      if (minus < 0) {
        throw wrong(
            column,
            "'" + text + "' is no difference of two readings",
            "Write it as check1.static_drop - relief_valve.opening_point.");
      }
      return new Criterion.Difference(
          operand(column, text.substring(0, minus).trim()),
          operand(column, text.substring(minus + 3).trim()));
    }

    private Criterion.Operand operand(String column, String text) {
      int dot = text.lastIndexOf('.');
      if (dot > 0) {
        for (Measure measure : Measure.values()) {
          if (measure.name().equalsIgnoreCase(text.substring(dot + 1))) {
            return new Criterion.Operand(component(column, text.substring(0, dot)), measure);
          }
        }
      }
      throw wrong(column, "'" + text + "' is no reading", "Write it as check1.static_drop.");
    }
  }
}
