package sealspan.table;

import sealspan.event.Means;

/** One figure of seal life or of replacements. */
public record SealLifeRow(
    @Means("stratum") String stratum,
    @Means("REPLACED_ANY_REASON or SEAL_FAILED; two questions, never mixed") String question,
    @Means("estimator") String estimator,
    @Means("what the figure is, with its unit") String quantity,
    @Means("the figure; none: not identified") Double figure,
    @Means("lower end of the 95 % interval") Double lower,
    @Means("upper end of the 95 % interval") Double upper,
    @Means("seals") int seals,
    @Means("assemblies") int assemblies,
    @Means("replacements or failures") int endings,
    @Means("seals left out because their origin is unknown") int leftOutUnknownOrigin,
    @Means("longest time under observation, years") Double longestYears,
    @Means("share of a mean that lies beyond the longest observed time") Double extrapolatedShare,
    @Means("what the figure rests on, or why there is none, in words") String note) {}
