package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/**
 * A circle and a time with more fouling failures than the tests made there let expect. Found
 * looking back: a search over many circles and times, which its p-value allows for.
 */
public record FoulingClusterRow(
    @Means("number, in the order found; each one after those before it were taken out") int number,
    @Means("WGS84 latitude of the centre, degrees") double latitude,
    @Means("WGS84 longitude of the centre, degrees") double longitude,
    @Means("distance from the centre to the farthest site, km") double radiusKm,
    @Means("first day of its time") LocalDate firstDay,
    @Means("last day of its time") LocalDate lastDay,
    @Means("site visits in it") int visits,
    @Means("of these, with a fouling failure") int cases,
    @Means("visits with a fouling failure that were expected") double expected,
    @Means("cases per expected case inside, over the same outside; none: no case is outside")
        Double relativeRisk,
    @Means("logarithm of the likelihood ratio") double logLikelihoodRatio,
    @Means("probability of a score as large anywhere, if nothing clustered") double p,
    @Means("MONTE_CARLO, or GUMBEL_EXTRAPOLATED where p is smaller than the replicates can count")
        String pMadeBy,
    @Means("p as the replicates count it") double monteCarloP,
    @Means("replicates with a score as large; ties count") int replicatesAsLarge,
    @Means("p is at most 0.05") boolean significant,
    @Means("its sites") int sites,
    @Means("zones whose score is within 2 of it, over all windows") int nearBestZones) {}
