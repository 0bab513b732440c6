package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.RELIEF;
import static sealspan.assembly.Story.day;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.item;
import static sealspan.assembly.Story.on;
import static sealspan.assembly.Story.psi;
import static sealspan.assembly.Story.report;
import static sealspan.assembly.Story.rp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sealspan.event.Action;
import sealspan.event.AssemblyRemoved.Reason;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.GaugeCalibrated;
import sealspan.event.InstallationCheck;
import sealspan.event.JobCosted;
import sealspan.event.Measure;
import sealspan.event.Money;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.ReplacementReason;
import sealspan.event.TestPerformed.CompensatingStep;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.event.TestPerformed.ShutoffState;
import sealspan.event.TesterCertified;

class FindingsTest {
  private static List<String> found(Story story) {
    return story.history().findings().stream().map(f -> f.kind() + " " + f.check()).toList();
  }

  private static Story unit(AssemblyType type) {
    return new Story().installed("2019-01-10", type);
  }

  private static Report found(Reading... readings) {
    return report("2020-01-10", 1, Phase.AS_FOUND, readings);
  }

  private static Report sound() {
    return found(dc("1.5", "1.6"));
  }

  private static List<String> of(Report report) {
    return found(unit(AssemblyType.DC).test("t", report));
  }

  private static List<String> ofRp(Reading... readings) {
    return found(unit(AssemblyType.RP).test("t", found(readings)));
  }

  @Test
  void aSparseReportHasNothingAgainstIt() {
    assertEquals(List.of(), of(sound()));
  }

  @Test
  void aPassClaimedBelowTheLimit() {
    Report report = found(dc("0.9", "1.6"));
    report.issued = IssuedVerdict.PASSED;
    assertEquals(
        List.of(
            "INCOMPLETE no repair after a failure", "COUNTS_AS_FAILED pass claimed below limit"),
        of(report));
  }

  @Test
  void failedWithinLimits() {
    Report report = sound();
    report.issued = IssuedVerdict.FAILED;
    assertEquals(List.of("SUSPICIOUS failed within limits"), of(report));
  }

  @Test
  void flushedToPass() {
    Report report = sound();
    report.flushedToPass = true;
    assertEquals(List.of("COUNTS_AS_FAILED flushed to pass"), of(report));
  }

  @Test
  void installationNotMet() {
    Report report = sound();
    report.installationChecks =
        List.of(new InstallationCheck("clearance", false), new InstallationCheck("drain", true));
    Story story = unit(AssemblyType.DC).test("t", report);
    assertEquals(List.of("COUNTS_AS_FAILED installation not met"), found(story));
    TestRound round = story.history().rounds().get(0);
    assertEquals(Outcome.FAILED_COMPLIANCE, round.outcome());
    assertFalse(round.compliant());
    assertEquals(Counting.COUNTED, round.counting());
  }

  @Test
  void reliefValveDischarges() {
    Report report = found(rp("2.5", "7.0", Observation.CLOSED_TIGHT));
    report.reliefDischarge = Discharge.CONTINUOUS;
    assertTrue(
        found(unit(AssemblyType.RP).test("t", report))
            .contains("COUNTS_AS_FAILED relief valve discharges"));
  }

  @Test
  void whatCouldNotBeTestedIsKeptApart() {
    Report report = found();
    report.conduct = Conduct.NOT_TESTABLE;
    Story story = unit(AssemblyType.DC).test("t", report);
    assertEquals(List.of("COUNTS_AS_FAILED could not be tested"), found(story));
    assertEquals(Outcome.NOT_TESTABLE, story.history().rounds().get(0).outcome());
    assertEquals(Counting.NOT_TESTABLE, story.history().rounds().get(0).counting());
  }

  @Test
  void aSignatureThatIsNotRecordedIsNotMissing() {
    Report report = sound();
    report.signed = false;
    assertEquals(List.of("INVALID not signed"), of(report));
    report.signed = true;
    assertEquals(List.of(), of(report));
  }

  @Test
  void typeNotTested() {
    assertEquals(
        List.of("INVALID type not tested"), found(unit(AssemblyType.AG).test("t", found())));
  }

