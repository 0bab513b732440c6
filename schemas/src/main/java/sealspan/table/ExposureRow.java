package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/**
 * One component, from its last known pass to a counted as-found round that gave a result, or to the
 * retest of that visit where the round did not reach it and nobody acted on it.
 */
public record ExposureRow(
    @Means("assembly id") String assemblyId,
    @Means("event id of the round") String eventId,
    @Means("component; whole for the assembly") String component,
    @Means("day of the last known pass") LocalDate fromDay,
    @Means("day of the round") LocalDate toDay,
    @Means("days between") int exposureDays,
    @Means("of these, days in service") int inServiceDays,
    @Means("whether it failed") boolean failed,
    @Means("class of the failure: FOULING, DAMAGE or UNCLASSIFIED") String failureClass,
    @Means("action after the pass from which the exposure runs: none, cleaned, replaced, ...")
        String lastAction) {}
