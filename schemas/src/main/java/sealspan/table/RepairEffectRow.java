package sealspan.table;

import sealspan.event.Means;

/** One figure of the comparison of cleaning with a new seal, after a component had failed. */
public record RepairEffectRow(
    @Means("stratum") String stratum,
    @Means("what was found on opening: ANY, FOULING, DAMAGE, NOTHING_FOUND or NOT_KNOWN")
        String found,
    @Means("place of the figure in its list, from 0") int place,
    @Means("what the figure is; the first is the answer in words, in the note") String quantity,
    @Means("the figure; none: not identified") Double figure,
    @Means("lower end of the 95 % interval") Double lower,
    @Means("upper end of the 95 % interval") Double upper,
    @Means("cases that were cleaned") int cleaned,
    @Means("of these, failed at the next routine test") int cleanedFailed,
    @Means("cases that got a new seal") int renewed,
    @Means("of these, failed at the next routine test") int renewedFailed,
    @Means("assemblies of the cases") int assemblies,
    @Means("what the figure rests on, or why there is none, in words") String note) {}