  @Test
  void componentNotOfTheType() {
    List<Reading> readings = new ArrayList<>(Arrays.asList(dc("1.5", "1.6")));
    readings.add(psi(RELIEF, Measure.OPENING_POINT, "2.4"));
    assertEquals(
        List.of("INVALID component not of the type"), of(found(readings.toArray(Reading[]::new))));
  }

  @Test
  void serialDiffers() {
    Report report = sound();
    report.serialSeen = " SERIAL-1 ";
    assertEquals(List.of(), of(report));
    report.serialSeen = "serial-2";
    assertEquals(List.of("INVALID serial differs"), of(report));
  }

  @Test
  void calibratedAfterTheTest() {
    Report report = sound();
    report.gaugeCalibratedOn = day("2020-01-11");
    assertEquals(List.of("SUSPICIOUS calibrated after the test"), of(report));
  }

  /** Yearly: Texas city code repeating the state rule, as the shipped table says. */
  @ParameterizedTest
  @CsvSource({"2019-01-10, false", "2019-01-09, true", "2018-01-09, true"})
  void gaugeCalibrationExpiresAfterTheIntervalOfTheTable(String calibrated, boolean expired) {
    Report report = sound();
    report.gaugeCalibratedOn = day(calibrated);
    Story story = unit(AssemblyType.DC).test("t", report);
    assertEquals(expired ? List.of("INVALID gauge calibration expired") : List.of(), found(story));
    TestRound round = story.history().rounds().get(0);
    assertEquals(expired ? Outcome.FAILED_COMPLIANCE : Outcome.PASSED, round.outcome());
    assertEquals(!expired, round.compliant());
    assertEquals(Counting.COUNTED, round.counting());
    assertEquals(Result.PASSED, round.verdict().performance());
  }

  @Test
  void theGaugesOwnCalibrationsCount() {
    Report report = sound();
    report.gaugeId = "G";
    report.gaugeCalibratedOn = day("2018-01-01");
    Story story =
        unit(AssemblyType.DC)
            .test("t", report)
            .log("g1", calibration("2019-06-01", null))
            .log("g0", calibration("2018-06-01", null));
    assertEquals(List.of(), found(story));
    story.log("g2", calibration("2019-12-01", "2020-01-09"));
    assertEquals(List.of("INVALID gauge calibration expired"), found(story));
  }

  private static GaugeCalibrated calibration(String day, String until) {
    return new GaugeCalibrated(
        "G", on(day), until == null ? null : day(until), null, null, null, null);
  }

  @Test
  void certificateExpiredOrNotYetValid() {
    Report report = sound();
    report.certificateValidUntil = day("2020-01-10");
    assertEquals(List.of(), of(report));
    report.certificateValidUntil = day("2020-01-09");
    assertEquals(List.of("INVALID certificate not valid"), of(report));
    report.testerId = "T";
    Story known =
        unit(AssemblyType.DC).test("t", report).log("c", certificate("2019-02-01", "2021-01-31"));
    assertEquals(List.of(), found(known));
    report.certificateValidUntil = null;
    Story early =
        unit(AssemblyType.DC).test("t", report).log("c", certificate("2020-01-11", "2021-01-31"));
    assertEquals(List.of("INVALID certificate not valid"), found(early));
    assertTrue(early.history().findings().get(0).words().contains("2020-01-11"));
    assertEquals(Outcome.FAILED_COMPLIANCE, early.history().rounds().get(0).outcome());
  }

  private static TesterCertified certificate(String from, String until) {
    return new TesterCertified("T", on(from), day(until), null, null, null, null);
  }

  @Test
  void testBeforeInstallationAndAfterRemoval() {
    Story story =
        unit(AssemblyType.DC)
            .test("t0", "2019-01-09", 1, Phase.AS_FOUND, dc("1.5", "1.5"))
            .test("t1", "2019-01-10", 1, Phase.AS_FOUND, dc("1.5", "1.6"))
            .removed("2020-05-01", Reason.DEMOLISHED)
            .test("t2", "2020-05-01", 1, Phase.AS_FOUND, dc("1.4", "1.5"))
            .test("t3", "2020-05-02", 1, Phase.AS_FOUND, dc("1.5", "1.5"));
    assertEquals(
        List.of("INVALID test before installation", "INVALID test after removal"), found(story));
  }

