package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** An event of a history that is neither a test nor a repair, in words. */
public record OccurrenceRow(
    @Means("assembly id") String assemblyId,
    @Means("event id") String eventId,
    @Means("day") LocalDate day,
    @Means("type of the event") String kind,
    @Means("what happened, in words") String description) {}
