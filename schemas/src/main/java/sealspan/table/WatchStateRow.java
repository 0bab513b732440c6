package sealspan.table;

import java.time.Instant;
import sealspan.event.Means;

/** Where a run of the watch over fouling stands. */
public record WatchStateRow(
    @Means("AS_KNOWN: by what was known then; RESTATED: by what holds after corrections")
        String run,
    @Means("models frozen so far that it went by") int models,
    @Means("id of the ledger entry of the last one") String modelId,
    @Means("when that was frozen") Instant modelFrozenAt,
    @Means("sites watched") int sites,
    @Means("of these, without coordinates: each watched alone and in its water zone")
        int sitesWithoutPlace,
    @Means("the first of these, with commas") String sitesWithoutPlaceNamed,
    @Means("zones watched") int zones,
    @Means("tests judged") int tests,
    @Means("of these, in no zone") int testsOutside,
    @Means("tests left out because a fouling failure was known of the same visit already")
        int testsOfFouledVisits,
    @Means("tests known before the first model was frozen; not watched") int testsBefore,
    @Means("alarms raised") int alarms,
    @Means("the evidence now") double evidence,
    @Means("the evidence that an alarm needs, which is the mean number of tests to a false one")
        double threshold,
    @Means("tests since the last alarm or the beginning") long testsSinceAlarm,
    @Means("tests a year at the present pace") double testsPerYear,
    @Means("mean years to a false alarm at that pace") double yearsToFalseAlarm,
    @Means("when the last test became known") Instant lastKnownAt,
    @Means("tests since the model was frozen") int calibrationTests,
    @Means("of these, with a fouling failure") int calibrationCases,
    @Means("fouling failures that were expected of them") double calibrationExpected,
    @Means("cases per expected case; none: too few to tell") Double calibrationRatio,
    @Means("lower limit, 95 %") Double calibrationLower,
    @Means("upper limit, 95 %") Double calibrationUpper,
    @Means("bound on the chance of this if the probabilities are right, however often one looked")
        double calibrationChance,
    @Means("whether the probabilities hold: HOLDS, TOO_LOW, TOO_HIGH or TOO_EARLY") String promise,
    @Means("the same in words") String promiseWords) {}