  @ParameterizedTest
  @CsvSource({"2.4, 2.4, true", "2.5, 2.4, true", "2.3, 2.4, false"})
  void reliefValveNotBelowCheck1(String relief, String check1, boolean flagged) {
    assertEquals(
        flagged,
        ofRp(rp(relief, check1, Observation.CLOSED_TIGHT))
            .contains("SUSPICIOUS relief valve not below check 1"));
  }

  @ParameterizedTest
  @CsvSource({"4.5, false", "4.50, false", "4.4, true"})
  void bufferIsTheDifference(String buffer, boolean flagged) {
    List<Reading> readings =
        new ArrayList<>(Arrays.asList(rp("2.5", "7.0", Observation.CLOSED_TIGHT)));
    readings.add(psi(CHECK1, Measure.BUFFER, buffer));
    assertEquals(
        flagged,
        ofRp(readings.toArray(Reading[]::new)).contains("SUSPICIOUS buffer is not the difference"));
  }

  @ParameterizedTest
  @CsvSource({"15.0, false", "15.1, true"})
  void readingOffTheScale(String check1, boolean flagged) {
    assertEquals(
        flagged,
        ofRp(rp("2.5", check1, Observation.CLOSED_TIGHT))
            .contains("SUSPICIOUS reading off the scale"));
  }

  @Test
  void check1LeakedAndReliefValveHeld() {
    List<String> found =
        ofRp(
            Reading.seen(CHECK1, Measure.STATIC_DROP, Observation.LEAKED),
            Reading.seen(RELIEF, Measure.OPENING_POINT, Observation.CLOSED_TIGHT));
    assertTrue(found.contains("SUSPICIOUS check 1 leaked, relief valve held"), found.toString());
  }

  @Test
  void check1EqualsCheck2() {
    List<Reading> readings =
        new ArrayList<>(Arrays.asList(rp("2.5", "7.0", Observation.CLOSED_TIGHT)));
    readings.add(psi(CHECK2, Measure.DIRECTION_OF_FLOW, "7.00"));
    assertEquals(
        List.of("SUSPICIOUS check 1 equals check 2"), ofRp(readings.toArray(Reading[]::new)));
    readings.set(3, psi(CHECK2, Measure.DIRECTION_OF_FLOW, "2.0"));
    assertEquals(List.of(), ofRp(readings.toArray(Reading[]::new)));
  }

  @Test
  void equalChecksOfADoubleCheckAreNothingSpecial() {
    assertEquals(List.of(), of(found(dc("1.5", "1.5"))));
  }

  @Test
  void readingsPastALeakingShutoff() {
    Report report = sound();
    report.downstreamShutoff = ShutoffState.LEAKED;
    assertEquals(List.of("INVALID readings past a leaking shutoff"), of(report));
    report.compensatingStep = CompensatingStep.OTHER_VALVE_CLOSED;
    assertEquals(List.of(), of(report));
  }

  @Test
  void confirmationDiffers() {
    Report report = found(dc("0.9", "1.6"));
    report.confirmation = psi(CHECK1, Measure.DIRECTION_OF_FLOW, "1.1");
    assertTrue(of(report).contains("SUSPICIOUS confirmation differs"));
    report.confirmation = psi(CHECK1, Measure.DIRECTION_OF_FLOW, "0.8");
    assertFalse(of(report).contains("SUSPICIOUS confirmation differs"));
  }

