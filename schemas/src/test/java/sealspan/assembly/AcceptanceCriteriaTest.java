package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.day;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sealspan.event.AssemblyType;

class AcceptanceCriteriaTest {
  private static final String HEADER = String.join(",", CriteriaTable.COLUMNS) + "\n";

  private static Map<String, String> limits(String jurisdiction, AssemblyType type, String day) {
    Map<String, String> words = new TreeMap<>();
    for (Criterion row :
        AcceptanceCriteria.shipped().limits(jurisdiction, type, day(day), null, null)) {
      words.put(
          row.at().text() + " " + row.measure().name().toLowerCase(java.util.Locale.ROOT),
          row.words() + " " + row.strength().name().toLowerCase(java.util.Locale.ROOT));
    }
    return words;
  }

  /** Source: City of Iowa City, backflow test form of 9/02. */
  @Test
  void iowaCityForm() {
    assertEquals(
        Map.of(
            "relief_valve opening_point", "at least 2.0 psid required",
            "check1 static_drop", "at least 5.0 psid required",
            "check1 buffer", "at least 3.0 psid required",
            "check2 direction_of_flow", "at least 1.0 psid required",
            "check2 backpressure_tightness", "closed tight required"),
        limits("iowa-city", AssemblyType.RP, "2010-05-05"));
    assertEquals(
        Map.of(
            "check1 direction_of_flow", "at least 1.0 psid required",
            "check2 direction_of_flow", "at least 1.0 psid required",
            "check1 backpressure_tightness", "closed tight optional",
            "check2 backpressure_tightness", "closed tight optional"),
        limits("iowa-city", AssemblyType.DC, "2010-05-05"));
    assertEquals(
        Map.of(
            "air_inlet opening_point", "at least 1.0 psid required",
            "check1 direction_of_flow", "at least 1.0 psid required"),
        limits("iowa-city", AssemblyType.PVB, "2010-05-05"));
    assertEquals(
        Map.of(
            "air_inlet opening_point", "at least 1.0 psid required",
            "air_inlet full_opening", "opened optional",
            "check1 direction_of_flow", "at least 1.0 psid required"),
        limits("iowa-city", AssemblyType.SVB, "2010-05-05"));
  }

  /** Source: City of Toronto, building test form after CSA B64. */
  @Test
  void torontoForm() {
    assertEquals(
        Map.of(
            "relief_valve opening_point", "at least 2.0 psid required",
            "check1 buffer", "at least 3.0 psid required"),
        limits("toronto", AssemblyType.RP, "2020-05-05"));
    assertEquals(
        Map.of(
            "check1 direction_of_flow", "at least 1.0 psid required",
            "check2 direction_of_flow", "at least 1.0 psid required"),
        limits("toronto", AssemblyType.DC, "2020-05-05"));
  }

  /** Source: New England Water Works Association, three-valve procedure of January 2010. */
  @Test
  void newEnglandProcedure() {
    Map<String, String> both =
        Map.of(
            "check1 direction_of_flow", "at least 1.0 psid required",
            "check2 direction_of_flow", "at least 1.0 psid required");
    assertEquals(both, limits("newwa", AssemblyType.DC, "2010-01-01"));
    assertEquals(Map.of(), limits("newwa", AssemblyType.DC, "2009-12-31"));
    assertEquals(Map.of(), limits("newwa", AssemblyType.RP, "2012-01-01"));
  }

  /**
   * Arithmetic of the two forms: 2.0 + 3.0 = 5.0, so the drop of check 1 adds no limit of its own.
   */
  @Test
  void theDefaultDropOfCheck1FollowsFromReliefAndBuffer() {
    Map<String, String> rows = limits(null, AssemblyType.RP, "2020-05-05");
    assertEquals("at least 5.0 psid required", rows.get("check1 static_drop"));
    assertEquals("at least 2.0 psid required", rows.get("relief_valve opening_point"));
    assertEquals("at least 3.0 psid required", rows.get("check1 buffer"));
  }

  @Test
  void aNamedJurisdictionIsNeverJudgedByTheLimitsOfAnother() {
    assertEquals(Map.of(), limits("Springfield", AssemblyType.DC, "2020-05-05"));
    assertEquals(2, limits(null, AssemblyType.DC, "2020-05-05").size());
    assertEquals(2, limits("  ", AssemblyType.DC, "2020-05-05").size());
    assertEquals(2, limits("TORONTO", AssemblyType.DC, "2020-05-05").size());
  }

  @Test
  void everyShippedRowHasASource() {
    CriteriaTable table = CriteriaTable.read(AcceptanceCriteria.shipped().csv());
    assertTrue(table.limits().size() > 25);
    assertTrue(table.limits().stream().noneMatch(row -> row.source().isBlank()));
    assertTrue(table.rules().stream().noneMatch(row -> row.source().isBlank()));
  }

  private static List<Criterion> limits(String rows, String day, String method, String edition) {
    return new AcceptanceCriteria(HEADER + rows)
        .limits("x", AssemblyType.DC, day(day), method, edition);
  }

  private static String row(String method, String edition, String from, String to, String limit) {
    return "x,dc,check1,direction_of_flow,"
        + String.join(",", method, edition, from, to)
        + ",at_least,"
        + limit
        + ",psi,before_rounding,required,,mine\n";
  }

