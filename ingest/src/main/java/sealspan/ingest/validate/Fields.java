package sealspan.ingest.validate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.Moment;
import sealspan.event.Money;
import sealspan.event.Quantity;
import sealspan.ingest.validate.Problem.Fault;

/**
 * The fields of one block of a row, read by their documented columns. What cannot be read becomes a
 * problem and reads as not recorded, so that one pass finds all problems of a row.
 */
final class Fields {
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

  LocalDate latestDay() {
    return latestDay;
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

  /** The filled cell of a column; -1 for none. */
  int cell(Column column) {
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

  static String trimmed(String text) {
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

  // ---- days and numbers

  /** A day on which something happened: from 1900 on, and not later than the latest day. */
  LocalDate pastDay(Column column) {
    return DayFields.pastDay(this, column);
  }

  /** A day up to which something is valid. */
  LocalDate validityDay(Column column) {
    return DayFields.validityDay(this, column);
  }

  /**
   * When something happened; null where the day cannot be read.
   *
   * @param time column of the time of day; null where the cell of the day may tell it
   */
  Moment moment(Column date, Column time) {
    return DayFields.moment(this, date, time);
  }

  Integer minuteOfDay(Column column) {
    return DayFields.minuteOfDay(this, column);
  }

  /** The time zone of the row, else that of the file; null where neither tells. */
  String timeZone() {
    return DayFields.timeZone(this);
  }

  /** A whole number within bounds, both included. */
  Integer whole(Column column, int least, int greatest) {
    return NumberFields.whole(this, column, least, greatest);
  }

  /** A number within bounds, both included. */
  Double decimal(Column column, double least, double greatest) {
    return NumberFields.decimal(this, column, least, greatest);
  }

  /** A number as decimal text with a point. */
  String number(Column column) {
    return NumberFields.number(this, column);
  }

  /** A number, 0 or more, with its unit. */
  Quantity quantityFromZero(Column column) {
    return NumberFields.quantityFromZero(this, column);
  }

  /** A number with the unit that the cell, the column or the file names. */
  Quantity quantity(Column column) {
    return NumberFields.quantity(this, column);
  }

  /** An amount in the currency of the row, 0 or more. */
  Money money(Column column) {
    return NumberFields.money(this, column);
  }

  static String quoted(String text) {
    String shown = text.length() > 60 ? text.substring(0, 60) + "..." : text;
    return "'" + shown + "'";
  }
}
