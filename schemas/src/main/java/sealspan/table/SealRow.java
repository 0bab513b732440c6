package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** The time of one seal at its position. */
public record SealRow(
    @Means("assembly id") String assemblyId,
    @Means("assembly type") String type,
    @Means("nominal size, inches, as entered") String sizeInch,
    @Means("component whose seal it is") String component,
    @Means("number of the seal at the position, from 1") int gap,
    @Means("first day of the seal; where its origin is unknown, the first day of the record")
        LocalDate startDay,
    @Means("whether the first day is that of installation or replacement") boolean originKnown,
    @Means("day since when the seal is under observation: not before the record begins")
        LocalDate entryDay,
    @Means("last day: replacement, removal, or the day of the last result") LocalDate endDay,
    @Means("REPLACED, REMOVED or IN_PLACE") String endedBy,
    @Means("reason of the replacement: FAILED, WHILE_OPEN, SCHEDULED, DAMAGED_IN_WORK")
        String replacementReason,
    @Means("last day on which the seal is known to have held") LocalDate lastHeldOn,
    @Means("day on which it was found failed; none: it was not") LocalDate foundFailedOn,
    @Means("days in service from the first to the last day") int inServiceDays) {}