  @Test
  void theRowThatNamesMethodAndEditionGoesFirstThenTheNewest() {
    String rows =
        row("", "", "", "", "1.0")
            + row("", "", "2020-01-01", "", "1.1")
            + row("backpressure", "", "", "", "2.0")
            + row("backpressure", "9", "", "2019-12-31", "2.1");
    assertEquals("1.0", limits(rows, "2019-12-31", null, null).get(0).limit().toString());
    assertEquals("1.1", limits(rows, "2020-01-01", null, null).get(0).limit().toString());
    assertEquals("2.0", limits(rows, "2020-01-01", "BACKPRESSURE", "9").get(0).limit().toString());
    assertEquals("2.1", limits(rows, "2019-12-31", "backpressure", "9").get(0).limit().toString());
    assertEquals("2.0", limits(rows, "2019-12-31", "backpressure", "8").get(0).limit().toString());
    assertEquals(1, limits(rows, "2020-01-01", "backpressure", "9").size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "x,dc,check1,direction_of_flow,,,,,at_least,1.o,psi,before_rounding,required,,s | limit"
            + " | '1.o' is not a number",
        "x,dd,check1,direction_of_flow,,,,,at_least,1.0,psi,before_rounding,required,,s"
            + " | assembly_type | 'dd' is not known here",
        "x,dc,check9,direction_of_flow,,,,,at_least,1.0,psi,before_rounding,required,,s"
            + " | component | 'check9' is no component",
        "x,dc,check1,direction_of_flow,,,2020-13-01,,at_least,1.0,psi,before_rounding,required,,s"
            + " | valid_from | '2020-13-01' is not a day",
        "x,dc,check1,direction_of_flow,,,,,at_least,1.0,psi,before_rounding,required,,"
            + " | source | it is empty",
        "x,rp,check1,buffer,,,,,at_least,3.0,psi,before_rounding,required,check1 + relief,s"
            + " | derived | 'check1 + relief' is no difference",
        "x,,gauge,accuracy,,,,,,0,psi,,,,s | limit | '0' is not possible",
        "x,,gauge,calibration_interval,,,,,,12,days,,,,s | unit | an interval is given in months",
        "x,,gauge,weight,,,,,,12,psi,,,,s | measure | 'weight' is nothing that a gauge has",
        "x,dc,check1,direction_of_flow,,,2020-01-02,2020-01-01,at_least,1.0,psi,before_rounding,"
            + "required,,s | valid_to | 2020-01-01 is before valid_from",
        "x,dc,check1,direction_of_flow,,,,,is,tight,,,required,,s | limit | 'tight' is not known",
      })
  void anErrorNamesLineAndColumn(String row, String column, String what) {
    CriteriaException wrong =
        assertThrows(
            CriteriaException.class,
            () -> new AcceptanceCriteria("# mine\n" + HEADER + row + "\n"));
    assertTrue(
        wrong.getMessage().startsWith("Criteria table, line 3, column " + column + ": " + what),
        wrong.getMessage());
  }

  @Test
  void twoRowsForOneLimitAreRefused() {
    String rows = row("", "", "", "", "1.0") + row("", "", "", "", "1.1");
    CriteriaException wrong =
        assertThrows(CriteriaException.class, () -> new AcceptanceCriteria(HEADER + rows));
    assertTrue(wrong.getMessage().contains("line 3"), wrong.getMessage());
    assertTrue(wrong.getMessage().contains("as line 2"), wrong.getMessage());
  }

  @Test
  void aMissingColumnIsNamed() {
    CriteriaException wrong =
        assertThrows(
            CriteriaException.class, () -> new AcceptanceCriteria("jurisdiction,component\nx,y\n"));
    assertTrue(wrong.getMessage().contains("has no such column"), wrong.getMessage());
  }

  @Test
  void aByteOrderMarkIsNoPartOfTheHeader() {
    assertEquals(
        1,
        new AcceptanceCriteria("\uFEFF" + HEADER + row("", "", "", "", "1.0"))
            .limits("x", AssemblyType.DC, day("2020-01-01"), null, null)
            .size());
  }

  @Test
  void anEmptyTableJudgesNothing() {
    AcceptanceCriteria none = new AcceptanceCriteria("");
    assertEquals(List.of(), none.limits(null, AssemblyType.DC, day("2020-01-01"), null, null));
    assertNull(none.gaugeRule(ProgrammeRule.Subject.GAUGE_ACCURACY, "x", day("2020-01-01")));
  }

  @Test
  void aGaugeIsAsAccurateEverywhereButItsIntervalIsTheJurisdictions() {
    AcceptanceCriteria shipped = AcceptanceCriteria.shipped();
    assertEquals(
        "0.2",
        shipped
            .gaugeRule(ProgrammeRule.Subject.GAUGE_ACCURACY, "toronto", day("2020-01-01"))
            .amount()
            .toString());
    assertNull(
        shipped.rule(ProgrammeRule.Subject.CALIBRATION_INTERVAL, "toronto", day("2020-01-01")));
  }

  @Test
  void itTravelsBetweenProcesses() throws Exception {
    AcceptanceCriteria shipped = AcceptanceCriteria.shipped();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    new ObjectOutputStream(bytes).writeObject(shipped);
    AcceptanceCriteria back =
        (AcceptanceCriteria)
            new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject();
    assertEquals(shipped, back);
    assertEquals(2, back.limits(null, AssemblyType.DC, day("2020-01-01"), null, null).size());
  }
}