  @Test
  void repairAfterAPass() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", sound())
            .repair("r", "2020-01-10", 2, item(CHECK1, Action.CLEANED))
            .test("u", "2020-01-10", 3, Phase.AS_LEFT, dc("1.6", "1.6"));
    assertEquals(List.of("SUSPICIOUS repair after a pass"), found(story));
    Story scheduled =
        unit(AssemblyType.DC)
            .test("t", sound())
            .repair(
                "r",
                "2020-01-10",
                2,
                item(CHECK1, Action.DISC_REPLACED, null, ReplacementReason.SCHEDULED))
            .test("u", "2020-01-10", 3, Phase.AS_LEFT, dc("1.6", "1.6"));
    assertEquals(List.of(), found(scheduled));
  }

  @Test
  void finalTestMissing() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .repair("r", "2020-01-10", 2, item(CHECK1, Action.CLEANED));
    assertEquals(List.of("INCOMPLETE final test missing"), found(story));
    story.test("u", "2021-01-10", 1, Phase.AS_FOUND, dc("1.6", "1.6"));
    assertEquals(List.of("INCOMPLETE final test missing"), found(story));
    Report later = report("2020-01-12", 1, Phase.AS_FOUND, dc("1.5", "1.6"));
    later.purpose = Purpose.AFTER_REPAIR;
    assertEquals(List.of(), found(story.test("v", later)));
  }

  @Test
  void finalTestBeforeTheRepair() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .test("u", "2020-01-10", 2, Phase.AS_LEFT, dc("1.6", "1.6"))
            .repair("r", "2020-01-10", 3, item(CHECK1, Action.CLEANED));
    assertTrue(found(story).contains("INVALID final test before the repair"));
    assertFalse(found(story).contains("INCOMPLETE final test missing"));
  }

  @Test
  void aSecondRepairAfterAFailedRetestNeedsItsOwnFinalTest() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .repair("r1", "2020-01-10", 2, item(CHECK1, Action.CLEANED))
            .test("u", "2020-01-10", 3, Phase.AS_LEFT, dc("0.6", "1.6"))
            .repair("r2", "2020-01-10", 4, item(CHECK1, Action.DISC_REPLACED));
    assertEquals(List.of("INCOMPLETE final test missing"), found(story));
    assertEquals("r2", story.history().findings().get(0).eventId());
  }

  @Test
  void noRepairAfterAFailure() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .test("u", "2021-01-10", 1, Phase.AS_FOUND, dc("1.6", "1.6"));
    assertEquals(List.of("INCOMPLETE no repair after a failure"), found(story));
    Story removed =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .removed("2020-01-10", Reason.REPLACED_BECAUSE_FAILED);
    assertEquals(List.of(), found(removed));
  }

  @Test
  void asFoundAfterARepair() {
    Story story =
        unit(AssemblyType.DC)
            .repair("r", "2020-01-10", 1, item(CHECK1, Action.CLEANED))
            .test("t", report("2020-01-10", 2, Phase.AS_FOUND, dc("1.5", "1.6")));
    assertEquals(List.of("SUSPICIOUS as-found test after a repair"), found(story));
    assertEquals(Counting.AS_LEFT, story.history().rounds().get(0).counting());
  }

  @Test
  void repairOfAPartTheTypeHasNot() {
    Story story =
        unit(AssemblyType.DC)
            .test("t", found(dc("0.5", "1.6")))
            .repair(
                "r",
                "2020-01-10",
                2,
                item(RELIEF, Action.CLEANED),
                item(ComponentAt.main(Component.SHUTOFF2), Action.OTHER_PART_REPLACED))
            .test("u", "2020-01-10", 3, Phase.AS_LEFT, dc("1.6", "1.6"));
    assertEquals(List.of("SUSPICIOUS repair of a part the type has not"), found(story));
  }

  @Test
  void sameReadingsYearAfterYear() {
    Story story = unit(AssemblyType.DC);
    for (int year = 2020; year < 2024; year++) {
      String check2 = year == 2020 ? "1.40" : "1.4";
      story.test("t" + year, year + "-01-10", 1, Phase.AS_FOUND, dc("1.5", check2));
    }
    assertEquals(
        List.of("SUSPICIOUS same readings again", "SUSPICIOUS same readings again"), found(story));
    assertEquals("t2022", story.history().findings().get(0).eventId());
  }

  @Test
  void twoCurrenciesInOneJob() {
    JobCosted job =
        new JobCosted(
            Story.ASSEMBLY,
            on("2020-01-10"),
            null,
            null,
            null,
            new Money(100, "USD"),
            null,
            new Money(5, "CAD"),
            new Money(200, "USD"));
    assertEquals(
        List.of("CONFLICT two currencies in one job"), found(unit(AssemblyType.DC).log("j", job)));
  }

  @Test
  void twoContentsUnderOneId() {
    Story story = unit(AssemblyType.DC).test("t", sound()).test("t", found(dc("1.1", "1.1")));
    assertEquals(List.of("CONFLICT two contents under one id"), found(story));
  }
}
