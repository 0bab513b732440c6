package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A site that was looked at.
 *
 * @param siteId site id
 * @param latitude WGS84 latitude, degrees
 * @param longitude WGS84 longitude, degrees
 * @param visits its visits
 * @param fouledOn the days on which fouling was found, in order
 */
public record ExploredSite(
    String siteId, double latitude, double longitude, int visits, List<LocalDate> fouledOn) {
  /** The sites of visits that all have coordinates and are ordered by day; by name. */
  static List<ExploredSite> of(List<FoulingVisit> visits) {
    Map<String, List<FoulingVisit>> bySite = new TreeMap<>();
    visits.forEach(v -> bySite.computeIfAbsent(v.place(), s -> new ArrayList<>()).add(v));
    List<ExploredSite> sites = new ArrayList<>();
    bySite.forEach(
        (site, own) ->
            sites.add(
                new ExploredSite(
                    site,
                    own.get(0).latitude(),
                    own.get(0).longitude(),
                    own.size(),
                    own.stream().filter(FoulingVisit::fouled).map(FoulingVisit::day).toList())));
    return List.copyOf(sites);
  }
}
