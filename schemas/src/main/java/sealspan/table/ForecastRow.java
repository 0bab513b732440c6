package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** Forecast of the next test of one assembly, if nobody acts on it before. */
public record ForecastRow(
    @Means("assembly id") String assemblyId,
    @Means("stratum whose fit was used; none: no fit yet") String stratum,
    @Means("id of the cut of that fit") String fitCutId,
    @Means("event id of the round that passed last; none: it has not passed since it failed")
        String basisEventId,
    @Means("day of that round") LocalDate basisDay,
    @Means("a year after that round") LocalDate dueOn,
    @Means("probability that it fails a test made on the due day") Double probabilityFails,
    @Means("probability that a reading has drifted below its limit by then")
        Double probabilityDrift,
    @Means("probability of a sudden failure by then") Double probabilitySudden,
    @Means("what makes up most of it: a component, or sudden failure") String drivenBy,
    @Means("readings since the last action, of all its components") int readings,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed suddenly") int suddenFailures,
    @Means("probability that it fails a test made on the basis day") Double probabilityAtOnce,
    @Means("probability that it fails a test made 6 months after it") Double probability6Months,
    @Means("probability that it fails a test made 24 months after it") Double probability24Months,
    @Means("probability for any assembly of its type, a year after a pass") Double baseProbability,
    @Means("what the data cannot tell, in words") String note) {}
