package sealspan.ingest.source;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.RecordType;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Problem.Fault;

/**
 * The rows of a CSV text (RFC 4180). A row may go over several lines inside quotes, up to a cap: a
 * quotation mark that is never closed costs its own line and not the rest of the file.
 */
final class CsvRows {
  /** Most lines of one row. */
  static final int MOST_LINES = 200;

  private static final int MOST_CHARS = 1 << 20;

  /**
   * A row: its cells, or what is wrong with it.
   *
   * @param line line on which it begins, from 1
   * @param lineCount how many lines it goes over
   * @param text the row as it stands in the file
   * @param cells its cells; null where it has a problem
   * @param problem what is wrong; null where it has cells
   */
  record Row(long line, int lineCount, String text, String[] cells, Problem problem) {}

  private final Lines lines;
  private final char separator;
  private final CsvReader.CsvReaderBuilder parser;
  private final Cells handler = new Cells();
  private char[] chars = {};
  private List<Lines.Line> lastLines = List.of();
  private long emptyLines;

  CsvRows(Lines lines, char separator) {
    this.lines = lines;
    this.separator = separator;
    this.parser =
        CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(false)
            .allowExtraFields(true)
            .allowMissingFields(true);
  }

  /** Lines that were skipped because nothing stands in them. */
  long emptyLines() {
    return emptyLines;
  }

  /** The next row; null after the last. */
  Row next() throws IOException {
    Lines.Line line = lines.next();
    while (line != null && isEmpty(line.text())) {
      emptyLines++;
      line = lines.next();
    }
    if (line == null) {
      return null;
    }
    lastLines = List.of();
    Problem problem = problem(line);
    if (problem != null) {
      return new Row(line.number(), 1, line.text(), null, problem);
    }
    if (line.text().indexOf('"') < 0 || !endsInQuotes(line.text(), false)) {
      return parse(line.number(), 1, line.text());
    }
    return severalLines(line);
  }

  /** A line of nothing but separators and blanks, as spreadsheets write below a table. */
  private boolean isEmpty(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c != separator && c > ' ') {
        return false;
      }
    }
    return true;
  }

  /** What is wrong with a line as text; null for nothing. */
  static Problem problem(Lines.Line line) {
    return switch (line.state()) {
      case SOUND -> null;
      case NOT_IN_ENCODING ->
          new Problem(
              null,
              Fault.ENCODING,
              "Line " + line.number() + " has bytes that are not text in the file's encoding.",
              "If the file comes from an older Windows program, try --encoding windows-1252.");
      case TOO_LONG ->
          new Problem(
              null,
              Fault.TOO_LONG,
              "Line " + line.number() + " is longer than " + Lines.LONGEST + " bytes.",
              "Check that the file is a table of rows.");
    };
  }

  private Row severalLines(Lines.Line first) throws IOException {
    List<Lines.Line> further = new ArrayList<>();
    StringBuilder text = new StringBuilder(first.text());
    boolean quoted = true;
    while (quoted && further.size() < MOST_LINES && text.length() < MOST_CHARS) {
      Lines.Line line = lines.next();
      if (line == null) {
        break;
      }
      further.add(line);
      if (line.state() != Lines.State.SOUND) {
        break;
      }
      text.append('\n').append(line.text());
      quoted = endsInQuotes(line.text(), true);
    }
    if (quoted) {
      lines.putBack(further);
      return misquoted(first, "is not closed within " + MOST_LINES + " lines");
    }
    lastLines = new ArrayList<>(further);
    lastLines.add(0, first);
    return parse(first.number(), 1 + further.size(), text.toString());
  }

  private static Row misquoted(Lines.Line first, String what) {
    return new Row(
        first.number(),
        1,
        first.text(),
        null,
        new Problem(
            null,
            Fault.QUOTES,
            "A quotation mark opens a cell on line " + first.number() + " and " + what + ".",
            "Close it, or double it if it belongs to the text."));
  }

  /**
   * Takes the last row as one whose quotation mark should not have joined several lines: its first
   * line is the row, and the others are read again.
   */
  Row takeApart() {
    lines.putBack(lastLines.subList(1, lastLines.size()));
    return misquoted(lastLines.get(0), "what stands up to the next one is no row of this table");
  }

  private Row parse(long number, int lineCount, String text) {
    try {
      boolean plain = text.indexOf('"') < 0;
      String[] cells = plain ? parted(text) : parser.ofSingleCsvRecord(handler, text);
      return new Row(number, lineCount, text, cells, null);
    } catch (CsvParseException e) {
      return new Row(
          number,
          lineCount,
          text,
          null,
          new Problem(
              null,
              Fault.QUOTES,
              "Text follows a closing quotation mark on line " + number + ".",
              "Double the quotation marks that belong to the text, and put the cell in quotes."));
    }
  }

  /** The cells of a line without quotation marks: what stands between its separators. */
  private String[] parted(String text) {
    handler.beginRecord(0);
    int length = text.length();
    if (chars.length < length) {
      chars = new char[2 * length];
    }
    text.getChars(0, length, chars, 0);
    int begin = 0;
    for (int i = 0; i < length; i++) {
      if (chars[i] == separator) {
        handler.addField(chars, begin, i - begin, false);
        begin = i + 1;
      }
    }
    handler.addField(chars, begin, length - begin, false);
    return handler.buildRecord();
  }

  /** Whether a line ends inside quotes; a quotation mark counts only where a cell begins. */
  private boolean endsInQuotes(String line, boolean quotedBefore) {
    boolean quoted = quotedBefore;
    boolean cellBegins = !quotedBefore;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (quoted) {
        if (c == '"') {
          if (i + 1 < line.length() && line.charAt(i + 1) == '"') {
            i++;
          } else {
            quoted = false;
          }
        }
      } else if (c == '"' && cellBegins) {
        quoted = true;
      }
      cellBegins = !quoted && c == separator;
    }
    return quoted;
  }

  /** Collects the cells of one row. */
  private static final class Cells extends CsvCallbackHandler<String[]> {
    private String[] cells = new String[64];
    private int count;

    @Override
    protected RecordType getRecordType() {
      return RecordType.DATA;
    }

    @Override
    protected int getFieldCount() {
      return count;
    }

    @Override
    protected void beginRecord(long startingLineNumber) {
      count = 0;
    }

    @Override
    protected void addField(char[] buffer, int offset, int length, boolean quoted) {
      if (count == cells.length) {
        cells = java.util.Arrays.copyOf(cells, 2 * count);
      }
      cells[count++] = length == 0 ? "" : new String(buffer, offset, length);
    }

    @Override
    protected void setComment(char[] buffer, int offset, int length) {
      throw new IllegalStateException("Comments are not read.");
    }

    @Override
    protected void setEmpty() {
      count = 0;
    }

    @Override
    protected String[] buildRecord() {
      return java.util.Arrays.copyOf(cells, count);
    }
  }
}
