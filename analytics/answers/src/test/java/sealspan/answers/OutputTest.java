package sealspan.answers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.answers.ResultTable.ResultColumn;

class OutputTest {
  private static final Answer ANSWER =
      new Answer(
          "mixed",
          "What is it?",
          "2 events",
          new ResultTable(
              List.of(
                  new ResultColumn("it's", "VARCHAR"),
                  new ResultColumn("whole", "BIGINT"),
                  new ResultColumn("share", "DOUBLE"),
                  new ResultColumn("money", "DECIMAL(10,2)"),
                  new ResultColumn("day", "DATE"),
                  new ResultColumn("at", "TIMESTAMP"),
                  new ResultColumn("flag", "BOOLEAN"),
                  new ResultColumn("list", "VARCHAR[]")),
              List.of(
                  Arrays.asList(
                      "say \"a\", 'b'\nand c",
                      7L,
                      1.0 / 3,
                      new BigDecimal("12.50"),
                      LocalDate.of(2024, 2, 29),
                      LocalDateTime.of(2024, 3, 1, 12, 0),
                      true,
                      "[x, y]"),
                  Arrays.asList("", null, Double.NaN, null, null, null, null, null),
                  Arrays.asList("Düne", 12_345L, 1234.5, null, null, null, false, null))),
          List.of("n = 3", "Caution: it's invented."));

  /** Outside check: line ends, quoting and doubled quotes are those of RFC 4180, section 2. */
  @Test
  void csvIsThatOfTheStandard() throws IOException {
    StringWriter out = new StringWriter();
    CsvText.write(ANSWER, out);
    assertEquals(
        "it's,whole,share,money,day,at,flag,list\r\n"
            + "\"say \"\"a\"\", 'b'\nand c\",7,0.3333333333333333,12.50,2024-02-29,"
            + "2024-03-01T12:00:00Z,true,\"[x, y]\"\r\n"
            + "\"\",,NaN,,,,,\r\n"
            + "Düne,12345,1234.5,,,,false,\r\n",
        out.toString());
  }

  @Test
  void jsonHasRowsAndWhatIsNeededToJudgeThem() throws IOException {
    StringWriter out = new StringWriter();
    JsonText.write(ANSWER, out);
    JsonNode json = new ObjectMapper().readTree(out.toString());
    assertEquals("mixed", json.path("question").asText());
    assertEquals("2 events", json.path("as_of").asText());
    assertEquals("Caution: it's invented.", json.path("notes").path(1).asText());
    JsonNode first = json.path("rows").path(0);
    assertEquals("say \"a\", 'b'\nand c", first.path("it's").asText());
    assertEquals(7, first.path("whole").asInt());
    assertEquals(1.0 / 3, first.path("share").asDouble());
    assertEquals("2024-02-29", first.path("day").asText());
    assertEquals("2024-03-01T12:00:00Z", first.path("at").asText());
    assertTrue(first.path("flag").isBoolean());
    JsonNode second = json.path("rows").path(1);
    assertTrue(second.path("share").isNull(), "JSON has no NaN");
    assertTrue(second.path("whole").isNull());
    assertTrue(out.toString().endsWith("}\n"));
  }

  @Test
  void parquetKeepsTypesAndNotes(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("it's.parquet");
    ParquetFile.write(ANSWER, file);
    String read = "'" + file.toString().replace("'", "''") + "'";
    assertEquals(
        "say \"a\", 'b'\nand c|7|12.50|2024-02-29|2024-03-01 12:00:00|true|[x, y]",
        text(
            "select concat_ws('|', \"it's\", whole, money, day, \"at\", flag, list) from "
                + read
                + " limit 1"));
    assertEquals("BIGINT", text("select typeof(whole) from " + read));
    assertEquals("DECIMAL(10,2)", text("select typeof(money) from " + read));
    assertEquals("3", text("select count(*) from " + read));
    assertEquals(
        "n = 3\nCaution: it's invented.",
        text("select decode(value) from parquet_kv_metadata(" + read + ") where key = 'notes'"));
    assertEquals(List.of("it's.parquet"), Arrays.asList(folder.toFile().list()));
  }

  @Test
  void saysThatAFileCannotBeWritten(@TempDir Path folder) {
    Path file = folder.resolve("nowhere").resolve("x.parquet");
    AnswersException e =
        assertThrows(AnswersException.class, () -> ParquetFile.write(ANSWER, file));
    assertTrue(e.getMessage().startsWith("The file " + file + " cannot be written"));
    assertFalse(Files.exists(file));
  }

  @Test
  void theTableForPeopleAlignsNumbersToTheRight() {
    assertEquals(
        """
        What is it?
        As of: 2 events

        it's                whole  share  money  day         at                    flag  list
        ------------------  -----  -----  -----  ----------  --------------------  ----  ------
        say "a", 'b' and c      7  0.333  12.50  2024-02-29  2024-03-01T12:00:00Z  yes   [x, y]
                                -    NaN      -  -           -                     -     -
        Düne                12345   1235      -  -           -                     no    -

        n = 3
        Caution: it's invented.
        """,
        TextTable.of(ANSWER));
  }

  private static String text(String sql) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getString(1);
    }
  }
}
