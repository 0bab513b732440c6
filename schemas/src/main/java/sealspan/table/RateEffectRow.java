package sealspan.table;

import sealspan.event.Means;

/** What goes with higher or lower failure rates, the other columns held equal. */
public record RateEffectRow(
    @Means("stratum") String stratum,
    @Means("type, size, zone or age") String factor,
    @Means("level") String level,
    @Means("tests with an exposure at this level") int tests,
    @Means("of these, failed") int failures,
    @Means("rate as a multiple of that of the base level; 1 for the base itself") double ratio,
    @Means("lower end of its 95 % interval, clustered by assembly; none: base level") Double lower,
    @Means("upper end") Double upper,
    @Means("what to know of it") String note) {}
