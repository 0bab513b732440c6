package sealspan.ingest.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sealspan.event.Action;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Mechanism;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairPerformed;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Unit;
import sealspan.event.Visit.SequenceOrigin;
import sealspan.event.VisitAttempted;

/** Tables with one row per visit. */
class VisitTableTest {
  @TempDir Path folder;

  private Intaken take(String... lines) throws SourceException, IOException {
    return Intaken.ofText(folder, "visits.csv", String.join("\n", lines) + "\n");
  }

  private static Reading reading(TestPerformed test, ComponentAt at) {
    return test.readings().stream().filter(r -> r.at().equals(at)).findFirst().orElseThrow();
  }

  @Test
  void oneRowYieldsTestRepairAndRetestOfOneVisit() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,type,report_number,found_check1_psid,found_relief_psid,"
                + "found_verdict,repair_check1_action,repair_check1_mechanism,left_check1_psid,"
                + "left_relief_psid,left_verdict",
            "BF-1,2025-04-17,RP,R-1,4.2,2.6,failed,cleaned + disc replaced,debris,8.20,2.6,passed");
    assertEquals(List.of(), in.rows);
    TestPerformed found = in.all(TestPerformed.class).get(0);
    TestPerformed left = in.all(TestPerformed.class).get(1);
    RepairPerformed repair = in.only(RepairPerformed.class);
    assertEquals(Phase.AS_FOUND, found.phase());
    assertEquals(Phase.AS_LEFT, left.phase());
    assertEquals(1, found.visit().sequence());
    assertEquals(2, repair.visit().sequence());
    assertEquals(3, left.visit().sequence());
    assertEquals(SequenceOrigin.DERIVED, left.visit().sequenceOrigin());
    assertEquals(found.visit().id(), repair.visit().id());
    assertEquals(found.visit().id(), left.visit().id());
    assertEquals(
        Reading.measured(
            ComponentAt.main(Component.CHECK1),
            Measure.STATIC_DROP,
            new Quantity("8.20", Unit.PSI)),
        reading(left, ComponentAt.main(Component.CHECK1)));
    assertEquals(
        List.of(Action.CLEANED, Action.DISC_REPLACED),
        repair.items().stream().map(item -> item.action()).toList());
    assertEquals(Mechanism.DEBRIS, repair.items().get(0).mechanism());
    assertEquals(AssemblyType.RP, in.only(AssemblyInstalled.class).type());
  }

  @Test
  void whatIsNotThereIsNotRecorded() throws Exception {
    Intaken in =
        take("assembly_id,date,found_check1_psid,found_check2_psid", "BF-1,2025-04-17,1.6,n/a");
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals(1, test.readings().size());
    assertNull(test.when().minuteOfDay());
    assertNull(test.purpose());
    assertNull(test.verdictIssued());
    assertNull(test.signedByTester());
    assertEquals(1, in.events.size());
    assertEquals(LoggedEvent.ReportedOrigin.NOT_RECORDED, in.events.get(0).reportedOrigin());
    assertEquals(LoggedEvent.Arrival.IMPORTED, in.events.get(0).arrival());
  }

  @Test
  void wordsAreReadingsAndUntestedIsNotPassed() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,type,found_check1_psid,found_check2_psid,found_relief_psid",
            "BF-1,2025-04-17,RPZ,not tested,Closed Tight,did not open");
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals(
        Observation.NOT_TESTED, reading(test, ComponentAt.main(Component.CHECK1)).observation());
    Reading check2 = reading(test, ComponentAt.main(Component.CHECK2));
    assertEquals(Observation.CLOSED_TIGHT, check2.observation());
    assertEquals(Measure.BACKPRESSURE_TIGHTNESS, check2.measure());
    assertEquals(
        Observation.DID_NOT_OPEN,
        reading(test, ComponentAt.main(Component.RELIEF_VALVE)).observation());
  }

  @Test
  void aDetectorHasReadingsOfItsMainlinesAndItsBypass() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,type,found_check1_psid,main2_found_check1_psid,"
                + "bypass_found_check1_psid,found_meter_registers,bypass_repair_check1_action",
            "FS-1,2025-04-17,DCDA,1.9,1.7,0.8,yes,cleaned");
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals("1.9", reading(test, ComponentAt.main(Component.CHECK1)).value().entered());
    assertEquals(
        "1.7",
        reading(test, new ComponentAt(ComponentAt.Line.MAIN, 2, Component.CHECK1))
            .value()
            .entered());
    assertEquals("0.8", reading(test, ComponentAt.bypass(Component.CHECK1)).value().entered());
    assertEquals(
        Observation.OPENED,
        reading(test, ComponentAt.bypass(Component.BYPASS_METER)).observation());
    assertEquals(
        ComponentAt.bypass(Component.CHECK1), in.only(RepairPerformed.class).items().get(0).at());
  }

  @Test
  void aDoubleCheckIsReadInTheDirectionOfFlow() throws Exception {
    Intaken in =
        take("assembly_id,date,found_check1_psid,found_check2_psid", "BF-1,2025-04-17,1.6,leaked");
    TestPerformed test = in.only(TestPerformed.class);
    assertEquals(
        List.of(Measure.DIRECTION_OF_FLOW, Measure.DIRECTION_OF_FLOW),
        test.readings().stream().map(Reading::measure).toList());
  }

  @Test
  void theSingleCheckOfATypeTwoBypassIsReadInTheDirectionOfFlow() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,type,found_check1_psid,bypass_found_check1_psid",
            "BF-1,2025-04-17,RPDA II,8.0,1.2");
    assertEquals(
        List.of(Measure.STATIC_DROP, Measure.DIRECTION_OF_FLOW),
        in.only(TestPerformed.class).readings().stream().map(Reading::measure).toList());
  }

  @Test
  void placeAssemblyAndCostsComeFromTheSameRow() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,site_id,premises,latitude,longitude,zone_id,hazard,type,size,"
                + "install_date,currency,labour,invoiced,found_check1_psid",
            "BF-1,2025-04-17,S-1,Laundry,39.7,-104.9,Z-1,high,DC,1 1/2,2020-03-12,usd,85,160.50,1.2");
    SiteDescribed site = in.only(SiteDescribed.class);
    assertEquals("S-1", site.siteId());
    assertEquals(SiteDescribed.HazardClass.HIGH, site.hazard());
    AssemblyInstalled installed = in.only(AssemblyInstalled.class);
    assertEquals(LocalDate.of(2020, 3, 12), installed.when().day());
    assertEquals(AssemblyInstalled.DayMeaning.INSTALLED, installed.dayMeaning());
    assertEquals("1.5", installed.sizeInch());
    assertEquals(site.positionId(), installed.positionId());
    JobCosted job = in.only(JobCosted.class);
    assertEquals(16050, job.invoiced().minorUnits());
    assertEquals("USD", job.invoiced().currency());
  }

  @Test
  void withoutADayOfInstallationTheAgeStaysUnknown() throws Exception {
    Intaken in = take("assembly_id,date,type,found_check1_psid", "BF-1,2025-04-17,DC,1.2");
    assertEquals(
        AssemblyInstalled.DayMeaning.RECORD_BEGINS, in.only(AssemblyInstalled.class).dayMeaning());
  }

  @Test
  void aRegisterWithoutVisitsTellsOfAssemblies() throws Exception {
    Intaken in = take("assembly_id,type,install_date", "BF-1,PVB,2020-03-12", "BF-2,AG,2021-01-01");
    assertEquals(2, in.all(AssemblyInstalled.class).size());
    assertEquals(2, in.events.size());
  }

  @Test
  void anAttemptIsNoTest() throws Exception {
    Intaken in =
        take("assembly_id,date,attempt_reason,found_check1_psid", "BF-1,2025-04-17,locked,");
    assertEquals(VisitAttempted.Reason.NO_ACCESS, in.only(VisitAttempted.class).reason());
    assertEquals(1, in.events.size());
  }

  @Test
  void everyProblemOfARowIsNamedWithItsColumn() throws Exception {
    Intaken in =
        take(
            "assembly_id,date,type,found_check1_psid,found_verdict,left_date,left_check1_psid",
            ",2025-02-30,RPX,1.2.3,pased,1825-01-01,-2");
    assertEquals(1, in.summary.rejectedRows());
    assertEquals(0, in.events.size());
    List<String> fields = in.rows.stream().map(row -> row.field()).toList();
    assertEquals(
        java.util.Set.of(
            "assembly_id",
            "date",
            "type",
            "found_check1_psid",
            "found_verdict",
            "left_date",
            "left_check1_psid"),
        java.util.Set.copyOf(fields));
    assertEquals(7, fields.size(), in.rows.toString());
    assertTrue(in.rows.stream().allMatch(row -> row.line() == 2));
    assertTrue(in.rows.stream().allMatch(row -> row.rowText().startsWith(",2025-02-30,RPX")));
    assertTrue(
        in.rows.stream().anyMatch(row -> row.reason().contains("Did you mean passed?")),
        in.rows.toString());
  }

  @Test
  void aDayAfterTheLatestIsRefused() throws Exception {
    Intaken in = take("assembly_id,date,found_check1_psid", "BF-1,2026-01-02,1.2");
    assertTrue(in.rows.get(0).reason().contains("after 2026-01-01"), in.rows.toString());
  }

  @Test
  void importingTwiceChangesNothing() throws Exception {
    Intaken in = take("assembly_id,date,found_check1_psid", "BF-1,2025-04-17,1.2");
    in.take(folder.resolve("visits.csv"), Mapping.NONE, StationZones.NONE);
    assertEquals(1, in.summary.duplicates());
    assertEquals(0, in.summary.appended());
    assertEquals(1, in.events.size());
  }

  @Test
  void anEditedReportOfTheSameNumberIsAConflictThatNamesBothVersions() throws Exception {
    Intaken in =
        take("assembly_id,date,report_number,found_check1_psid", "BF-1,2025-04-17,R-9,1.2");
    Intaken.write(
        folder,
        "edited.csv",
        "assembly_id,date,report_number,found_check1_psid\nBF-1,2025-04-17,R-9,2.1\n".getBytes());
    in.take(folder.resolve("edited.csv"), Mapping.NONE, StationZones.NONE);
    assertEquals(1, in.summary.conflicts());
    assertEquals("CONFLICT", in.rows.get(0).kind());
    String id = in.events.get(0).id();
    assertTrue(in.rows.get(0).reason().contains("corrects_event_id " + id));
    assertTrue(in.rows.get(0).reason().contains("differs in readings."), in.rows.toString());
  }
}
