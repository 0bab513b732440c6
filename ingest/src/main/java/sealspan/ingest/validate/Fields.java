package sealspan.ingest.validate;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.Moment;
import sealspan.event.Money;
import sealspan.event.Quantity;
import sealspan.event.Unit;
import sealspan.ingest.validate.Problem.Fault;

/**
 * The fields of one block of a row, read by their documented columns. What cannot be read becomes a
 * problem and reads as not recorded, so that one pass finds all problems of a row.
 */
final class Fields {
  private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
  private static final LocalDate LATEST_VALIDITY = LocalDate.of(2199, 12, 31);
  private static final Column TIME_ZONE = Columns.named("time_zone");
  private static final Column CURRENCY = Columns.named("currency");

  private final RowDraft draft;
  private final BlockPlan block;
  private final int[] line;
  private final LocalDate latestDay;
  private final List<Problem> problems;

  private Fields(
      RowDraft draft, BlockPlan block, int[] line, LocalDate latestDay, List<Problem> problems) {
    this.draft = draft;
    this.block = block;
    this.line = line;
    this.latestDay = latestDay;
    this.problems = problems;
  }

  static Fields of(RowDraft draft, BlockPlan block, LocalDate latestDay, List<Problem> problems) {
    return new Fields(draft, block, null, latestDay, problems);
  }

  /** The fields of one line of the assembly. */
  Fields of(BlockPlan.LineCells cells) {
    return new Fields(draft, block, cells.cells(), latestDay, problems);
  }

  BlockPlan block() {
    return block;
  }

  RowDraft draft() {
    return draft;
  }

  // ---- cells

  /** Whether a cell says anything: it is not empty, nor a mark for not recorded. */
  static boolean isFilled(String cell) {
    if (cell == null || cell.isEmpty()) {
      return false;
    }
    return cell.length() > 12 ? !cell.isBlank() : !isNothing(cell.trim());
  }

  private static boolean isNothing(String text) {
    if (text.isEmpty()) {
      return true;
    }
    char first = text.charAt(0);
    return switch (first) {
      case '-' -> text.equals("-") || text.equals("--");
      case '?' -> text.equals("?");
      case 'n', 'N' ->
          text.equalsIgnoreCase("n/a")
              || text.equalsIgnoreCase("na")
              || text.equalsIgnoreCase("n.a.")
              || text.equalsIgnoreCase("null")
              || text.equalsIgnoreCase("not recorded");
      default -> false;
    };
  }

  private int cell(Column column) {
    int index = column.index();
    if (line != null && column.lines()) {
      return line[index] >= 0 && isFilled(draft.cells()[line[index]]) ? line[index] : -1;
    }
    int own = block.own(column);
    if (own >= 0 && isFilled(draft.cells()[own])) {
      return own;
    }
    int shared = block.shared(column);
    return shared >= 0 && isFilled(draft.cells()[shared]) ? shared : -1;
  }

  boolean has(Column column) {
    return cell(column) >= 0;
  }

  /** The text of a field; null where it is not recorded. */
  String text(Column column) {
    int cell = cell(column);
    return cell < 0 ? null : trimmed(draft.cells()[cell]);
  }

  private static String trimmed(String text) {
    return text.charAt(0) > ' ' && text.charAt(text.length() - 1) > ' ' ? text : text.trim();
  }

  /** The text of a field that must be there. */
  String need(Column column, String why) {
    String text = text(column);
    if (text == null) {
      add(column, Fault.MISSING, "It is empty.", why);
    }
    return text;
  }

  /** Several texts, parted by semicolons. */
  List<String> list(Column column) {
    String text = text(column);
    if (text == null) {
      return List.of();
    }
    if (text.indexOf(';') < 0) {
      return List.of(text);
    }
    List<String> parts = new ArrayList<>();
    for (int begin = 0; begin <= text.length(); ) {
      int end = text.indexOf(';', begin);
      end = end < 0 ? text.length() : end;
      String part = text.substring(begin, end).trim();
      if (!part.isEmpty()) {
        parts.add(part);
      }
      begin = end + 1;
    }
    return parts;
  }

  /** The name of a field as the file has it. */
  String nameOf(Column column) {
    int cell = -1;
    if (line != null && column.lines()) {
      cell = line[column.index()];
    }
    cell = cell >= 0 ? cell : cell(column);
    cell = cell >= 0 ? cell : block.own(column);
    cell = cell >= 0 ? cell : block.shared(column);
    return cell >= 0 ? draft.plan().fileName(cell) : column.name();
  }

  void add(Column column, Fault fault, String wrong, String remedy) {
    add(new Problem(nameOf(column), fault, wrong, remedy));
  }

  /** A field that several events share is read several times, and complained of once. */
  private void add(Problem problem) {
    if (!problems.contains(problem)) {
      problems.add(problem);
    }
  }

  // ---- codes

