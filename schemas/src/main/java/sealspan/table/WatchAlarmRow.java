package sealspan.table;

import java.time.Instant;
import java.time.LocalDate;
import sealspan.event.Means;

/**
 * An alarm of the watch over fouling: by what was known at its time, or by what holds now. The
 * calibration beside it is that of the tests outside its zone.
 */
public record WatchAlarmRow(
    @Means("id that follows from its content") String alarmId,
    @Means("AS_KNOWN: by what was known then; RESTATED: by what holds after corrections")
        String run,
    @Means("when the test that raised it became known") Instant raisedAt,
    @Means("event id of that test") String raisedByEventId,
    @Means("id of the ledger entry of the frozen model") String modelId,
    @Means("when that model was frozen") Instant modelFrozenAt,
    @Means("the zone, in words") String zone,
    @Means("CIRCLE or WATER_ZONE") String zoneKind,
    @Means("water zone; none for a circle") String zoneId,
    @Means("site in the middle of a circle") String centreSiteId,
    @Means("WGS84 latitude of the middle, degrees") Double latitude,
    @Means("WGS84 longitude of the middle, degrees") Double longitude,
    @Means("distance from the middle to the farthest site, km") Double radiusKm,
    @Means("number of its sites") int sites,
    @Means("its sites, with commas") String members,
    @Means("how many times the stated probability fits best") double multiplier,
    @Means("share of the evidence that the zone carries") double share,
    @Means("the evidence") double evidence,
    @Means("the evidence that an alarm needs, which is the mean number of tests to a false one")
        double threshold,
    @Means("tests watched since the last alarm or the beginning") long testsWatched,
    @Means("tests a year at the pace of then") double testsPerYear,
    @Means("mean years to a false alarm at that pace") double yearsToFalseAlarm,
    @Means("from when on there seem to be too many, by when it became known") Instant since,
    @Means("day of the test it begins with") LocalDate sinceDay,
    @Means("tests in the zone since then") int tests,
    @Means("of these, with a fouling failure") int cases,
    @Means("fouling failures that were expected") double expected,
    @Means("event ids of the cases, with commas") String caseEventIds,
    @Means("tests outside the zone since the model was frozen") int calibrationTests,
    @Means("of these, with a fouling failure") int calibrationCases,
    @Means("fouling failures that were expected of them") double calibrationExpected,
    @Means("cases per expected case there; none: too few to tell") Double calibrationRatio,
    @Means("lower limit, 95 %") Double calibrationLower,
    @Means("upper limit, 95 %") Double calibrationUpper,
    @Means("whether the probabilities held: HOLDS, TOO_LOW, TOO_HIGH or TOO_EARLY") String promise,
    @Means("the same in words") String promiseWords) {}
