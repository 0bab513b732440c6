package sealspan.table;

import sealspan.event.Means;

/** Seal replacements of one group against those of all others, up to one age. */
public record ReplacementComparisonRow(
    @Means("stratum") String stratum,
    @Means("the group, such as type=RP; compared with all others of the stratum") String groupName,
    @Means("age up to which both are watched, years") Double years,
    @Means("assemblies of the group") int assemblies,
    @Means("their replacements up to that age") long replacements,
    @Means("mean replacements per assembly up to that age") Double mean,
    @Means("lower end of its 95 % interval") Double lower,
    @Means("upper end of its 95 % interval") Double upper,
    @Means("assemblies of the others") int others,
    @Means("mean replacements per assembly of the others") Double othersMean,
    @Means("difference of the means") Double difference,
    @Means("lower end of its 95 % interval") Double differenceLower,
    @Means("upper end of its 95 % interval") Double differenceUpper,
    @Means("two-sided p that both go alike over all ages") Double p,
    @Means("what the figures rest on, or why there are none, in words") String note) {}
