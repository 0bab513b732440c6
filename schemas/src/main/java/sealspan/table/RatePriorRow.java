package sealspan.table;

import sealspan.event.Means;

/** Gamma prior of the failure rates of a stratum, a year. */
public record RatePriorRow(
    @Means("stratum") String stratum,
    @Means("assemblies with an exposure") int assemblies,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed") int failures,
    @Means("sum of the exposures, days") long exposureDays,
    @Means("shape; none: not identified") Double shape,
    @Means("rate parameter, years") Double rateYears,
    @Means("mean failures a year") Double meanPerYear,
    @Means("lower end of the 95 % interval of the pooled rate") Double lowerPerYear,
    @Means("upper end of the 95 % interval of the pooled rate") Double upperPerYear,
    @Means("what the data cannot tell, in words") String note) {}
