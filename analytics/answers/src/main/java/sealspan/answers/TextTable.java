package sealspan.answers;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/** An answer as a table for people: aligned, numbers to the right, notes beneath. */
public final class TextTable {
  private static final MathContext DIGITS = new MathContext(3);

  private TextTable() {}

  /** The text of an answer, ending in a line break. */
  public static String of(Answer answer) {
    StringBuilder out = new StringBuilder();
    out.append(answer.title()).append('\n');
    out.append("As of: ").append(answer.asOf()).append("\n\n");
    for (String line : answer.words()) {
      Wrapped.append(line, out);
    }
    if (!answer.words().isEmpty()) {
      out.append('\n');
    }
    if (answer.table().rows().isEmpty()) {
      out.append("No rows.\n");
    } else {
      appendRows(answer.table(), out);
    }
    out.append('\n');
    for (String note : answer.notes()) {
      Wrapped.append(note, out);
    }
    return out.toString();
  }

  private static void appendRows(ResultTable table, StringBuilder out) {
    List<List<String>> cells = new ArrayList<>();
    cells.add(table.columns().stream().map(ResultTable.ResultColumn::name).toList());
    for (List<Object> row : table.rows()) {
      cells.add(row.stream().map(TextTable::text).toList());
    }
    int[] widths = new int[table.columns().size()];
    for (List<String> row : cells) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], width(row.get(i)));
      }
    }
    for (int r = 0; r < cells.size(); r++) {
      appendLine(table, cells.get(r), widths, out);
      if (r == 0) {
        appendRule(widths, out);
      }
    }
  }

  private static void appendLine(
      ResultTable table, List<String> row, int[] widths, StringBuilder out) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      String gap = " ".repeat(widths[i] - width(row.get(i)));
      line.append(i == 0 ? "" : "  ");
      line.append(table.columns().get(i).isNumber() ? gap + row.get(i) : row.get(i) + gap);
    }
    out.append(line.toString().stripTrailing()).append('\n');
  }

  private static void appendRule(int[] widths, StringBuilder out) {
    for (int i = 0; i < widths.length; i++) {
      out.append(i == 0 ? "" : "  ").append("-".repeat(widths[i]));
    }
    out.append('\n');
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }

  /** Three significant digits of a number that is not whole; a hyphen for what is not known. */
  static String text(Object value) {
    if (value == null) {
      return "-";
    }
    if (value instanceof Double number) {
      return text(number.doubleValue());
    }
    if (value instanceof Boolean flag) {
      return flag ? "yes" : "no";
    }
    if (value instanceof LocalDateTime time) {
      return time.toInstant(ZoneOffset.UTC).toString();
    }
    return value.toString().replaceAll("\\R", " ");
  }

  private static String text(double number) {
    if (!Double.isFinite(number)) {
      return Double.toString(number);
    }
    BigDecimal exact = BigDecimal.valueOf(number);
    BigDecimal rounded =
        exact.abs().compareTo(BigDecimal.valueOf(100)) >= 0
            ? exact.setScale(0, DIGITS.getRoundingMode())
            : exact.round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