  /** The code that a field holds; null where it is not recorded or no code. */
  <E extends Enum<E>> E code(Column column, CodeList<E> codes) {
    String text = text(column);
    return text == null ? null : code(column, text, codes);
  }

  <E extends Enum<E>> E code(Column column, String text, CodeList<E> codes) {
    E code = codes.parse(text);
    if (code == null) {
      add(column, Fault.UNKNOWN_CODE, quoted(text) + " is not known here.", codes.advice(text));
    }
    return code;
  }

  Boolean yesNo(Column column) {
    Codes.Answer answer = code(column, Codes.YES_NO);
    return answer == null ? null : answer == Codes.Answer.YES;
  }

  /** The answer of a column of the form's own; null where it is not recorded. */
  Boolean yesNo(BlockPlan.OpenCell open) {
    String text = draft.cells()[open.cell()];
    if (!isFilled(text)) {
      return null;
    }
    Codes.Answer answer = Codes.YES_NO.parse(text);
    if (answer == null) {
      add(
          new Problem(
              draft.plan().fileName(open.cell()),
              Fault.UNKNOWN_CODE,
              quoted(text) + " is not known here.",
              Codes.YES_NO.advice(text)));
    }
    return answer == null ? null : answer == Codes.Answer.YES;
  }

  // ---- days and times

  /** A day on which something happened: from 1900 on, and not later than the latest day. */
  LocalDate pastDay(Column column) {
    return within(column, day(column), latestDay);
  }

  /** A day up to which something is valid. */
  LocalDate validityDay(Column column) {
    return within(column, day(column), LATEST_VALIDITY);
  }

  private LocalDate day(Column column) {
    String text = text(column);
    if (text == null) {
      return null;
    }
    LocalDate day = draft.notation().days().parse(text);
    if (day == null) {
      int gap = timeGap(text);
      day = gap < 0 ? null : draft.notation().days().parse(text.substring(0, gap));
    }
    if (day == null) {
      add(column, Fault.NOT_A_DAY, quoted(text) + " is not a day as expected here.", dayAdvice());
    }
    return day;
  }

  private String dayAdvice() {
    List<String> further = draft.notation().days().patterns();
    return further.isEmpty()
        ? "Write it as 2025-03-31, or name the form (such as M/d/yyyy) in a mapping, dateFormats."
        : "Write it as 2025-03-31 or in a form of the mapping: " + String.join(", ", further) + ".";
  }

  private LocalDate within(Column column, LocalDate day, LocalDate latest) {
    if (day == null) {
      return null;
    }
    if (day.isBefore(EARLIEST)) {
      add(column, Fault.DAY_OUT_OF_RANGE, day + " is before 1900.", "Check the year.");
      return null;
    }
    if (day.isAfter(latest)) {
      add(
          column,
          Fault.DAY_OUT_OF_RANGE,
          day + " is after " + latest + ", the last day that can be told of.",
          "Check day, month and year.");
      return null;
    }
    return day;
  }

  private static int timeGap(String text) {
    int gap = text.indexOf('T') == 10 ? 10 : text.indexOf(' ');
    return gap >= 6 && text.indexOf(':', gap) > 0 ? gap : -1;
  }

  /**
   * When something happened; null where the day cannot be read.
   *
   * @param time column of the time of day; null where the cell of the day may tell it
   */
  Moment moment(Column date, Column time) {
    LocalDate day = pastDay(date);
    Integer minute = time == null ? null : minuteOfDay(time);
    if (minute == null && day != null) {
      String text = text(date);
      int gap = text.length() > 10 ? timeGap(text) : -1;
      if (gap > 0) {
        int told = TimeForms.minuteOfDay(text.substring(gap + 1).trim());
        // Spreadsheets write midnight for a day without a time.
        minute = told > 0 ? told : null;
      }
    }
    return day == null ? null : new Moment(day, minute, timeZone());
  }

  Integer minuteOfDay(Column column) {
    String text = text(column);
    if (text == null) {
      return null;
    }
    int minute = TimeForms.minuteOfDay(text);
    if (minute < 0) {
      add(
          column,
          Fault.NOT_A_TIME,
          quoted(text) + " is not a time of day.",
          "Write it as 09:40, or as 9:40 am.");
      return null;
    }
    return minute;
  }

  /** The time zone of the row, else that of the file; null where neither tells. */
  String timeZone() {
    String text = text(TIME_ZONE);
    if (text == null) {
      return draft.notation().timeZone();
    }
    try {
      return ZoneId.of(text).getId();
    } catch (DateTimeException e) {
      add(
          TIME_ZONE,
          Fault.UNKNOWN_CODE,
          quoted(text) + " is not a time zone.",
          "Write an IANA name such as America/Denver.");
      return null;
    }
  }

  // ---- numbers

