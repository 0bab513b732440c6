package sealspan.table;

import sealspan.event.Means;

/** One point of a curve. */
public record CurveRow(
    @Means("stratum") String stratum,
    @Means("REPLACED_ANY_REASON or SEAL_FAILED") String question,
    @Means("estimator") String estimator,
    @Means("reason of the endings that the curve counts, such as FAILED; none: any reason")
        String reason,
    @Means("days since the seal was new, or since the assembly came under observation") int days,
    @Means("value of the curve from that day on; where the data leave it open, the highest")
        double height,
    @Means("lowest value that the data leave open from that day on") Double heightAtLeast,
    @Means("lower end of the pointwise 95 % interval") Double lower,
    @Means("upper end of the pointwise 95 % interval") Double upper,
    @Means("at risk just before") long atRisk,
    @Means("endings on that day, or found on it") long endings) {}
