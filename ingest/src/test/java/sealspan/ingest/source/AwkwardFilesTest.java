package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sealspan.event.GaugeCalibrated;
import sealspan.event.TestPerformed;
import sealspan.ingest.validate.Problem.Fault;
import sealspan.table.QuarantinedRow;

/** Files as they come: each row goes in or comes back with its line and what to do. */
class AwkwardFilesTest {
  private static final Path FOLDER = Path.of("src/test/resources/awkward");

  @TempDir Path folder;

  private static Intaken take(String name) throws Exception {
    return Intaken.of(FOLDER.resolve(name));
  }

  private static Intaken take(String name, String encoding) throws Exception {
    return Intaken.of(FOLDER.resolve(name), Mapping.NONE.inEncoding(encoding), StationZones.NONE);
  }

  private static String refusal(String name) {
    return assertThrows(SourceException.class, () -> take(name)).getMessage();
  }

  private static List<Long> lines(Intaken in) {
    return in.rows.stream().map(QuarantinedRow::line).toList();
  }

  @ParameterizedTest
  @CsvSource({
    "bom-crlf.csv, 2",
    "utf16le.csv, 1",
    "utf16be.csv, 1",
    "carriage-returns.csv, 2",
    "semicolons.csv, 1",
    "sep-line.csv, 1",
    "tabs.csv, 1",
    "empty-lines.csv, 2",
    "only-header.csv, 0"
  })
  void rowsGoInWhateverTheirDress(String name, int tests) throws Exception {
    Intaken in = take(name);
    assertEquals(List.of(), in.rows);
    assertEquals(tests, in.all(TestPerformed.class).size());
    assertTrue(in.summary.isClean());
  }

  @ParameterizedTest
  @CsvSource({
    "empty.csv, is empty",
    "blank.csv, has no header",
    "workbook.xlsx, is a workbook",
    "compressed.csv.gz, is compressed",
    "zero-bytes.csv, has zero bytes",
    "utf16-unmarked.csv, --encoding UTF-16LE",
    "no-such-file.csv, There is no file",
    ".., is a folder",
    "windows-1252-header.csv, --encoding windows-1252",
    "duplicate-header.csv, 'Column ''Assembly ID'' is there twice'",
    "missing-columns.csv, (is it 'asembly_id'?)",
    "no-prefix.csv, found_check1_psid or left_check1_psid",
    "both-forms.csv, belongs to tables with one row per visit"
  })
  void aFileThatCannotBeReadSaysWhy(String name, String words) {
    String message = refusal(name);
    assertTrue(message.contains(words), message);
  }

  @Test
  void theSeparatorThatWasFoundIsStated() throws Exception {
    assertTrue(take("semicolons.csv").summary.notes().contains("separator semicolon"));
    assertTrue(take("tabs.csv").summary.notes().contains("separator tab"));
  }

  @Test
  void emptyLinesAreCountedAndNoRows() throws Exception {
    Intaken in = take("empty-lines.csv");
    assertEquals(2, in.summary.rowsRead());
    assertEquals(4, in.summary.emptyLines());
  }

  @Test
  void aCellMayHoldSeparatorsQuotesAndLines() throws Exception {
    // RFC 4180, section 2, rules 5 to 7.
    Intaken in = take("quotes.csv");
    assertEquals(
        List.of("cover, bonnet\nand \"spring\" seen", "5/8\" bolt"),
        in.all(TestPerformed.class).stream().map(TestPerformed::remarks).toList());
  }

  @Test
  void textOutsideTheBasicPlaneSurvivesUtf16() throws Exception {
    assertEquals("caf\u00e9 \ud83d\udeb0", take("utf16le.csv").only(TestPerformed.class).remarks());
  }

  @Test
  void aWrongEncodingCostsItsRowsAndProposesAnother() throws Exception {
    Intaken in = take("windows-1252.csv");
    assertEquals(2, in.all(TestPerformed.class).size());
    assertEquals(List.of(3L), lines(in));
    assertTrue(in.rows.get(0).reason().contains("--encoding windows-1252"));
    assertTrue(in.rows.get(0).rowText().endsWith("caf\u00e9"));
    Intaken again = take("windows-1252.csv", "windows-1252");
    assertEquals(3, again.all(TestPerformed.class).size());
    assertEquals("caf\u00e9", again.all(TestPerformed.class).get(1).remarks());
  }

