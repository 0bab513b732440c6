package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** One result of a water sample. */
public record WaterSampleRow(
    @Means("zone id") String zoneId,
    @Means("event id") String eventId,
    @Means("day") LocalDate day,
    @Means("monitoring location id") String stationId,
    @Means("what was measured") String characteristic,
    @Means("fraction") String fraction,
    @Means("number as entered") String enteredValue,
    @Means("unit as entered") String enteredUnit,
    @Means("MEASURED, or how it is censored") String detection,
    @Means("detection limit as entered") String detectionLimit,
    @Means("unit of the limit as entered") String detectionLimitUnit) {}
