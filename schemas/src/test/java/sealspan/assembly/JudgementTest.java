package sealspan.assembly;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sealspan.assembly.Story.CHECK1;
import static sealspan.assembly.Story.CHECK2;
import static sealspan.assembly.Story.RELIEF;
import static sealspan.assembly.Story.dc;
import static sealspan.assembly.Story.psi;
import static sealspan.assembly.Story.report;
import static sealspan.assembly.Story.rp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;
import sealspan.event.InstallationCheck;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed.CompensatingStep;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Discharge;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.ShutoffState;
import sealspan.event.Unit;

class JudgementTest {
  private static final String DETECTOR =
      String.join(",", CriteriaTable.COLUMNS)
          + "\n"
          + rowOf("DCDA", "check1")
          + rowOf("DCDA", "check2")
          + rowOf("DCDA", "bypass.check1")
          + rowOf("DCDA", "bypass.check2");

  private static String rowOf(String type, String component) {
    return "default,"
        + type
        + ","
        + component
        + ",direction_of_flow,,,,,at_least,1.0,psi,before_rounding,required,,test\n";
  }

  private static Verdict judge(AssemblyType type, Report report) {
    return Judgement.of(report.event(), report.phase, type, 1, null, AcceptanceCriteria.shipped());
  }

  private static Report found(Reading... readings) {
    return report("2020-05-05", 1, Phase.AS_FOUND, readings);
  }

  @Test
  void readingsBelowTheLimitFailWithAReasonInPlainWords() {
    Verdict verdict = judge(AssemblyType.DC, found(dc("0.8", "1.3")));
    assertEquals(Result.FAILED, verdict.performance());
    assertEquals(Result.FAILED, verdict.of(CHECK1).result());
    assertEquals(Result.PASSED, verdict.of(CHECK2).result());
    assertEquals(
        List.of(
            "check 1 held 0.8 psid, the limit is at least 1.0 psid (City of Iowa City test form"
                + " 9/02; NEWWA 3-valve procedure Jan 2010; USC Cross Talk 12(3) 1994)"),
        verdict.reasons());
  }

  @Test
  void theReasonOfAPassNamesTheTable() {
    assertEquals(
        List.of(
            "every required reading met its limit (the rows of default, because the site names no"
                + " jurisdiction)"),
        judge(AssemblyType.DC, found(dc("1.0", "1.3"))).reasons());
  }

  /** 1 psi = 6.894757 kPa: NIST Special Publication 811, appendix B. */
  @ParameterizedTest
  @CsvSource({
    "6.88, KPA, FAILED",
    "6.89, KPA, FAILED",
    "6.894756, KPA, FAILED",
    "6.894757, KPA, PASSED",
    "6.90, KPA, PASSED",
    "0.0689, BAR, FAILED",
    "0.06894757, BAR, PASSED",
    "0.999999, PSI, FAILED",
    "1, PSI, PASSED",
    "1.00, PSI, PASSED"
  })
  void aReadingIsComparedExactlyBeforeAnyRounding(String value, Unit unit, Result result) {
    Reading check1 = Reading.measured(CHECK1, Measure.DIRECTION_OF_FLOW, new Quantity(value, unit));
    assertEquals(result, judge(AssemblyType.DC, found(check1)).of(CHECK1).result());
  }

  @Test
  void aTableMayAskForRounding() {
    String csv = DETECTOR + rowOf("DC", "check1").replace("before", "after");
    Verdict verdict =
        Judgement.of(
            found(dc("0.95", "2")).event(),
            Phase.AS_FOUND,
            AssemblyType.DC,
            1,
            null,
            new AcceptanceCriteria(csv));
    assertEquals(Result.PASSED, verdict.of(CHECK1).result());
    assertEquals(Result.NOT_JUDGED, verdict.of(CHECK2).result());
  }

  @Test
  void theBufferFollowsFromTwoReadings() {
    Verdict verdict = judge(AssemblyType.RP, found(rp("2.7", "5.6", Observation.CLOSED_TIGHT)));
    assertEquals(Result.FAILED, verdict.of(CHECK1).result());
    assertEquals(Result.PASSED, verdict.of(RELIEF).result());
    assertTrue(
        verdict.reasons().get(0).startsWith("the buffer is 2.9 psid, the limit is at least 3.0"),
        verdict.reasons().get(0));
    assertEquals(
        Result.PASSED,
        judge(AssemblyType.RP, found(rp("2.6", "5.6", Observation.CLOSED_TIGHT))).performance());
  }

