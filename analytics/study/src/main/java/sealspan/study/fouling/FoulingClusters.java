package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.scan.CaseGrid;
import sealspan.stats.scan.Cluster;
import sealspan.stats.scan.NearBest;
import sealspan.stats.scan.Visits;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneFinder;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;

/**
 * The rows of clusters and of their sites.
 *
 * @param clusters the clusters
 * @param outlines the form of each
 * @param members their sites
 * @param because why there are none, in words; null where there are some
 */
record FoulingClusters(
    List<FoulingClusterRow> clusters,
    List<ClusterOutline> outlines,
    List<FoulingClusterMemberRow> members,
    String because) {
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

  static FoulingClusters none(String because) {
    return new FoulingClusters(List.of(), List.of(), List.of(), because);
  }

  static FoulingClusters of(List<Cluster> found, ScanRun run) {
    List<FoulingClusterRow> clusters = new ArrayList<>();
    List<ClusterOutline> outlines = new ArrayList<>();
    List<FoulingClusterMemberRow> members = new ArrayList<>();
    ZoneFinder finder = run.finder();
    Left left =
        new Left(
            run.layout().visits(), run.layout().places().siteOfVisit(), run.layout().counted());
    for (int i = 0; i < found.size(); i++) {
      Cluster cluster = found.get(i);
      Zone zone = cluster.zone();
      CaseGrid grid = run.against().grid(left.counted());
      double[] weight = grid.expectedByPlace();
      NearBest near = finder.on(grid).nearBest(Math.max(1e-9, zone.score() - NEAR));
      int centre = run.form().centre(zone, weight);
      List<FoulingClusterMemberRow> own =
          new ClusterMembers(run, left.visits(), left.site(), left.counted())
              .of(i + 1, zone, centre, near);
      FoulingClusterRow row =
          row(i + 1, cluster, centre, visited(zone, left.counted().grid()), own, near, run);
      clusters.add(row);
      outlines.add(run.form().outline(zone, weight, row.radiusKm()));
      members.addAll(own);
      left = left.without(zone);
    }
    return new FoulingClusters(
        List.copyOf(clusters), List.copyOf(outlines), List.copyOf(members), null);
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
      int centre,
      Window time,
      List<FoulingClusterMemberRow> members,
      NearBest near,
      ScanRun run) {
    Zone zone = cluster.zone();
    ScanPlaces places = run.layout().places();
    ScanPeriods periods = run.layout().periods();
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
        cluster.p() <= run.settings().largestP(),
        members.size(),
        near.zones());
  }
}
