package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** One reading or observation, judged. */
public record ReadingRow(
    @Means("assembly id") String assemblyId,
    @Means("event id of the round") String eventId,
    @Means("day") LocalDate day,
    @Means("AS_FOUND or AS_LEFT") String phase,
    @Means("component, such as check1 or bypass.check1") String component,
    @Means("what was measured") String measure,
    @Means("what was seen") String observation,
    @Means("number as entered") String enteredValue,
    @Means("unit as entered") String enteredUnit,
    @Means("the number in psi, rounded to 0.0001") Double psi,
    @Means("limit in its own unit, as the criteria give it") String limitText,
    @Means("PASSED, FAILED, UNKNOWN or NOT_JUDGED") String result,
    @Means("within the gauge's error of the limit") boolean marginal,
    @Means(
            "number of the stretch of readings between which nobody acted on the component, from 1;"
                + " none: the reading tells nothing of a drift")
        Integer run,
    @Means("least value that passes, psi, for a reading of a run") Double limitPsi,
    @Means("greatest error of the gauge, psi; none: no rule gives one") Double gaugeErrorPsi,
    @Means("smallest step that it was read to, psi") Double stepPsi,
    @Means("same text: read by one gauge between two calibrations") String gaugePeriod) {}