  @Test
  void aReliefValveThatDidNotOpenLeavesCheck1Judged() {
    List<Reading> readings =
        new ArrayList<>(Arrays.asList(rp("2.6", "5.6", Observation.CLOSED_TIGHT)));
    readings.set(0, Reading.seen(RELIEF, Measure.OPENING_POINT, Observation.DID_NOT_OPEN));
    Report report = found(readings.toArray(Reading[]::new));
    assertEquals(Result.FAILED, judge(AssemblyType.RP, report).of(RELIEF).result());
    assertEquals(Result.PASSED, judge(AssemblyType.RP, report).of(CHECK1).result());
  }

  @Test
  void marginalIsALabelBesidePassAndFail() {
    Verdict passed = judge(AssemblyType.DC, found(dc("1.2", "2.0")));
    assertEquals(Result.PASSED, passed.performance());
    assertTrue(passed.of(CHECK1).marginal());
    assertFalse(passed.of(CHECK2).marginal());
    Verdict failed = judge(AssemblyType.DC, found(dc("0.8", "2.0")));
    assertEquals(Result.FAILED, failed.performance());
    assertTrue(failed.marginal());
    assertFalse(judge(AssemblyType.DC, found(dc("1.21", "0.79"))).marginal());
  }

  @Test
  void whatAStoppedProcedureDidNotReachIsUnknown() {
    Report report = found(psi(RELIEF, Measure.OPENING_POINT, "1.5"));
    report.conduct = Conduct.STOPPED_AT_DEFICIENCY;
    Verdict verdict = judge(AssemblyType.RP, report);
    assertEquals(Result.FAILED, verdict.performance());
    assertEquals(Result.FAILED, verdict.of(RELIEF).result());
    assertEquals(Result.UNKNOWN, verdict.of(CHECK1).result());
    assertEquals(Result.UNKNOWN, verdict.of(CHECK2).result());
  }

  @Test
  void notTestedIsUnknownAndNeverPassed() {
    Verdict verdict =
        judge(
            AssemblyType.DC,
            found(
                psi(CHECK1, Measure.DIRECTION_OF_FLOW, "1.5"),
                Reading.seen(CHECK2, Measure.DIRECTION_OF_FLOW, Observation.NOT_TESTED)));
    assertEquals(Result.UNKNOWN, verdict.of(CHECK2).result());
    assertEquals(Result.UNKNOWN, verdict.performance());
  }

  @Test
  void closedTightSaysNothingOfANumber() {
    Verdict verdict =
        judge(
            AssemblyType.DC,
            found(
                Reading.seen(CHECK1, Measure.DIRECTION_OF_FLOW, Observation.CLOSED_TIGHT),
                Reading.seen(CHECK2, Measure.DIRECTION_OF_FLOW, Observation.LEAKED)));
    assertEquals(Result.UNKNOWN, verdict.of(CHECK1).result());
    assertEquals(Result.FAILED, verdict.of(CHECK2).result());
  }

  @Test
  void flushedToPassIsAFailureOfAnUnknownComponent() {
    Report report = found(dc("1.5", "1.4"));
    report.flushedToPass = true;
    report.issued = IssuedVerdict.PASSED;
    Verdict verdict = judge(AssemblyType.DC, report);
    assertEquals(Result.FAILED, verdict.performance());
    assertEquals(Result.PASSED, verdict.leftAs());
    assertEquals(Result.UNKNOWN, verdict.of(CHECK1).result());
    assertEquals(Result.PASSED, verdict.of(CHECK1).leftAs());
    report.phase = Phase.AS_LEFT;
    assertEquals(Result.PASSED, judge(AssemblyType.DC, report).performance());
  }

  @Test
  void aClaimedPassBelowTheLimitIsAFailure() {
    Report report = found(dc("0.9", "1.4"));
    report.issued = IssuedVerdict.PASSED;
    assertEquals(Result.FAILED, judge(AssemblyType.DC, report).performance());
  }

