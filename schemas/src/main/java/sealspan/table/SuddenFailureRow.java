package sealspan.table;

import sealspan.event.Means;

/** Failures that no drift of a reading explains: gamma prior of their yearly rates. */
public record SuddenFailureRow(
    @Means("stratum") String stratum,
    @Means("assemblies with an exposure") int assemblies,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed suddenly") int failures,
    @Means("of these, failed because a reading drifted below its limit") int gradualFailures,
    @Means("shape; none: not identified") Double shape,
    @Means("rate parameter, years") Double rateYears,
    @Means("mean sudden failures a year") Double meanPerYear,
    @Means("what the data cannot tell, in words") String note) {}
