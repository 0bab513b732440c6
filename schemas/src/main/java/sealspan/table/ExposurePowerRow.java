package sealspan.table;

import sealspan.event.Means;

/** Whether failures accumulate with the time between tests: the coefficient of log exposure. */
public record ExposurePowerRow(
    @Means("stratum: all, or type=...") String stratum,
    @Means("mechanism: ALL, FOULING or DAMAGE") String mechanism,
    @Means("tests with an exposure") int tests,
    @Means("of these, failed so") int failures,
    @Means("failed tests left out because their mechanism is not known") int unclassified,
    @Means("coefficient; 1: failures accumulate evenly, 0: the time between tests is of no account")
        Double coefficient,
    @Means("lower end of its 95 % interval, clustered by assembly; joint for all types")
        Double lower,
    @Means("upper end") Double upper,
    @Means("PER_YEAR, or PER_TEST where the interval excludes 1") String quoted,
    @Means("what the data cannot tell, in words") String note) {}
