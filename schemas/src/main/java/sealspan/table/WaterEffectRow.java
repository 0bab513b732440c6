package sealspan.table;

import sealspan.event.Means;

/**
 * What a water event or a water quality in the same zone goes with: how often fouling is found
 * after it. Beside it stand two controls that should show 1: the same after the test, which cannot
 * have caused what the test found, and the same in another zone.
 */
public record WaterEffectRow(
    @Means("place in the list, from 0") int place,
    @Means("MAIN_BREAK, FLUSHING, TREATMENT_CHANGE, SHUTDOWN, or a water quality such as IRON")
        String exposure,
    @Means("when it must have come to count, in words") String lag,
    @Means(
            "INTERVAL_EXPOSURE: events between the last pass and the test; SELF_CONTROLLED: days"
                + " around events; DISTRIBUTED_LAG: weeks after events")
        String method,
    @Means("the answer in words") String words,
    @Means("tests looked at; for dated outcomes, the outcomes") int tests,
    @Means("of these, fouled") int fouled,
    @Means("of the tests, those with the event; none for a water quality") Integer exposedTests,
    @Means("of these, fouled") Integer exposedFouled,
    @Means("different events, or days of samples, that these tests met") int events,
    @Means("water zones of the tests") int zones,
    @Means("ratio of the rates of fouling; none: not identified") Double ratio,
    @Means("lower end of the 95 % interval") Double lower,
    @Means("upper end; none: no upper limit") Double upper,
    @Means("what the ratio compares") String compares,
    @Means("ratio of the chances at a test, at the mean chance without") Double chanceRatio,
    @Means("lower end of the 95 % interval") Double chanceLower,
    @Means("upper end") Double chanceUpper,
    @Means("probability of a ratio as far from 1, if there were no effect") Double p,
    @Means("the same, raised for all questions asked at once (Benjamini and Hochberg)")
        Double adjustedP,
    @Means("questions asked at once that have an answer") int questions,
    @Means("control: ratio for the same after the test; none: not identified") Double futureRatio,
    @Means("lower end of the 95 % interval") Double futureLower,
    @Means("upper end") Double futureUpper,
    @Means("control: ratio for the same in another zone; none: not identified")
        Double otherZoneRatio,
    @Means("lower end of the 95 % interval") Double otherZoneLower,
    @Means("upper end") Double otherZoneUpper,
    @Means("what the interval takes as independent") String clusteredBy,
    @Means("what was left out, with counts") String leftOut,
    @Means("why there is no ratio, in words") String because) {}
