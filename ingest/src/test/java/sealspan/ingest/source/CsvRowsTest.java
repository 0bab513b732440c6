package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Rows of CSV texts, held to RFC 4180 and to an independent reader of whole files. */
class CsvRowsTest {
  private static List<String[]> read(String text, char separator) throws IOException {
    CsvRows rows =
        new CsvRows(
            new Lines(
                new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                StandardCharsets.UTF_8),
            separator);
    List<String[]> cells = new ArrayList<>();
    for (CsvRows.Row row = rows.next(); row != null; row = rows.next()) {
      assertNull(row.problem(), () -> "problem in " + text);
      cells.add(row.cells());
    }
    return cells;
  }

  @Test
  void theExamplesOfRfc4180() throws IOException {
    // RFC 4180, section 2: rules 1, 2, 5, 6 and 7.
    assertArrayEquals(
        new String[][] {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}},
        read("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", ',').toArray());
    assertArrayEquals(
        new String[][] {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}},
        read("aaa,bbb,ccc\r\nzzz,yyy,xxx", ',').toArray());
    assertArrayEquals(
        new String[][] {{"aaa", "b\nbb", "ccc"}, {"zzz", "yyy", "xxx"}},
        read("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", ',').toArray());
    assertArrayEquals(
        new String[][] {{"aaa", "b\"bb", "ccc"}},
        read("\"aaa\",\"b\"\"bb\",\"ccc\"", ',').toArray());
  }

  @Property(tries = 500, seed = "4180")
  void whatAWriterWritesIsReadBack(
      @ForAll("tables") List<List<String>> table, @ForAll("separators") char separator)
      throws IOException {
    StringWriter text = new StringWriter();
    CsvWriter writer =
        CsvWriter.builder()
            .fieldSeparator(separator)
            .lineDelimiter(LineDelimiter.LF)
            .quoteStrategy(QuoteStrategies.REQUIRED)
            .build(text);
    // A first cell with text keeps each row from being an empty line.
    for (List<String> row : table) {
      List<String> whole = new ArrayList<>(row);
      whole.add(0, "x");
      writer.writeRecord(whole);
    }
    List<String[]> read = read(text.toString(), separator);
    List<CsvRecord> oracle =
        CsvReader.builder().fieldSeparator(separator).ofCsvRecord(text.toString()).stream()
            .toList();
    assertEquals(oracle.size(), read.size());
    for (int i = 0; i < read.size(); i++) {
      assertEquals(oracle.get(i).getFields(), List.of(read.get(i)));
      assertEquals(table.get(i), List.of(read.get(i)).subList(1, read.get(i).length));
    }
  }

  @Property(tries = 300, seed = "4180")
  void linesKnowTheirNumbersWhateverEndsThem(
      @ForAll("plainLines") List<String> lines, @ForAll("ends") String end) throws IOException {
    String text = String.join(end, lines) + end;
    Lines read =
        new Lines(
            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
            StandardCharsets.UTF_8);
    for (int i = 0; i < lines.size(); i++) {
      Lines.Line line = read.next();
      assertEquals(lines.get(i), line.text());
      assertEquals(i + 1, line.number());
    }
    assertNull(read.next());
  }

  @Provide
  Arbitrary<List<List<String>>> tables() {
    Arbitrary<String> cell =
        Arbitraries.strings().withChars("ab,;\t|\"\n \u00e9\u4e2d").ofMaxLength(6);
    return cell.list().ofMinSize(1).ofMaxSize(5).list().ofMinSize(1).ofMaxSize(6);
  }

  @Provide
  Arbitrary<Character> separators() {
    return Arbitraries.of(',', ';', '\t', '|');
  }

  @Provide
  Arbitrary<List<String>> plainLines() {
    return Arbitraries.strings()
        .alpha()
        .ofMinLength(1)
        .ofMaxLength(8)
        .list()
        .ofMinSize(1)
        .ofMaxSize(9);
  }

  @Provide
  Arbitrary<String> ends() {
    return Arbitraries.of("\n", "\r\n", "\r");
  }
}
