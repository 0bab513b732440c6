package sealspan.table;

import java.time.Instant;
import java.time.LocalDate;
import sealspan.event.Means;

/** One test round. */
public record TestRow(
    @Means("assembly id") String assemblyId,
    @Means("event id") String eventId,
    @Means("visit id") String visitId,
    @Means("place in the visit, from 1") Integer sequence,
    @Means("day") LocalDate day,
    @Means("report number") String reportNumber,
    @Means("source") String source,
    @Means("AS_FOUND or AS_LEFT") String phase,
    @Means("why the round was made") String purpose,
    @Means("tester id") String testerId,
    @Means("gauge id") String gaugeId,
    @Means("test method") String method,
    @Means("edition of the procedure") String procedureEdition,
    @Means("assembly type that day") String type,
    @Means("nominal size, inches, as entered") String sizeInch,
    @Means("site id that day") String siteId,
    @Means("water zone that day") String zoneId,
    @Means("days since installation, where known") Integer ageDays,
    @Means("verdict as issued") String verdictIssued,
    @Means("PASSED, FAILED, FAILED_COMPLIANCE, NOT_TESTABLE or UNDECIDED") String outcome,
    @Means("why, in words") String reason,
    @Means("whether a reading is within the gauge's error of its limit") boolean marginal,
    @Means("whether the round enters failure rates") boolean counted,
    @Means("why it does not, in words") String notCountedBecause,
    @Means("whether the report meets the compliance checks") boolean compliant,
    @Means("days since the assembly last passed; none: no earlier pass known") Integer exposureDays,
    @Means("class of the failure: FOULING, DAMAGE or UNCLASSIFIED") String failureClass,
    @Means("when the programme received it") Instant reportedAt,
    @Means("when the log took it in") Instant recordedAt) {}
