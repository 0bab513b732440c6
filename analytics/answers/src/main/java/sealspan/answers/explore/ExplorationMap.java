package sealspan.answers.explore;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sealspan.answers.Answer;
import sealspan.answers.FoulingMap;
import sealspan.study.fouling.Exploration;
import sealspan.study.fouling.ExploredSite;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.ZoneRows;

/** A look for clusters as a map, with what the map of the question {@code clusters} shows. */
public final class ExplorationMap {
  private ExplorationMap() {}

  /**
   * The map.
   *
   * @param found what was found
   * @param zones the rows of all water zones
   * @param answer the answer that it goes with
   */
  public static FoulingMap of(Exploration found, List<ZoneRows> zones, Answer answer) {
    return new FoulingMap(
        answer,
        clusters(found),
        found.members().stream().map(ExplorationMap::member).toList(),
        sites(found),
        findings(found),
        water(found, zones),
        found.choice().pipes() == null ? List.of() : found.choice().pipes().open());
  }

  private static List<FoulingMap.Cluster> clusters(Exploration found) {
    List<FoulingMap.Cluster> clusters = new ArrayList<>();
    for (int i = 0; i < found.clusters().size(); i++) {
      FoulingClusterRow row = found.clusters().get(i);
      clusters.add(
          new FoulingMap.Cluster(
              row.number(),
              row.latitude(),
              row.longitude(),
              found.outlines().get(i),
              row.firstDay(),
              row.lastDay(),
              row.sites(),
              row.visits(),
              row.cases(),
              row.expected(),
              row.relativeRisk(),
              row.p(),
              row.pMadeBy(),
              row.significant()));
    }
    return clusters;
  }

  private static FoulingMap.Member member(FoulingClusterMemberRow row) {
    return new FoulingMap.Member(
        row.number(),
        row.siteId(),
        row.zoneId(),
        row.latitude(),
        row.longitude(),
        row.visits(),
        row.cases(),
        row.expected(),
        row.shareOfNearBest());
  }

  private static List<FoulingMap.Site> sites(Exploration found) {
    return found.sites().stream()
        .sorted(
            Comparator.comparingInt((ExploredSite s) -> -s.fouledOn().size())
                .thenComparing(ExploredSite::siteId))
        .limit(FoulingMap.MOST_SITES)
        .map(
            s ->
                new FoulingMap.Site(
                    s.siteId(), s.latitude(), s.longitude(), s.visits(), s.fouledOn().size()))
        .toList();
  }

  private static List<FoulingMap.Finding> findings(Exploration found) {
    Map<String, ExploredSite> bySite = new HashMap<>();
    found.sites().forEach(site -> bySite.put(site.siteId(), site));
    List<FoulingMap.Finding> findings = new ArrayList<>();
    for (FoulingClusterRow cluster : found.clusters()) {
      Map<LocalDate, Integer> sitesOn = new TreeMap<>();
      found.members().stream()
          .filter(m -> m.number() == cluster.number())
          .flatMap(m -> bySite.get(m.siteId()).fouledOn().stream())
          .filter(d -> !d.isBefore(cluster.firstDay()) && !d.isAfter(cluster.lastDay()))
          .forEach(day -> sitesOn.merge(day, 1, Integer::sum));
      sitesOn.forEach(
          (day, sites) -> findings.add(new FoulingMap.Finding(cluster.number(), day, sites)));
    }
    return findings;
  }

  /** The disturbances of the zones of clusters that are beyond chance. */
  private static List<FoulingMap.Water> water(Exploration found, List<ZoneRows> zones) {
    Set<Integer> beyond =
        found.clusters().stream()
            .filter(FoulingClusterRow::significant)
            .map(FoulingClusterRow::number)
            .collect(Collectors.toSet());
    Set<String> ids =
        found.members().stream()
            .filter(m -> m.zoneId() != null && beyond.contains(m.number()))
            .map(FoulingClusterMemberRow::zoneId)
            .collect(Collectors.toSet());
    return zones.stream()
        .filter(zone -> ids.contains(zone.zoneId()))
        .flatMap(zone -> zone.disturbances().stream())
        .filter(d -> d.fromDay() != null)
        .sorted(
            Comparator.comparing(WaterDisturbanceRow::fromDay)
                .thenComparing(WaterDisturbanceRow::zoneId)
                .thenComparing(WaterDisturbanceRow::kind)
                .thenComparing(WaterDisturbanceRow::eventId))
        .map(
            d ->
                new FoulingMap.Water(
                    d.zoneId(), d.kind(), d.fromDay(), d.latitude(), d.longitude()))
        .toList();
  }
}
