package sealspan.table;

import sealspan.event.Means;

/** Failure rates of a stratum, a year, and how they differ between its assemblies. */
public record RatePriorRow(
    @Means("stratum") String stratum,
    @Means("assemblies with an exposure") int assemblies,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed") int failures,
    @Means("sum of the exposures, days") long exposureDays,
    @Means("failures a year if all assemblies shared one rate") Double commonPerYear,
    @Means("lower end of its 95 % interval") Double lowerPerYear,
    @Means("upper end of its 95 % interval") Double upperPerYear,
    @Means("rounds whose report meets the compliance checks") int compliantTests,
    @Means("of these, failed") int compliantFailures,
    @Means("common rate a year from these alone") Double compliantPerYear,
    @Means("lower end of its 95 % interval") Double compliantLowerPerYear,
    @Means("upper end of its 95 % interval") Double compliantUpperPerYear,
    @Means("shape of a gamma prior; none: assemblies are not seen to differ") Double shape,
    @Means("rate parameter of the gamma prior, years") Double rateYears,
    @Means("mean of the gamma prior, failures a year") Double meanPerYear,
    @Means("log-likelihood of the spline prior; only for the stratum all, all else held equal")
        Double splineLikelihood,
    @Means("log-likelihood of a gamma prior instead; none: it is not identified")
        Double gammaLikelihood,
    @Means("log-likelihood that no prior exceeds by much") Double highestLikelihood,
    @Means("logarithm of the lowest rate of the lattice, per day") Double latticeLowestLog,
    @Means("distance of its nodes in the logarithm") Double latticeStep,
    @Means("assemblies in place that are ranked") Long ranked,
    @Means("twice their mean rate, a year: the limit of the claims") Double limitPerYear,
    @Means("assemblies on the list of claims, of which a tenth is expected to be wrong")
        Integer listed,
    @Means("largest probability of being wrong on the list") Double listCutoff,
    @Means("correlation of outcomes between different assemblies of one site")
        Double siteCorrelation,
    @Means("factor by which it widens the variance of a site's figures; ignored in intervals")
        Double siteDesignEffect,
    @Means("what the data cannot tell, in words") String note) {}
