package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.scan.CaseGrid;
import sealspan.stats.scan.Cluster;
import sealspan.stats.scan.NearBest;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Visits;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.Zone;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;

/** The rows of clusters and of their sites. */
record FoulingClusters(List<FoulingClusterRow> clusters, List<FoulingClusterMemberRow> members) {
  static final FoulingClusters NONE = new FoulingClusters(List.of(), List.of());

  private static final double NEAR = 2;

  /** What is left after clusters that were found before were taken out. */
  private record Left(List<FoulingVisit> visits, int[] site, Visits counted) {
    Left without(Zone zone) {
      boolean[] out = new boolean[counted.places()];
      for (int place : zone.places()) {
        out[place] = true;
      }
      List<FoulingVisit> kept = new ArrayList<>();
      List<Integer> sites = new ArrayList<>();
      for (int i = 0; i < visits.size(); i++) {
        if (!out[counted.place()[i]] || !zone.window().contains(counted.period()[i])) {
          kept.add(visits.get(i));
          sites.add(site[i]);
        }
      }
      return new Left(
          kept,
          sites.stream().mapToInt(Integer::intValue).toArray(),
          counted.without(zone.places(), zone.window()));
    }
  }

  static FoulingClusters of(
      List<Cluster> found,
      List<FoulingVisit> visits,
      Visits counted,
      ScanPlaces places,
      ScanPeriods periods,
      ScanStatistic.Shapes shapes,
      ScanSettings settings) {
    List<FoulingClusterRow> clusters = new ArrayList<>();
    List<FoulingClusterMemberRow> members = new ArrayList<>();
    Left left = new Left(visits, places.siteOfVisit(), counted);
    for (int i = 0; i < found.size(); i++) {
      Cluster cluster = found.get(i);
      CaseGrid grid = left.counted().grid();
      NearBest near =
          NearBest.of(
              grid,
              periods.windows(),
              shapes.orders(grid.expectedByPlace()),
              settings.fewestExpected(),
              Math.max(1e-9, cluster.zone().score() - NEAR));
      List<FoulingClusterMemberRow> own = members(i + 1, cluster.zone(), left, places, near);
      Window time = visited(cluster.zone(), grid);
      clusters.add(row(i + 1, cluster, time, own, places, periods, near, settings));
      members.addAll(own);
      left = left.without(cluster.zone());
    }
    return new FoulingClusters(List.copyOf(clusters), List.copyOf(members));
  }

  /** The window from the first to the last period in which the zone's places were visited. */
  private static Window visited(Zone zone, CaseGrid grid) {
    int first = zone.window().last();
    int last = zone.window().first();
    for (int period = zone.window().first(); period <= zone.window().last(); period++) {
      for (int place : zone.places()) {
        if (grid.expected()[period * grid.places() + place] > 0) {
          first = Math.min(first, period);
          last = Math.max(last, period);
        }
      }
    }
    return new Window(first, last);
  }

  private static FoulingClusterRow row(
      int number,
      Cluster cluster,
      Window time,
      List<FoulingClusterMemberRow> members,
      ScanPlaces places,
      ScanPeriods periods,
      NearBest near,
      ScanSettings settings) {
    Zone zone = cluster.zone();
    int centre = zone.places()[0];
    int visits = 0;
    double radius = 0;
    for (FoulingClusterMemberRow member : members) {
      visits += member.visits();
      radius = Math.max(radius, member.distanceKm());
    }
    double p = cluster.p();
    String madeBy = "MONTE_CARLO";
    if (cluster.asLarge() == 0
        && cluster.gumbelP() instanceof Estimate.Identified<Double> tail
        && tail.value() < p) {
      p = Math.max(Double.MIN_NORMAL, tail.value());
      madeBy = "GUMBEL_EXTRAPOLATED";
    }
    double risk = zone.relativeRisk();
    return new FoulingClusterRow(
        number,
        places.plane().latitudeAt(places.y()[centre]),
        places.plane().longitudeAt(places.x()[centre]),
        radius,
        periods.firstDay(time.first()),
        periods.lastDay(time.last()),
        visits,
        zone.cases(),
        zone.expected(),
        Double.isFinite(risk) ? risk : null,
        zone.score(),
        p,
        madeBy,
        cluster.p(),
        cluster.asLarge(),
        cluster.p() <= settings.largestP(),
        members.size(),
        near.zones());
  }

  /** The sites of a zone that were visited in its time, in order of their names. */
  private static List<FoulingClusterMemberRow> members(
      int number, Zone zone, Left left, ScanPlaces places, NearBest near) {
    boolean[] inside = new boolean[places.places()];
    for (int place : zone.places()) {
      inside[place] = true;
    }
    Visits counted = left.counted();
    double[] expected = counted.expected();
    Map<String, List<Integer>> bySite = new TreeMap<>();
    for (int i = 0; i < left.visits().size(); i++) {
      if (inside[counted.place()[i]] && zone.window().contains(counted.period()[i])) {
        bySite.computeIfAbsent(left.visits().get(i).place(), s -> new ArrayList<>()).add(i);
      }
    }
    List<FoulingClusterMemberRow> members = new ArrayList<>();
    bySite.forEach(
        (siteId, visits) -> {
          int cases = 0;
          double sum = 0;
          String zoneId = null;
          for (int i : visits) {
            FoulingVisit visit = left.visits().get(i);
            cases += visit.fouled() ? 1 : 0;
            sum += expected[i];
            zoneId = visit.zoneId() == null ? zoneId : visit.zoneId();
          }
          FoulingVisit any = left.visits().get(visits.get(0));
          int site = left.site()[visits.get(0)];
          members.add(
              new FoulingClusterMemberRow(
                  number,
                  siteId,
                  zoneId,
                  any.latitude(),
                  any.longitude(),
                  places.distanceKm(zone.places()[0], site),
                  visits.size(),
                  cases,
                  sum,
                  near.share()[places.placeOfSite()[site]]));
        });
    return members;
  }
}
