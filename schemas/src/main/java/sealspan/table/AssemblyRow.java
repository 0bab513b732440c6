package sealspan.table;

import java.time.Instant;
import java.time.LocalDate;
import sealspan.event.Means;

/** One assembly as it is known now, with totals of its history. */
public record AssemblyRow(
    @Means("assembly id") String assemblyId,
    @Means("site id") String siteId,
    @Means("label of the premises") String siteLabel,
    @Means("position id") String positionId,
    @Means("water zone") String zoneId,
    @Means("jurisdiction whose criteria apply") String jurisdiction,
    @Means("hazard class") String hazard,
    @Means("containment or isolation") String protection,
    @Means("use of the water") String waterUse,
    @Means("owner id") String ownerId,
    @Means("WGS84 latitude, degrees") Double latitude,
    @Means("WGS84 longitude, degrees") Double longitude,
    @Means("assembly type") String type,
    @Means("nominal size, inches, as entered") String sizeInch,
    @Means("maker") String maker,
    @Means("model") String model,
    @Means("serial") String serial,
    @Means("install day, where known") LocalDate installedOn,
    @Means("first day of the record") LocalDate recordBegins,
    @Means("day of removal") LocalDate removedOn,
    @Means("service state") String serviceState,
    @Means("assembly that it replaced") String replacesAssemblyId,
    @Means("day of the last test round") LocalDate lastTestOn,
    @Means("outcome of the last test round") String lastTestOutcome,
    @Means("day on which it last passed") LocalDate lastPassOn,
    @Means("routine as-found rounds that count in rates") int routineTests,
    @Means("of these, failed on performance") int failures,
    @Means("of the counted rounds, those with an exposure") int testsWithExposure,
    @Means("of the rounds with an exposure, failed") int failuresWithExposure,
    @Means("sum of the exposures, days") long exposureDays,
    @Means("as-found rounds shown but not counted") int roundsNotCounted,
    @Means("seal replacements") int sealReplacements,
    @Means("events of the history") int events,
    @Means("events that arrived again unchanged and were ignored") int duplicatesIgnored,
    @Means("when the log took in the newest of its events") Instant lastRecordedAt) {}
