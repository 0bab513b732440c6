package sealspan.table;

import sealspan.event.Means;

/** One site in a cluster of fouling failures. */
public record FoulingClusterMemberRow(
    @Means("number of the cluster") int number,
    @Means("site id") String siteId,
    @Means("water zone at its last visit") String zoneId,
    @Means("WGS84 latitude, degrees") double latitude,
    @Means("WGS84 longitude, degrees") double longitude,
    @Means("distance from the centre, km") double distanceKm,
    @Means("its visits in the time of the cluster") int visits,
    @Means("of these, with a fouling failure") int cases,
    @Means("visits with a fouling failure that were expected") double expected,
    @Means("share of the zones that score nearly as well which hold it: near 1 it surely belongs")
        double shareOfNearBest) {}
