package sealspan.table;

import sealspan.event.Means;

/** Failures and replacements of one calendar year. */
public record YearlyRateRow(
    @Means("stratum") String stratum,
    @Means("calendar year") int year,
    @Means("counted tests with an exposure that were made in the year") int tests,
    @Means("of these, failed") int failures,
    @Means("sum of their exposures, days") long exposureDays,
    @Means("most likely failures a year; none: not identified") Double failuresPerYear,
    @Means("lower end of its 95 % interval") Double failuresLower,
    @Means("upper end of its 95 % interval; none: no upper end") Double failuresUpper,
    @Means("days on which seals of an assembly were replaced") int replacements,
    @Means("days of the year that assemblies were watched, summed") long watchedDays,
    @Means("replacement days per assembly and year; none: nobody watched")
        Double replacementsPerYear,
    @Means("lower end of its exact 95 % interval") Double replacementsLower,
    @Means("upper end of its exact 95 % interval") Double replacementsUpper) {}
