package sealspan.table;

import sealspan.event.Means;

/** Failure rate of one assembly. */
public record RateRow(
    @Means("assembly id") String assemblyId,
    @Means("counted rounds with an exposure") int tests,
    @Means("of these, failed") int failures,
    @Means("sum of the exposures, days") long exposureDays,
    @Means("PER_YEAR, or PER_TEST where failures do not accumulate with time; then no yearly rate")
        String quoted,
    @Means("most likely failures a year; none: not identified") Double perYear,
    @Means("lower end of the exact 95 % interval, a year") Double lowerPerYear,
    @Means("upper end of the exact 95 % interval, a year; none: no upper end") Double upperPerYear,
    @Means("share of the tests that failed") Double shareFailed,
    @Means("lower end of its exact 95 % interval") Double shareLower,
    @Means("upper end of its exact 95 % interval") Double shareUpper,
    @Means("tests whose report meets the compliance checks") int compliantTests,
    @Means("of these, failed") int compliantFailures,
    @Means("failures a year from these alone") Double compliantPerYear,
    @Means("lower end of its exact 95 % interval") Double compliantLowerPerYear,
    @Means("upper end of its exact 95 % interval") Double compliantUpperPerYear,
    @Means("ASSEMBLIES_LIKE_IT, or COMMON_RATE where assemblies differ no more than chance")
        String expectedFrom,
    @Means("failures a year, drawn towards assemblies like it") Double shrunkPerYear,
    @Means("lower end of its 95 % interval") Double shrunkLowerPerYear,
    @Means("upper end of its 95 % interval") Double shrunkUpperPerYear,
    @Means("probability that a test a year after a pass fails") Double failsWithinYear,
    @Means("lower end of its 95 % interval") Double failsWithinYearLower,
    @Means("upper end of its 95 % interval") Double failsWithinYearUpper,
    @Means("variance of that probability; none for the common rate") Double failsWithinYearVariance,
    @Means("probability that its rate is more than twice the mean of the fleet")
        Double probabilityDoubleMean,
    @Means("expected rank by rate within the fleet, 1 = highest") Double expectedRank,
    @Means("low end of the 95 % interval of its rank") Long rankLower,
    @Means("high end of the 95 % interval of its rank") Long rankUpper,
    @Means("probability that it is among the ten of the fleet with the highest rates")
        Double probabilityWorstTen,
    @Means("whether it is on the list of claims that its rate is more than twice the mean")
        Boolean listed,
    @Means("what the data cannot tell, in words") String note) {}
