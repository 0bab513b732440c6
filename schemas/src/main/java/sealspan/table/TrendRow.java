package sealspan.table;

import sealspan.event.Means;

/** One figure that tells whether something comes ever oftener. */
public record TrendRow(
    @Means("stratum") String stratum,
    @Means("REPLACEMENTS or FAILURES_AT_TESTS; two questions, never mixed") String subject,
    @Means("place of the figure in its list, from 0; the first is the verdict") int place,
    @Means("what the figure is") String quantity,
    @Means("the figure; none: not identified") Double figure,
    @Means("lower end of the 95 % interval") Double lower,
    @Means("upper end of the 95 % interval") Double upper,
    @Means("two-sided p of no trend") Double p,
    @Means("RISING, FALLING, NO_TREND_SEEN or NOT_IDENTIFIED") String verdict,
    @Means("replacements or failures") long events,
    @Means("assemblies") int assemblies,
    @Means("what the figure rests on, or why there is none, in words") String note) {}
