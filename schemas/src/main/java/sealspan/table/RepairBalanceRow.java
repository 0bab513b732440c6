package sealspan.table;

import sealspan.event.Means;

/** How alike cleaned cases and cases with a new seal were before, in one respect. */
public record RepairBalanceRow(
    @Means("stratum") String stratum,
    @Means("what was found on opening: ANY, FOULING, DAMAGE, NOTHING_FOUND or NOT_KNOWN")
        String found,
    @Means("in which respect") String covariate,
    @Means("mean of the cleaned cases") double cleanedMean,
    @Means("mean of the cases with a new seal") double renewedMean,
    @Means("difference of the means in standard deviations") Double differenceBefore,
    @Means("weighted mean of the cleaned cases") double cleanedWeightedMean,
    @Means("weighted mean of the cases with a new seal") double renewedWeightedMean,
    @Means("difference of the weighted means, in the same standard deviations")
        Double differenceAfter) {}
