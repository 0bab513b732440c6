package sealspan.table;

import sealspan.event.Means;

/** Repairs that did not take: components that failed again in the same visit. */
public record RetestRow(
    @Means("stratum") String stratum,
    @Means("CLEANED or SEAL_RENEWED: what was done first") String action,
    @Means("repairs of a failed component with a result in the same visit") int retests,
    @Means("of these, failed again") int failed,
    @Means("share") Double share,
    @Means("lower end of the exact 95 % interval") Double lower,
    @Means("upper end of the exact 95 % interval") Double upper) {}
