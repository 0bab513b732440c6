package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** How clusters of fouling failures were looked for. */
public record FoulingScanRow(
    @Means("site visits looked at") int visits,
    @Means("of these, with a fouling failure") int foulingVisits,
    @Means("visits left out because their site has no coordinates") int visitsWithoutPlace,
    @Means("of these, with a fouling failure") int foulingVisitsWithoutPlace,
    @Means("sites left out because they have no coordinates") int sitesWithoutPlace,
    @Means("up to ten of them") String namesWithoutPlace,
    @Means("sites looked at") int sites,
    @Means("places: neighbouring sites are put together in a large fleet") int places,
    @Means("greatest distance of a site from the middle of its place, km") double placeRadiusKm,
    @Means("first day of the first period") LocalDate firstDay,
    @Means("last day of the last period") LocalDate lastDay,
    @Means("periods") int periods,
    @Means("length of a period, months") int periodMonths,
    @Means("longest window, months; beside these the whole time") int longestWindowMonths,
    @Means("strata of season and type, each with its own number of cases taken as given")
        int strata,
    @Means("zones times windows looked at") long cylinders,
    @Means("largest share of all expected cases in a zone") double largestShare,
    @Means("Monte Carlo replicates for each cluster") int replicates,
    @Means("seed of the replicates") long seed,
    @Means("why there are no clusters, in words") String because) {}