  @Test
  void aLeakingDownstreamShutoffMakesReadingsInvalidUnlessCompensated() {
    Report report = found(dc("0.4", "1.4"));
    report.downstreamShutoff = ShutoffState.LEAKED;
    report.issued = IssuedVerdict.FAILED;
    Verdict verdict = judge(AssemblyType.DC, report);
    assertEquals(Result.UNKNOWN, verdict.performance());
    assertEquals(Result.UNKNOWN, verdict.of(CHECK1).result());
    assertEquals(Result.UNKNOWN, verdict.readings().get(0).result());
    report.compensatingStep = CompensatingStep.NONE;
    assertEquals(Result.UNKNOWN, judge(AssemblyType.DC, report).performance());
    report.compensatingStep = CompensatingStep.TEMPORARY_BYPASS_HOSE;
    assertEquals(Result.FAILED, judge(AssemblyType.DC, report).performance());
  }

  @Test
  void aLeakingShutoffOfTheBypassSpoilsTheBypassAlone() {
    ComponentAt bypass1 = ComponentAt.bypass(Component.CHECK1);
    List<Reading> readings = new ArrayList<>(Arrays.asList(dc("1.5", "1.4")));
    readings.add(psi(bypass1, Measure.DIRECTION_OF_FLOW, "1.3"));
    readings.add(
        Reading.seen(
            ComponentAt.bypass(Component.SHUTOFF2), Measure.TIGHTNESS, Observation.LEAKED));
    Verdict verdict = detector(found(readings.toArray(Reading[]::new)), 1);
    assertEquals(Result.PASSED, verdict.of(CHECK1).result());
    assertEquals(Result.UNKNOWN, verdict.of(bypass1).result());
    assertEquals(Result.UNKNOWN, verdict.performance());
  }

  private static Verdict detector(Report report, int mainlines) {
    return Judgement.of(
        report.event(),
        report.phase,
        AssemblyType.DCDA,
        mainlines,
        null,
        new AcceptanceCriteria(DETECTOR));
  }

  @Test
  void anyFailedComponentOfMainlineOrBypassFailsTheAssembly() {
    ComponentAt second = new ComponentAt(Line.MAIN, 2, Component.CHECK1);
    List<Reading> readings = new ArrayList<>(Arrays.asList(dc("1.5", "1.4")));
    readings.add(psi(second, Measure.DIRECTION_OF_FLOW, "1.5"));
    readings.add(
        psi(new ComponentAt(Line.MAIN, 2, Component.CHECK2), Measure.DIRECTION_OF_FLOW, "1.5"));
    readings.add(psi(ComponentAt.bypass(Component.CHECK1), Measure.DIRECTION_OF_FLOW, "1.1"));
    readings.add(psi(ComponentAt.bypass(Component.CHECK2), Measure.DIRECTION_OF_FLOW, "1.1"));
    assertEquals(Result.PASSED, detector(found(readings.toArray(Reading[]::new)), 2).performance());
    readings.set(5, psi(ComponentAt.bypass(Component.CHECK2), Measure.DIRECTION_OF_FLOW, "0.2"));
    Verdict bypass = detector(found(readings.toArray(Reading[]::new)), 2);
    assertEquals(Result.FAILED, bypass.performance());
    assertTrue(bypass.reasons().get(0).startsWith("bypass check 2 held 0.2 psid"));
    readings.set(2, psi(second, Measure.DIRECTION_OF_FLOW, "0.3"));
    Verdict both = detector(found(readings.toArray(Reading[]::new)), 2);
    assertEquals(Result.FAILED, both.of(second).result());
    assertTrue(both.reasons().get(0).startsWith("mainline 2 check 1 held 0.3 psid"));
  }

  @Test
  void withoutALimitNothingIsJudgedAndTheReportDecides() {
    Report report = found(dc("1.5", "1.4"));
    Verdict verdict = judge(AssemblyType.DCDA, report);
    assertEquals(Result.NOT_JUDGED, verdict.performance());
    assertEquals(Result.NOT_JUDGED, verdict.of(CHECK1).result());
    report.issued = IssuedVerdict.FAILED;
    verdict = judge(AssemblyType.DCDA, report);
    assertEquals(Result.FAILED, verdict.performance());
    assertEquals(Result.NOT_JUDGED, verdict.of(CHECK1).result());
    assertEquals(
        List.of(
            "no limit for DCDA that day (the rows of default, because the site names no"
                + " jurisdiction); the report says failed"),
        verdict.reasons());
  }

  /** Else a source with verdicts alone would show passes of components and never a failure. */
  @Test
  void aVerdictOnTheReportDecidesTheAssemblyButNoComponent() {
    Report report = found();
    report.issued = IssuedVerdict.PASSED;
    Verdict verdict = judge(AssemblyType.DC, report);
    assertEquals(Result.PASSED, verdict.performance());
    assertEquals(Result.UNKNOWN, verdict.of(CHECK1).result());
  }

