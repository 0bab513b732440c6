package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** One disturbance of the water of a zone. */
public record WaterDisturbanceRow(
    @Means("zone id") String zoneId,
    @Means("event id") String eventId,
    @Means("kind") String kind,
    @Means("first day") LocalDate fromDay,
    @Means("last day") LocalDate untilDay,
    @Means("WGS84 latitude, degrees") Double latitude,
    @Means("WGS84 longitude, degrees") Double longitude,
    @Means("remarks") String remarks) {}