  /** A whole number within bounds, both included. */
  Integer whole(Column column, int least, int greatest) {
    String text = text(column);
    if (text == null) {
      return null;
    }
    int digits = text.length() > 9 ? -1 : DayForms.digits(text, 0, text.length());
    if (digits < 0 || digits < least || digits > greatest) {
      add(
          column,
          digits < 0 ? Fault.NOT_A_NUMBER : Fault.OUT_OF_RANGE,
          quoted(text) + " is not a whole number from " + least + " to " + greatest + ".",
          "Correct it, or leave the cell empty where it is not recorded.");
      return null;
    }
    return digits;
  }

  /** A number within bounds, both included. */
  Double decimal(Column column, double least, double greatest) {
    String number = number(column);
    if (number == null) {
      return null;
    }
    double value = Double.parseDouble(number);
    if (value < least || value > greatest) {
      add(
          column,
          Fault.OUT_OF_RANGE,
          number + " is not from " + (long) least + " to " + (long) greatest + ".",
          "Correct it, or leave the cell empty where it is not recorded.");
      return null;
    }
    return value;
  }

  /** A number as decimal text with a point. */
  String number(Column column) {
    String text = text(column);
    return text == null ? null : number(column, text);
  }

  private String number(Column column, String text) {
    String number = Numbers.plain(text, draft.notation().decimalMark());
    if (number == null) {
      add(
          column,
          Fault.NOT_A_NUMBER,
          quoted(text) + " is not a number.",
          Numbers.advice(text, draft.notation().decimalMark()));
    }
    return number;
  }

  /** A number, 0 or more, with its unit. */
  Quantity quantityFromZero(Column column) {
    Quantity quantity = quantity(column);
    if (quantity != null && quantity.entered().charAt(0) == '-') {
      add(
          column,
          Fault.OUT_OF_RANGE,
          quantity.entered() + " is below zero.",
          "Correct it, or write in words what was seen, such as leaked.");
      return null;
    }
    return quantity;
  }

  /** A number with the unit that the cell, the column or the file names. */
  Quantity quantity(Column column) {
    int cell = cell(column);
    if (cell < 0) {
      return null;
    }
    String text = trimmed(draft.cells()[cell]);
    int end = Numbers.numberEnd(text);
    Unit ofColumn = draft.plan().unit(cell);
    Unit unit = ofColumn != null ? ofColumn : usual(column);
    if (end > 0 && end < text.length()) {
      Unit ofCell = Numbers.unit(text.substring(end).trim());
      if (ofCell == null || dimension(ofCell) != column.dimension()) {
        add(
            column,
            Fault.UNIT,
            quoted(text) + " names no unit that fits.",
            "Write the number alone, or one of psi, kPa, bar; in, mm; C, F as it applies.");
        return null;
      }
      if (ofColumn != null && ofCell != ofColumn) {
        add(
            column,
            Fault.UNIT,
            quoted(text) + " is in another unit than its column, which is in " + ofColumn + ".",
            "Correct the one that is wrong.");
        return null;
      }
      unit = ofCell;
      text = text.substring(0, end).trim();
    }
    String number = number(column, text);
    return number == null ? null : new Quantity(number, unit);
  }

  private Unit usual(Column column) {
    return switch (column.dimension()) {
      case PRESSURE -> draft.notation().pressureUnit();
      case LENGTH -> Unit.INCH;
      case TEMPERATURE -> Unit.CELSIUS;
      case NONE -> throw new IllegalStateException(column.name() + " has no unit.");
    };
  }

  private static Column.Dimension dimension(Unit unit) {
    return switch (unit) {
      case PSI, KPA, BAR -> Column.Dimension.PRESSURE;
      case MM, INCH -> Column.Dimension.LENGTH;
      case CELSIUS, FAHRENHEIT -> Column.Dimension.TEMPERATURE;
    };
  }

  /** An amount in the currency of the row, 0 or more. */
  Money money(Column column) {
    String number = number(column);
    if (number == null) {
      return null;
    }
    String code = text(CURRENCY);
    if (code == null) {
      add(CURRENCY, Fault.MISSING, "It is empty, and the row has amounts.", "Write such as USD.");
      return null;
    }
    java.util.Currency currency;
    try {
      currency = java.util.Currency.getInstance(code.toUpperCase(java.util.Locale.ROOT));
    } catch (IllegalArgumentException e) {
      add(
          CURRENCY,
          Fault.UNKNOWN_CODE,
          quoted(code) + " is no ISO 4217 code.",
          "Write such as USD.");
      return null;
    }
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    BigDecimal amount = new BigDecimal(number);
    if (amount.signum() < 0
        || amount.stripTrailingZeros().scale() > digits
        || amount.precision() - amount.scale() > 12) {
      add(
          column,
          Fault.OUT_OF_RANGE,
          number + " is not an amount of " + currency + ".",
          "Write 0 or more, with at most " + digits + " decimals.");
      return null;
    }
    return new Money(amount.movePointRight(digits).longValueExact(), currency.getCurrencyCode());
  }

  static String quoted(String text) {
    String shown = text.length() > 60 ? text.substring(0, 60) + "..." : text;
    return "'" + shown + "'";
  }
}
