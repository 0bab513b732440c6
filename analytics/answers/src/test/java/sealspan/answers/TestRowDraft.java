package sealspan.answers;

import sealspan.table.TestRow;

/** A test row of the small invented utility in the making: a pass unless said otherwise. */
final class TestRowDraft {
  private TestRow row;

  static TestRowDraft of(
      String assembly,
      String event,
      String visit,
      int sequence,
      String day,
      String phase,
      String purpose,
      String type,
      String size,
      String site,
      String zone) {
    TestRowDraft draft = new TestRowDraft();
    draft.row =
        new TestRow(
            assembly,
            event,
            visit,
            sequence,
            HandMade.day(day),
            "R-" + event,
            "hand.csv",
            phase,
            purpose,
            "T9",
            "G1",
            null,
            null,
            type,
            size,
            site,
            zone,
            (int) (HandMade.day(day).toEpochDay() - HandMade.day("2020-05-01").toEpochDay()),
            "PASSED",
            null,
            null,
            false,
            true,
            null,
            true,
            null,
            null,
            null,
            HandMade.RECORDED);
    return draft;
  }

  TestRowDraft outcome(String outcome, String reason) {
    return with(
        outcome,
        reason,
        row.marginal(),
        row.notCountedBecause(),
        row.compliant(),
        row.exposureDays(),
        row.failureClass());
  }

  TestRowDraft exposure(int days, String failureClass) {
    return with(
        row.outcome(),
        row.reason(),
        row.marginal(),
        row.notCountedBecause(),
        row.compliant(),
        days,
        failureClass);
  }

  TestRowDraft notCounted(String because) {
    return with(
        row.outcome(),
        row.reason(),
        row.marginal(),
        because,
        row.compliant(),
        row.exposureDays(),
        row.failureClass());
  }

  TestRowDraft notCompliant() {
    return with(
        row.outcome(),
        row.reason(),
        row.marginal(),
        row.notCountedBecause(),
        false,
        row.exposureDays(),
        row.failureClass());
  }

  TestRowDraft marginal() {
    return with(
        row.outcome(),
        row.reason(),
        true,
        row.notCountedBecause(),
        row.compliant(),
        row.exposureDays(),
        row.failureClass());
  }

  private TestRowDraft with(
      String outcome,
      String reason,
      boolean marginal,
      String because,
      boolean compliant,
      Integer exposureDays,
      String failureClass) {
    row =
        new TestRow(
            row.assemblyId(),
            row.eventId(),
            row.visitId(),
            row.sequence(),
            row.day(),
            row.reportNumber(),
            row.source(),
            row.phase(),
            row.purpose(),
            row.testerId(),
            row.gaugeId(),
            row.method(),
            row.procedureEdition(),
            row.type(),
            row.sizeInch(),
            row.siteId(),
            row.zoneId(),
            row.ageDays(),
            row.verdictIssued(),
            outcome,
            reason,
            marginal,
            because == null,
            because,
            compliant,
            exposureDays,
            failureClass,
            row.reportedAt(),
            row.recordedAt());
    return this;
  }

  TestRow row() {
    return row;
  }
}