  @Test
  void aFailedReportThatTheInstallationExplainsIsNoFailureOfPerformance() {
    Report report = found();
    report.issued = IssuedVerdict.FAILED;
    report.installationChecks = List.of(new InstallationCheck("air gap under relief valve", false));
    Verdict verdict = judge(AssemblyType.DC, report);
    assertEquals(Result.UNKNOWN, verdict.performance());
    assertEquals(Result.FAILED, verdict.installation());
    assertEquals("installation: air gap under relief valve was not met", verdict.reasons().get(0));
  }

  /** Source of the rule: Crossville, Tennessee. */
  @Test
  void continuousDischargeFails() {
    Report report = found(rp("2.6", "7.0", Observation.CLOSED_TIGHT));
    report.reliefDischarge = Discharge.CONTINUOUS;
    assertEquals(Result.FAILED, judge(AssemblyType.RP, report).performance());
    report.reliefDischarge = Discharge.INTERMITTENT;
    assertEquals(Result.PASSED, judge(AssemblyType.RP, report).performance());
  }

  @Test
  void anOptionalReadingNeedNotBeTakenButCountsWhereItWas() {
    List<Reading> readings =
        new ArrayList<>(Arrays.asList(rp("2.6", "7.0", Observation.CLOSED_TIGHT)));
    readings.add(psi(CHECK2, Measure.DIRECTION_OF_FLOW, "0.6"));
    assertEquals(
        Result.FAILED,
        judge(AssemblyType.RP, found(readings.toArray(Reading[]::new))).of(CHECK2).result());
  }

  @Test
  void anAdvisedLimitFailsNothing() {
    String csv = DETECTOR + rowOf("DC", "check1") + rowOf("DC", "check2");
    csv += rowOf("DC", "check1").replace("direction_of_flow", "static_drop");
    csv = csv.substring(0, csv.lastIndexOf("required")) + "advisory,,test\n";
    Report report =
        found(
            psi(CHECK1, Measure.DIRECTION_OF_FLOW, "1.5"),
            psi(CHECK2, Measure.DIRECTION_OF_FLOW, "1.5"),
            psi(CHECK1, Measure.STATIC_DROP, "0.5"));
    Verdict verdict =
        Judgement.of(
            report.event(), report.phase, AssemblyType.DC, 1, null, new AcceptanceCriteria(csv));
    assertEquals(Result.PASSED, verdict.performance());
    assertEquals(Result.NOT_JUDGED, verdict.readings().get(2).result());
    assertEquals("advised: at least 1.0 psid", verdict.readings().get(2).criterion().label());
    assertEquals(
        "check 1 held 0.5 psid, advised is at least 1.0 psid (test)", verdict.reasons().get(0));
  }

  @ParameterizedTest
  @CsvSource({"AVB", "AG"})
  void whatIsOnlyInspectedIsNeverTested(AssemblyType type) {
    Verdict verdict = judge(type, found(dc("1.5", "1.4")));
    assertEquals(Verdict.Testability.NOT_TESTABLE, verdict.test());
    assertEquals(Result.NOT_JUDGED, verdict.performance());
    assertEquals(List.of(), verdict.components());
  }

  @Test
  void aComponentThatTheTypeHasNotIsNotJudged() {
    Report report = found(dc("1.5", "1.4"));
    List<Reading> readings = new ArrayList<>(report.readings);
    readings.add(psi(RELIEF, Measure.OPENING_POINT, "0.1"));
    report.readings = readings;
    Verdict verdict = judge(AssemblyType.DC, report);
    assertEquals(Result.PASSED, verdict.performance());
    assertEquals(Result.NOT_JUDGED, verdict.readings().get(2).result());
  }

  @Test
  void shutoffsTestCocksAndBodyAreNoPartOfTheVerdict() {
    List<Reading> readings = new ArrayList<>(Arrays.asList(dc("1.5", "1.4")));
    for (Component component : List.of(Component.SHUTOFF1, Component.TEST_COCKS, Component.BODY)) {
      readings.add(
          Reading.seen(ComponentAt.main(component), Measure.TIGHTNESS, Observation.LEAKED));
    }
    Verdict verdict = judge(AssemblyType.DC, found(readings.toArray(Reading[]::new)));
    assertEquals(Result.PASSED, verdict.performance());
    assertEquals(2, verdict.components().size());
  }
}
