package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyType;
import sealspan.event.LoggedEvent;
import sealspan.event.Quantity;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed;
import sealspan.event.Unit;

/** Other people's spreadsheets, read by a mapping. */
class MappingTest {
  @TempDir Path folder;

  private static final String GERMAN =
      """
      {
        // a spreadsheet from another place
        "columns": {"Anlage": "assembly_id", "Bauart": "type", "Datum": "date",
                    "Zeit": "time", "RV1": "found_check1", "Ergebnis": "found_verdict",
                    "Telefon": ""},
        "constants": {"jurisdiction": "iowa-city", "found_purpose": "routine"},
        "values": {"Bauart": {"Systemtrenner BA": "RP"}, "found_verdict": {"bestanden": "passed"}},
        "pressureUnit": "kPa", "decimalMark": ",", "dateFormats": ["d.M.yyyy"],
        "timeZone": "America/Denver", "source": "ridge", "usualReportLagDays": 5,
      }
      """;

  private Intaken take(String mapping, String table) throws Exception {
    Mapping read = MappingFile.parse(mapping, "test");
    Intaken in = new Intaken();
    Path file = Intaken.write(folder, "table.csv", table.getBytes());
    in.take(file, read, StationZones.NONE, read.intake(Intaken.TODAY));
    return in;
  }

  @Test
  void columnsUnitsDaysDecimalsZoneAndWordsAreTranslated() throws Exception {
    Intaken in =
        take(
            GERMAN,
            "Anlage;Bauart;Datum;Zeit;RV1;Ergebnis;Telefon\n"
                + "FR-1;SYSTEMTRENNER BA;4.3.2025;9:05;48,30;Bestanden;555\n");
    assertEquals(List.of(), in.rows);
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals(new Quantity("48.30", Unit.KPA), test.readings().get(0).value());
    assertEquals(LocalDate.of(2025, 3, 4), test.when().day());
    assertEquals(545, test.when().minuteOfDay());
    assertEquals("America/Denver", test.when().timeZone());
    assertEquals(TestPerformed.IssuedVerdict.PASSED, test.verdictIssued());
    assertEquals(TestPerformed.Purpose.ROUTINE, test.purpose());
    assertEquals(AssemblyType.RP, in.only(AssemblyInstalled.class).type());
    assertEquals("iowa-city", in.only(SiteDescribed.class).jurisdiction());
    LoggedEvent logged = in.events.get(0);
    assertEquals("ridge", logged.source());
    assertEquals(LoggedEvent.ReportedOrigin.ASSUMED, logged.reportedOrigin());
    // 9 March 2025 was the first day of daylight saving time in Denver: UTC-6 at its end.
    assertEquals(Instant.parse("2025-03-10T05:59:00Z"), logged.reportedAt());
  }

  @ParameterizedTest
  @CsvSource({
    "8.2, 8.2, PSI",
    "56.5 kPa, 56.5, KPA",
    "0.57 bar, 0.57, BAR",
    "8.2psid, 8.2, PSI",
    "+8.20, 8.20, PSI"
  })
  void aCellMayNameItsUnit(String cell, String number, Unit unit) throws Exception {
    Intaken in =
        take(
            "{\"columns\": {\"CV1\": \"found_check1\"}}",
            "assembly_id,date,CV1\nBF-1,2025-04-17," + cell + "\n");
    assertEquals(
        new Quantity(number, unit), in.only(TestPerformed.class).readings().get(0).value());
  }

  @ParameterizedTest
  @CsvSource({
    "'1,2'",
    "'<1'",
    "1.2.3",
    "1e2",
    "8 furlongs",
    "-1",
    "13.8 kPa",
    "0x10",
    "'1 200'",
    "NaN"
  })
  void whatIsNoReadingOfThatColumnIsRefused(String cell) throws Exception {
    Intaken in =
        Intaken.ofText(
            folder,
            "table.csv",
            "assembly_id,date,found_check1_psid\nBF-1,2025-04-17,\"" + cell + "\"\n");
    assertEquals(1, in.summary.rejectedRows(), in.events.toString());
    assertEquals("found_check1_psid", in.rows.get(0).field());
  }

