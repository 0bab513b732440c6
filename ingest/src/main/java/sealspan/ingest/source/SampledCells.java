package sealspan.ingest.source;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sealspan.ingest.validate.DayForms;

/**
 * What a few rows show of how days and numbers are written.
 *
 * @param dateFormats forms that fit every day, beside 2025-03-31
 * @param decimalMark {@code .} or {@code ,}
 * @param notes what a person has to decide
 */
record SampledCells(List<String> dateFormats, String decimalMark, List<String> notes) {
  private static final List<String> FORMS =
      List.of(
          "M/d/yyyy",
          "d/M/yyyy",
          "M/d/yy",
          "d/M/yy",
          "d.M.yyyy",
          "d.M.yy",
          "yyyy/M/d",
          "M-d-yyyy",
          "d-M-yyyy",
          "d-MMM-yyyy",
          "d-MMM-yy",
          "d MMM yyyy",
          "MMM d, yyyy",
          "MMMM d, yyyy",
          "yyyyMMdd");

  static SampledCells of(List<String> header, List<String[]> rows, Map<String, String> columns) {
    List<String> days = new ArrayList<>();
    int commas = 0;
    for (int i = 0; i < header.size(); i++) {
      String ours = columns.getOrDefault(header.get(i), "");
      for (String[] row : rows) {
        String cell = i < row.length ? row[i].trim() : "";
        if (isDay(ours) && !cell.isEmpty()) {
          days.add(cell);
        }
        commas += isPressure(ours) && isDecimalComma(cell) ? 1 : 0;
      }
    }
    List<String> notes = new ArrayList<>();
    List<String> formats = formats(days, notes);
    return new SampledCells(formats, commas > 0 ? "," : ".", List.copyOf(notes));
  }

  /** The columns whose cells all read as days, with a mark between the parts of each. */
  static List<String> ofDays(List<String> header, List<String[]> rows) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < header.size(); i++) {
      int at = i;
      List<String> cells =
          rows.stream()
              .map(row -> at < row.length ? row[at].trim() : "")
              .filter(cell -> !cell.isEmpty())
              .toList();
      boolean days =
          cells.stream()
              .allMatch(
                  cell ->
                      !cell.chars().allMatch(Character::isDigit)
                          && (DayForms.of(List.of()).parse(cell) != null
                              || FORMS.stream().anyMatch(form -> fits(form, cell))));
      if (days && !cells.isEmpty()) {
        found.add(header.get(i));
      }
    }
    return found;
  }

  private static boolean isDay(String ours) {
    return ours.equals("date")
        || ours.endsWith("_date")
        || ours.endsWith("_on")
        || ours.endsWith("_until")
        || ours.endsWith("_since");
  }

  private static boolean isPressure(String ours) {
    return ours.endsWith("_psid") || ours.endsWith("_kpa") || ours.endsWith("_bar");
  }

  private static boolean isDecimalComma(String cell) {
    int comma = cell.indexOf(',');
    return comma > 0
        && cell.indexOf('.') < 0
        && cell.chars().allMatch(c -> c == ',' || Character.isDigit(c));
  }

  private static List<String> formats(List<String> days, List<String> notes) {
    List<String> others =
        days.stream().filter(day -> DayForms.of(List.of()).parse(day) == null).toList();
    if (others.isEmpty()) {
      return List.of();
    }
    List<String> fitting =
        FORMS.stream().filter(form -> others.stream().allMatch(day -> fits(form, day))).toList();
    if (fitting.isEmpty()) {
      notes.add("No form of days fits all of the first rows, such as '" + others.get(0) + "'.");
      return List.of();
    }
    boolean undecided = fitting.size() > 1 && differs(fitting.get(0), fitting.get(1), others);
    if (undecided) {
      notes.add(
          "The first rows fit both "
              + fitting.get(0)
              + " and "
              + fitting.get(1)
              + ": decide which it is, for '"
              + others.get(0)
              + "' is a different day by each.");
    }
    return List.of(fitting.get(0));
  }

  private static boolean fits(String form, String day) {
    LocalDate read = DayForms.of(List.of(form)).parse(day);
    return read != null && read.getYear() >= 1900 && read.getYear() <= 2199;
  }

  private static boolean differs(String form, String other, List<String> days) {
    return days.stream()
        .anyMatch(
            day ->
                !DayForms.of(List.of(form))
                    .parse(day)
                    .equals(DayForms.of(List.of(other)).parse(day)));
  }
}
