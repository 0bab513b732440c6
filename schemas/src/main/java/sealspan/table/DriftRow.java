package sealspan.table;

import sealspan.event.Means;

/** How the readings of one component of one type drift between actions on it. */
public record DriftRow(
    @Means("stratum") String stratum,
    @Means("component") String component,
    @Means("what is measured") String measure,
    @Means("assemblies with a run of two readings or more") int assemblies,
    @Means("runs of two readings or more") int runs,
    @Means("steps from one reading to the next") int steps,
    @Means("of these, used in the fit") int stepsUsed,
    @Means("runs that ended with a failed reading") int failures,
    @Means("mean drift, psi a year; none: not identified") Double driftPerYear,
    @Means("lower end of its 95 % interval") Double driftLowerPerYear,
    @Means("upper end of its 95 % interval") Double driftUpperPerYear,
    @Means("standard deviation of the drift between units, psi a year") Double driftSdPerYear,
    @Means("standard deviation of the wander after a year, psi") Double wanderPsi,
    @Means("failures that no drift explains, a year") Double suddenPerYear,
    @Means("of these, the share without a number to read") Double unreadableShare,
    @Means("share of the gauge's greatest variance that the readings show, at most 1")
        Double errorShare,
    @Means("the same of what a gauge is off between two calibrations; 1 where too few tell of it")
        Double biasShare,
    @Means("what the data cannot tell, in words") String note) {}