  @Test
  void anUnclosedQuoteCostsItsOwnLine() throws Exception {
    Intaken in = take("unclosed-quote.csv");
    assertEquals(List.of(3L), lines(in));
    assertEquals(3, in.all(TestPerformed.class).size());
    Intaken stray = take("stray-quote.csv");
    assertEquals(List.of(3L), lines(stray));
    assertEquals(4, stray.all(TestPerformed.class).size());
    Intaken after = take("text-after-quote.csv");
    assertEquals(List.of(2L), lines(after));
    assertEquals(1, after.all(TestPerformed.class).size());
  }

  @Test
  void anUnclosedQuoteDoesNotSwallowALongFile() throws Exception {
    StringBuilder text = new StringBuilder("assembly_id,date,found_check1_psid,found_remarks\n");
    text.append("BF-0,2025-04-01,1.2,\"left open\n");
    for (int i = 1; i <= 5000; i++) {
      text.append("BF-").append(i).append(",2025-04-01,1.2,fine\n");
    }
    Intaken in = Intaken.ofText(folder, "long.csv", text.toString());
    assertEquals(5000, in.events.size());
    assertEquals(List.of(2L), lines(in));
  }

  @Test
  void aLineWithoutEndIsCutOffAndTheNextIsRead() throws Exception {
    String text =
        "assembly_id,date,found_check1_psid\nBF-1,2025-04-01,"
            + "x".repeat(3 << 20)
            + "\nBF-2,2025-04-01,1.2\n";
    Intaken in = Intaken.ofText(folder, "wide.csv", text);
    assertEquals(1, in.events.size());
    assertEquals(Map.of(Fault.TOO_LONG, 1L), in.summary.rejectedByFault());
    assertTrue(in.rows.get(0).rowText().length() < 1000);
  }

  @Test
  void cellsTooManyAndTooFewAreNamed() throws Exception {
    Intaken in = take("cell-counts.csv");
    assertEquals(List.of(3L, 4L), lines(in));
    assertTrue(in.rows.get(0).reason().contains("6 cells, and the header has 5"));
    assertTrue(in.rows.get(1).reason().contains("3 cells, and the header has 5"));
    assertEquals(2, in.all(TestPerformed.class).size());
  }

  @Test
  void aFileOfOnlyErrorsSaysSoRowByRow() throws Exception {
    Intaken in = take("only-errors.csv");
    assertEquals(0, in.events.size());
    assertEquals(3, in.summary.rejectedRows());
    assertEquals(
        Map.of(Fault.NOT_A_DAY, 1L, Fault.UNKNOWN_CODE, 1L, Fault.MISSING, 1L),
        in.summary.rejectedByFault());
    assertEquals(false, in.summary.isClean());
  }

  @Test
  void linesOfJsonFailOneByOne() throws Exception {
    Intaken in = take("lines.jsonl");
    assertEquals(List.of(3L, 4L, 5L), lines(in));
    assertTrue(in.rows.get(0).reason().contains("Did you mean check1_psid?"));
    assertEquals(1, in.summary.emptyLines());
    assertEquals("1.20", in.only(TestPerformed.class).readings().get(0).value().entered());
    assertEquals("-0.1", in.only(GaugeCalibrated.class).errorAsFound().entered());
  }

  @Test
  void everyAwkwardFileIsTried() throws Exception {
    // A file that no test reads shows nothing: each is read here at least, without surprise.
    try (var files = Files.list(FOLDER)) {
      for (Path file : files.sorted().toList()) {
        try {
          Intaken in = Intaken.of(file);
          assertEquals(
              in.summary.rowsRead(),
              in.summary.rejectedRows()
                  + in.all(TestPerformed.class).size()
                  + in.all(GaugeCalibrated.class).size(),
              file.toString());
        } catch (SourceException e) {
          assertTrue(e.getMessage().endsWith(".") || e.getMessage().endsWith(")"), e.getMessage());
        }
      }
    }
  }
}
