package sealspan.study.practice;

import java.time.LocalDate;
import sealspan.event.ComponentAt;
import sealspan.event.Means;

/** A failure as it truly came about; the record shows it at a test at the earliest. */
public record TrueFailure(
    @Means("assembly id") String assemblyId,
    @Means("component") ComponentAt component,
    @Means("WORN or FOULED") SealState state,
    @Means("when it failed, days since 1970-01-01") double failedAtDay,
    @Means("virtual age of the seal at that time, days") double virtualAgeDays,
    @Means("id of the disturbance without which it would not have come; none: no such")
        String disturbanceId,
    @Means("day of the first visit after it") LocalDate firstVisitOn) {}
