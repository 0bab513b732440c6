package sealspan.ingest.source;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Problem.Fault;

/** A CSV file past its header. */
final class CsvFile {
  private final TextFile file;
  private final String name;
  private final CsvRows rows;
  private final char separator;
  private final List<String> header;
  private final long headerLine;

  private CsvFile(TextFile file, String name, CsvRows rows, char separator, CsvRows.Row header) {
    this.file = file;
    this.name = name;
    this.rows = rows;
    this.separator = separator;
    List<String> names = new ArrayList<>();
    for (String each : header.cells()) {
      names.add(each.trim());
    }
    while (names.size() > 1 && names.get(names.size() - 1).isEmpty()) {
      names.remove(names.size() - 1);
    }
    this.header = List.copyOf(names);
    this.headerLine = header.line();
  }

  /**
   * Reads the header.
   *
   * @throws SourceException where the file has none that can be read
   */
  static CsvFile open(TextFile file, String name, Mapping mapping)
      throws SourceException, IOException {
    Lines lines = new Lines(file.bytes(), file.charset());
    for (int i = 0; i < mapping.skipLines(); i++) {
      lines.next();
    }
    Lines.Line first = lines.next();
    while (first != null && first.text().isBlank()) {
      first = lines.next();
    }
    if (first == null) {
      throw new SourceException(name + " has no header: nothing stands in it but empty lines.");
    }
    Character separator = mapping.separator();
    if (first.text().length() == 5 && first.text().startsWith("sep=")) {
      separator = separator == null ? Character.valueOf(first.text().charAt(4)) : separator;
    } else {
      lines.putBack(List.of(first));
      separator = separator == null ? Character.valueOf(Separators.of(first.text())) : separator;
    }
    CsvRows rows = new CsvRows(lines, separator);
    CsvRows.Row header = rows.next();
    if (header == null) {
      throw new SourceException(name + " has no header. Its first line names the columns.");
    }
    if (header.problem() != null) {
      throw new SourceException(
          name + ", line " + header.line() + " (the header): " + header.problem().text());
    }
    return new CsvFile(file, name, rows, separator, header);
  }

  TextFile file() {
    return file;
  }

  String name() {
    return name;
  }

  List<String> header() {
    return header;
  }

  long headerLine() {
    return headerLine;
  }

  long emptyLines() {
    return rows.emptyLines();
  }

  List<String> notes() {
    return List.of("separator " + Separators.name(separator), "encoding " + file.charset().name());
  }

  /** The next row with as many cells as the header has, or with a problem; null after the last. */
  CsvRows.Row next() throws IOException {
    CsvRows.Row row = rows.next();
    if (row == null) {
      return null;
    }
    if (row.problem() != null) {
      return row.lineCount() > 1 ? rows.takeApart() : row;
    }
    int cells = row.cells().length;
    if (cells == header.size()) {
      return row;
    }
    if (cells > header.size() && isBlankFrom(row.cells(), header.size())) {
      String[] kept = Arrays.copyOf(row.cells(), header.size());
      return new CsvRows.Row(row.line(), row.lineCount(), row.text(), kept, null);
    }
    if (row.lineCount() > 1) {
      return rows.takeApart();
    }
    Problem problem =
        new Problem(
            null,
            Fault.CELL_COUNT,
            "The row has " + cells + " cells, and the header has " + header.size() + ".",
            cells > header.size()
                ? "Put a cell that holds a " + Separators.name(separator) + " in quotation marks."
                : "Write the missing cells, empty where nothing is recorded.");
    return new CsvRows.Row(row.line(), 1, row.text(), null, problem);
  }

  private static boolean isBlankFrom(String[] cells, int from) {
    for (int i = from; i < cells.length; i++) {
      if (!cells[i].isBlank()) {
        return false;
      }
    }
    return true;
  }
}