  @Test
  void pressuresKeepTheUnitOfTheirColumn() throws Exception {
    Intaken in =
        Intaken.ofText(
            folder,
            "table.csv",
            "assembly_id,date,found_check1_kpa,line_pressure_bar\nBF-1,2025-04-17,6.88,4.1\n");
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals(new Quantity("6.88", Unit.KPA), test.readings().get(0).value());
    assertEquals(new Quantity("4.1", Unit.BAR), test.linePressure());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"colums\": {}} | Did you mean columns?",
        "{\"columns\": {\"a\": \"found_chek1_psid\"}} | Did you mean found_check1_psid?",
        "{\"constants\": {\"jurisdicton\": \"x\"}} | Did you mean jurisdiction?",
        "{\"values\": []} | values is no object",
        "[1] | it is no JSON object",
        "{\"columns\": | this is not JSON",
        "{\"decimalMark\": \";\"} | decimalMark is ';'",
        "{\"pressureUnit\": \"mmHg\"} | Write psi, kPa or bar",
        "{\"timeZone\": \"Denver\"} | is no time zone",
        "{\"dateFormats\": [\"day\"]} | dateFormats",
        "{\"separator\": \"::\"} | separator is '::'",
        "{\"skipLines\": -1} | skipLines"
      })
  void aMappingThatIsWrongNamesTheKey(String mapping, String words) {
    SourceException wrong =
        assertThrows(SourceException.class, () -> MappingFile.parse(mapping, "test"));
    assertTrue(wrong.getMessage().contains(words), wrong.getMessage());
  }

  @Test
  void columnsOfTheMappingThatAreAbsentAreNamed() throws Exception {
    Intaken in =
        take(
            "{\"columns\": {\"CV1\": \"found_check1\", \"CV2\": \"found_check2\"}}",
            "assembly_id,date,CV1,Fax\nBF-1,2025-04-17,1.2,no\n");
    String notes = String.join("; ", in.summary.notes());
    assertTrue(notes.contains("that the file does not have: CV2"), notes);
    assertTrue(notes.contains("columns not used: Fax"), notes);
  }

  @Test
  void aFirstMappingIsProposedFromTheWordsOfTheTrade() throws Exception {
    Path file =
        Intaken.write(
            folder,
            "theirs.csv",
            ("Device No,Device Type,Size,Serial #,Test Date,Tester Name,Test Kit Serial,Cal Date,"
                    + "Line Pressure,Initial CV1,Initial CV2,Initial RV,Initial Result,CV1 Repairs,"
                    + "Final CV1 (kPa),Final Result,Bypass Initial CV1,Owner Phone\n"
                    + "D-1,RPZ,3/4,991,4/17/2025,T-1,G-1,1/10/2025,62,8.2,1.4,2.6,Pass,,,,,555\n")
                .getBytes());
    MappingProposal proposal = Sources.propose(file, Mapping.NONE);
    assertEquals(
        List.of(
            "assembly_id",
            "type",
            "size",
            "serial",
            "date",
            "tester_id",
            "gauge_id",
            "gauge_calibrated_on",
            "line_pressure_psid",
            "found_check1_psid",
            "found_check2_psid",
            "found_relief_psid",
            "found_verdict",
            "repair_check1_action",
            "left_check1_kpa",
            "left_verdict",
            "bypass_found_check1_psid"),
        List.copyOf(proposal.columns().values()));
    assertEquals(List.of("Owner Phone"), proposal.unplaced());
    assertEquals(List.of("M/d/yyyy"), proposal.dateFormats());
    assertEquals(List.of(), proposal.missing());
    Mapping mapping = MappingFile.parse(proposal.json(), "proposal");
    Intaken in = Intaken.of(file, mapping, StationZones.NONE);
    assertEquals(List.of(), in.rows);
    assertEquals(3, in.only(TestPerformed.class).readings().size());
  }

  @Test
  void aDayThatCanBeReadTwoWaysIsPutToThePerson() {
    MappingProposal proposal =
        MappingProposal.of(
            List.of("Tag", "Date Tested"), List.<String[]>of(new String[] {"D-1", "3/4/2025"}));
    assertTrue(proposal.notes().get(0).contains("M/d/yyyy and d/M/yyyy"));
    assertTrue(proposal.json().contains("// The first rows fit both"));
  }

  @Test
  void theOnlyUnplacedColumnOfDaysIsTakenAsTheDayOfTheVisit() {
    List<String[]> rows =
        List.of(
            new String[] {"D-1", "31.12.2024", "20240105", "1.4"},
            new String[] {"D-2", "", "20240106", "1.6"});
    MappingProposal proposal =
        MappingProposal.of(List.of("Tag", "Besuch", "Laufnummer", "Wert"), rows);
    assertEquals("date", proposal.columns().get("Besuch"));
    assertEquals(List.of("d.M.yyyy"), proposal.dateFormats());
    assertEquals(List.of(), proposal.missing());
    assertTrue(proposal.json().contains("// 'Besuch' is taken as the day of the visit"));
    MappingProposal two =
        MappingProposal.of(
            List.of("Tag", "Besuch", "Bezahlt"),
            List.<String[]>of(new String[] {"D-1", "31.12.2024", "30.1.2025"}));
    assertEquals(List.of("date"), two.missing(), "which of two columns it is, a person has to say");
  }

  @Test
  void theExampleOfTheGuideIsAMapping() throws Exception {
    String guide = MappingFile.guide();
    int begin = guide.indexOf("```json") + 7;
    Mapping mapping =
        MappingFile.parse(guide.substring(begin, guide.indexOf("```", begin)), "guide");
    assertEquals("assembly_id", mapping.columns().get("Device No"));
    assertEquals(5, mapping.usualReportLagDays());
  }
}
