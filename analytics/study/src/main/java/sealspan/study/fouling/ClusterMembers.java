package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.scan.NearBest;
import sealspan.stats.scan.ScanNull;
import sealspan.stats.scan.Visits;
import sealspan.stats.scan.Zone;
import sealspan.table.FoulingClusterMemberRow;

/**
 * The sites of zones.
 *
 * @param run the scan that found them
 * @param visits the visits in which the zone was found
 * @param site number of the site of each
 * @param counted the same for the scan
 */
record ClusterMembers(ScanRun run, List<FoulingVisit> visits, int[] site, Visits counted) {
  /**
   * The sites of a zone that were visited in its time, in order of their names. Where times are
   * permuted those are among them too that found fouling at other times: some of it was expected in
   * this time.
   */
  List<FoulingClusterMemberRow> of(int number, Zone zone, int centre, NearBest near) {
    boolean[] inside = new boolean[run.layout().places().places()];
    for (int place : zone.places()) {
      inside[place] = true;
    }
    boolean permuted = run.against() == ScanNull.PERMUTED_TIMES;
    Map<String, List<Integer>> bySite = new TreeMap<>();
    for (int i = 0; i < visits.size(); i++) {
      boolean then = zone.window().contains(counted.period()[i]);
      if (inside[counted.place()[i]] && (then || permuted && counted.found()[i])) {
        bySite.computeIfAbsent(visits.get(i).place(), s -> new ArrayList<>()).add(i);
      }
    }
    double[] expected = permuted ? shares(zone) : counted.expected();
    double[] distances = run.form().siteDistancesKm(centre);
    List<FoulingClusterMemberRow> members = new ArrayList<>();
    bySite.values().forEach(own -> members.add(row(number, zone, own, expected, distances, near)));
    return members;
  }

  /** By visit: a found one is expected in the time in proportion to all that were found then. */
  private double[] shares(Zone zone) {
    int then = 0;
    for (int i = 0; i < counted.size(); i++) {
      then += counted.found()[i] && zone.window().contains(counted.period()[i]) ? 1 : 0;
    }
    double[] shares = new double[counted.size()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = counted.found()[i] ? (double) then / counted.cases() : 0;
    }
    return shares;
  }

  private FoulingClusterMemberRow row(
      int number,
      Zone zone,
      List<Integer> own,
      double[] expected,
      double[] distances,
      NearBest near) {
    int made = 0;
    int cases = 0;
    double sum = 0;
    String zoneId = null;
    for (int i : own) {
      FoulingVisit visit = visits.get(i);
      boolean then = zone.window().contains(counted.period()[i]);
      made += then ? 1 : 0;
      cases += then && visit.fouled() ? 1 : 0;
      sum += expected[i];
      zoneId = visit.zoneId() == null ? zoneId : visit.zoneId();
    }
    FoulingVisit any = visits.get(own.get(0));
    int siteNumber = site[own.get(0)];
    return new FoulingClusterMemberRow(
        number,
        any.place(),
        zoneId,
        any.latitude(),
        any.longitude(),
        distances[siteNumber],
        made,
        cases,
        sum,
        near.share()[run.layout().places().placeOfSite()[siteNumber]]);
  }
}
