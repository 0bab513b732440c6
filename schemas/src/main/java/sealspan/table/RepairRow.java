package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** One action on one component. */
public record RepairRow(
    @Means("assembly id") String assemblyId,
    @Means("event id") String eventId,
    @Means("number of the action in the repair, from 1") int item,
    @Means("visit id") String visitId,
    @Means("day") LocalDate day,
    @Means("component") String component,
    @Means("what the test saw") String failureMode,
    @Means("what was found") String mechanism,
    @Means("why") String cause,
    @Means("what was done") String action,
    @Means("whether the seal was renewed") boolean sealRenewed,
    @Means("why a seal was replaced") String replacementReason,
    @Means("parts fitted, in words") String parts,
    @Means("whether the component had failed as found") boolean afterFailure,
    @Means("result of the component in the retest of the same visit") String retestResult,
    @Means("day of the next as-found result of the component") LocalDate nextResultOn,
    @Means("that result") String nextResult,
    @Means("working time of the whole repair, minutes") Integer workMinutes) {}
