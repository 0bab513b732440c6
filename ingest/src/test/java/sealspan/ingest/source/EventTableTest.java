package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.AssemblyRemoved;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.GaugeCalibrated;
import sealspan.event.InspectionPerformed;
import sealspan.event.LoggedEvent;
import sealspan.event.Quantity;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.event.TesterCertified;
import sealspan.event.Unit;
import sealspan.event.WaterDisturbed;

/** Tables with one row per event. */
class EventTableTest {
  @TempDir Path folder;

  private Intaken take(String... lines) throws Exception {
    return Intaken.ofText(folder, "events.csv", String.join("\n", lines) + "\n");
  }

  @Test
  void oneTableMayMixEvents() throws Exception {
    Intaken in =
        take(
            "event,date,time,gauge_id,valid_until,tester_id,certificate_number,zone_id,disturbance,"
                + "until,assembly_id,removal_reason",
            "calibration,2025-01-10,,G-1,2026-01-10,,,,,,,",
            "certificate,2024-01-01,,,2026-12-31,T-1,4711,,,,,",
            "main break,2025-03-02,03:15,,,,,Z-1,main_break,2025-03-03,,",
            "disturbance,2025-03-02,03:15,,,,,Z-1,main_break,2025-03-03,,",
            "removal,2025-05-01,,,,,,,,,BF-1,relocated");
    assertEquals(LocalDate.of(2026, 1, 10), in.only(GaugeCalibrated.class).validUntil());
    assertEquals("4711", in.only(TesterCertified.class).certificateNumber());
    assertEquals(195, in.only(WaterDisturbed.class).when().minuteOfDay());
    assertEquals(AssemblyRemoved.Reason.RELOCATED, in.only(AssemblyRemoved.class).reason());
    assertEquals(1, in.summary.rejectedRows());
    assertEquals("event", in.rows.get(0).field());
  }

  @Test
  void anAirGapIsInspectedInInchesOrMillimetres() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,inspection_kind,inspection_outcome,separation_mm,supply_pipe_in",
            "inspection,AG-1,2025-05-01,air gap,satisfactory,51,1");
    InspectionPerformed inspection = in.only(InspectionPerformed.class);
    assertEquals(new Quantity("51", Unit.MM), inspection.separation());
    assertEquals(new Quantity("1", Unit.INCH), inspection.supplyPipeDiameter());
  }

  @Test
  void aCorrectionCarriesTheContentThatHoldsInstead() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,phase,check1_psid,corrects_event_id,corrected_on,corrected_by,"
                + "corrected_why",
            "test,BF-1,2025-04-17,as_found,2.1,E-1,2025-05-02,clerk-7,digits swapped");
    EventCorrected corrected = in.only(EventCorrected.class);
    assertEquals("E-1", corrected.targetEventId());
    assertEquals("digits swapped", corrected.why());
    assertEquals(
        "2.1", ((TestPerformed) corrected.replacement()).readings().get(0).value().entered());
  }

  @Test
  void aVoidNamesWhatItWasAbout() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,about,corrects_event_id,corrected_on,corrected_why",
            "void,BF-1,,E-1,2025-05-02,wrong assembly",
            "void,,zone/Z-1,E-2,2025-05-02,no break at all");
    assertEquals(
        List.of(Subject.assembly("BF-1"), Subject.zone("Z-1")),
        in.all(EventVoided.class).stream().map(EventVoided::about).toList());
  }

  @Test
  void aReportedDayCountsToItsEndAndAnInstantAsItIs() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,service_state,reported_on",
            "service,BF-1,2025-10-01,off,2025-10-03",
            "service,BF-2,2025-10-01,off,2025-10-03T14:05:00Z",
            "service,BF-3,2025-10-01,off,2025-10-03 14:05",
            "service,BF-4,2025-10-01,off,");
    assertEquals(
        List.of(
            Instant.parse("2025-10-03T23:59:00Z"),
            Instant.parse("2025-10-03T14:05:00Z"),
            Instant.parse("2025-10-03T14:05:00Z")),
        in.events.stream().limit(3).map(LoggedEvent::reportedAt).toList());
    assertEquals(LoggedEvent.ReportedOrigin.GIVEN, in.events.get(0).reportedOrigin());
    assertNull(in.events.get(3).reportedAt());
  }

  @Test
  void aReportBeforeTheDayThatItTellsOfIsRefused() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,phase,reported_on",
            "test,BF-1,2025-10-05,as_found,2025-10-03",
            "test,BF-2,2025-10-05,as_found,2025-10-05");
    assertEquals(1, in.summary.rejectedRows());
    assertEquals("reported_on", in.rows.get(0).field());
    assertTrue(in.rows.get(0).reason().contains("before"), in.rows.toString());
  }

  @Test
  void aPartThatNoTypeHasIsRefused() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,phase,confirmation_of,confirmation_psid",
            "test,BF-1,2025-04-17,as_found,check3,1.2");
    assertEquals(
        "'check3' is a part that no type of assembly has."
            + " Write such as check1, relief or bypass.check2.",
        in.rows.get(0).reason());
  }

  @Test
  void aPartThatThisTypeLacksIsLeftToTheHistory() throws Exception {
    Intaken in =
        take(
            "event,assembly_id,date,phase,type,air_inlet_psid",
            "test,BF-1,2025-04-17,as_found,,1.2",
            "test,BF-2,2025-04-17,as_found,DC,1.2");
    assertEquals(2, in.events.size());
  }
}
