package sealspan.table;

import sealspan.event.Means;

/** How a component ages, and how much of its age repairs leave, under one model. */
public record AgeingRow(
    @Means("stratum") String stratum,
    @Means("KIJIMA_I: a share of the age since the last repair stays; KIJIMA_II: of the whole age")
        String model,
    @Means("whether this model has the smaller AIC of the two") boolean fitsBetter,
    @Means("components watched from new") int components,
    @Means("assemblies that they belong to") int assemblies,
    @Means("failures found at tests") int failures,
    @Means("components left out because their origin is unknown") int leftOutUnknownOrigin,
    @Means("Weibull shape; above 1: they wear; none: not identified") Double shape,
    @Means("lower end of its 95 % interval") Double shapeLower,
    @Means("upper end of its 95 % interval") Double shapeUpper,
    @Means("age that 37 % of new ones reach, years") Double scaleYears,
    @Means("lower end of its 95 % interval") Double scaleLower,
    @Means("upper end of its 95 % interval") Double scaleUpper,
    @Means("share of the age that is left after repair with the seal kept; 0: as good as new")
        Double keptSealShare,
    @Means("lower end of its 95 % interval") Double keptSealLower,
    @Means("upper end of its 95 % interval") Double keptSealUpper,
    @Means("share of the age that is left after the seal was renewed") Double newSealShare,
    @Means("lower end of its 95 % interval") Double newSealLower,
    @Means("upper end of its 95 % interval") Double newSealUpper,
    @Means("variance of the factor by which components differ; 0: no difference seen")
        Double frailtyVariance,
    @Means("log-likelihood") Double logLikelihood,
    @Means("Akaike's criterion; smaller fits better") Double aic,
    @Means("places the search started from") Integer starts,
    @Means("how many of them led to this result") Integer startsAgreeing,
    @Means("whether the data can tell cleaning from a new seal through ageing") boolean separates,
    @Means("what it rests on, or why there is nothing, in words") String note) {}
