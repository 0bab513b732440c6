package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** Something noticed about a report or a history; it is kept and shown, never acted upon alone. */
public record FindingRow(
    @Means("assembly id") String assemblyId,
    @Means("event id") String eventId,
    @Means("day") LocalDate day,
    @Means("report number") String reportNumber,
    @Means("tester id") String testerId,
    @Means("INVALID, COUNTS_AS_FAILED, SUSPICIOUS, CONFLICT or INCOMPLETE") String kind,
    @Means("name of the check") String checkName,
    @Means("what was noticed, in words") String finding) {}
