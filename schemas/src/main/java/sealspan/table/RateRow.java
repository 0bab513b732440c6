package sealspan.table;

import sealspan.event.Means;

/** Failure rate of one assembly. */
public record RateRow(
    @Means("assembly id") String assemblyId,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed") int failures,
    @Means("sum of the exposures, days") long exposureDays,
    @Means("most likely failures a year; none: not identified") Double perYear,
    @Means("lower end of the exact 95 % interval, a year") Double lowerPerYear,
    @Means("upper end of the exact 95 % interval, a year; none: no upper end") Double upperPerYear,
    @Means("stratum whose prior was used; none: no fit yet") String priorStratum,
    @Means("failures a year, drawn towards assemblies like it") Double shrunkPerYear,
    @Means("lower end of its 95 % interval") Double shrunkLowerPerYear,
    @Means("upper end of its 95 % interval") Double shrunkUpperPerYear,
    @Means("probability that its rate is more than twice the mean of the stratum")
        Double probabilityDoubleMean,
    @Means("what the data cannot tell, in words") String note) {}
