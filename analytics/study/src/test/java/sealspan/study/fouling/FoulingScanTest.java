package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sealspan.stats.scan.ScanSettings;
import sealspan.study.practice.RoutedTown;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;

class FoulingScanTest {
  private static final ScanSettings QUICK = new ScanSettings(99, 5, 1, 10, .05);
  private static final RoutedTown WITH = new RoutedTown(3, 250, 5, 0.08, 6, 40, 365);

  private static FoulingScan scan(List<FoulingVisit> visits) {
    FoulingModel model = FoulingModel.of(FoulingFit.of(visits).coefficients()).orElseThrow();
    return FoulingScan.of(visits, model, QUICK);
  }

  private static FoulingVisit moved(
      FoulingVisit v, Double latitude, Double longitude, FoulingFailure outcome) {
    return new FoulingVisit(
        v.day(),
        v.siteId(),
        v.assemblyId(),
        v.zoneId(),
        latitude,
        longitude,
        v.type(),
        v.rounds(),
        v.exposureDays(),
        outcome);
  }

  @Test
  void findsTheClusterThatWasPutIn() {
    List<FoulingVisit> visits = WITH.visits();
    FoulingScan scan = scan(visits);
    FoulingClusterRow first = scan.clusters().get(0);
    assertTrue(first.significant());
    assertEquals(0, first.replicatesAsLarge());
    assertEquals("GUMBEL_EXTRAPOLATED", first.pMadeBy());
    assertEquals(0.01, first.monteCarloP());
    assertTrue(first.p() < 0.01, "p " + first.p());
    // The middle of the town, 0.045 degrees from its corner at 37, -140.
    assertEquals(37.045, first.latitude(), 0.012);
    assertEquals(-139.944, first.longitude(), 0.015);
    assertTrue(first.firstDay().isBefore(LocalDate.of(2018, 7, 2)), first.toString());
    assertTrue(first.lastDay().isAfter(LocalDate.of(2017, 7, 2)), first.toString());
    assertTrue(first.relativeRisk() > 2.5, first.toString());
  }

  /** A time begins and ends with a quarter in which sites of the cluster were visited. */
  @Test
  void noTimeIsLongerThanItsVisits() {
    List<FoulingVisit> visits = WITH.visits();
    FoulingScan scan = scan(visits);
    for (FoulingClusterRow cluster : scan.clusters()) {
      Set<String> own = new TreeSet<>();
      scan.members().stream()
          .filter(m -> m.number() == cluster.number())
          .forEach(m -> own.add(m.siteId()));
      List<LocalDate> days =
          visits.stream()
              .filter(v -> own.contains(v.siteId()))
              .map(FoulingVisit::day)
              .filter(d -> !d.isBefore(cluster.firstDay()) && !d.isAfter(cluster.lastDay()))
              .toList();
      assertTrue(days.get(0).isBefore(cluster.firstDay().plusMonths(3)), cluster.toString());
      assertTrue(
          days.get(days.size() - 1).isAfter(cluster.lastDay().minusMonths(3)), cluster.toString());
    }
  }

  /** Sums over the sites of a cluster are those of the cluster, and shares are shares. */
  @Test
  void sitesAddUpToTheirCluster() {
    FoulingScan scan = scan(WITH.visits());
    for (FoulingClusterRow cluster : scan.clusters()) {
      List<FoulingClusterMemberRow> own =
          scan.members().stream().filter(m -> m.number() == cluster.number()).toList();
      assertEquals(cluster.sites(), own.size());
      assertEquals(cluster.cases(), own.stream().mapToInt(m -> m.cases()).sum());
      assertEquals(cluster.visits(), own.stream().mapToInt(m -> m.visits()).sum());
      assertEquals(cluster.expected(), own.stream().mapToDouble(m -> m.expected()).sum(), 1e-6);
      assertEquals(
          cluster.radiusKm(), own.stream().mapToDouble(m -> m.distanceKm()).max().orElse(-1), 0);
      assertTrue(cluster.nearBestZones() >= 1);
      assertTrue(own.stream().allMatch(m -> m.shareOfNearBest() > 0 && m.shareOfNearBest() <= 1));
    }
  }

  /**
   * The best circle and time found a second time, from the visits alone: every centre, every
   * distance, every window, with what each stratum expects; distances by the haversine formula.
   */
  @Test
  void theBestIsThatOfTryingAll() {
    List<FoulingVisit> visits = new RoutedTown(4, 40, 3, 0.15, 5, 8, 365).visits();
    FoulingFit fit = FoulingFit.of(visits);
    FoulingScan scan = scan(visits);
    double best = SlowScan.best(visits, FoulingModel.of(fit.coefficients()).orElseThrow());
    assertEquals(best, scan.clusters().get(0).logLikelihoodRatio(), 1e-6);
  }

  @Test
  void secondClustersAreLookedForInWhatIsLeft() {
    FoulingScan scan = scan(WITH.visits());
    List<FoulingClusterRow> clusters = scan.clusters();
    assertFalse(
        clusters.get(clusters.size() - 1).significant() && clusters.size() < QUICK.mostClusters());
    int total = scan.row().foulingVisits();
    int found = clusters.stream().mapToInt(FoulingClusterRow::cases).sum();
    assertTrue(found <= total, found + " of " + total);
  }

  @Test
  void sitesWithoutCoordinatesAreCountedAndNamed() {
    List<FoulingVisit> visits = new ArrayList<>();
    Set<String> lost = new TreeSet<>();
    for (FoulingVisit v : WITH.visits()) {
      boolean without = v.siteId().endsWith("7");
      if (without) {
        lost.add(v.siteId());
      }
      visits.add(without ? moved(v, null, null, v.outcome()) : v);
    }
    FoulingScan scan = scan(visits);
    assertEquals(lost.size(), scan.row().sitesWithoutPlace());
    assertEquals(5 * lost.size(), scan.row().visitsWithoutPlace());
    assertTrue(scan.row().namesWithoutPlace().startsWith(lost.iterator().next() + ", "));
    assertEquals(visits.size(), scan.row().visits() + scan.row().visitsWithoutPlace());
  }

  private static void saysWhy(List<FoulingVisit> visits, String words) {
    FoulingScan scan = scan(visits);
    assertEquals(List.of(), scan.clusters());
    assertTrue(scan.row().because().contains(words), scan.row().because());
  }

  @Test
  void saysWhyThereCanBeNone() {
    List<FoulingVisit> some = new RoutedTown(5, 30, 3, 0.2, 1, 0, 0).visits();
    saysWhy(
        some.stream()
            .map(v -> moved(v, v.latitude(), v.longitude(), FoulingFailure.NOT_FOULED))
            .toList(),
        "nothing was found at any visit");
    saysWhy(
        some.stream()
            .map(v -> moved(v, v.latitude(), v.longitude(), FoulingFailure.FOULED))
            .toList(),
        "it was found at every visit");
    saysWhy(
        some.stream().map(v -> moved(v, 37.0, -140.0, v.outcome())).toList(),
        "all lie at one point");
    saysWhy(
        some.stream().map(v -> moved(v, null, null, v.outcome())).toList(),
        "there is no visit with a place");
    List<FoulingVisit> one =
        WITH.visits().stream().filter(v -> v.siteId().equals("S0000001")).toList();
    FoulingModel model = FoulingModel.of(FoulingFit.of(some).coefficients()).orElseThrow();
    FoulingScan scan = FoulingScan.of(one, model, QUICK);
    assertEquals(List.of(), scan.clusters());
    assertTrue(scan.row().because().startsWith("not identified"), scan.row().because());
    assertEquals(List.of(), FoulingScan.of(List.of(), model, QUICK).clusters());
  }

  /** Across the line where 180 degrees east are 180 west, near is near. */
  @Test
  void aTownOnTheDateLineIsOneTown() {
    List<FoulingVisit> visits =
        WITH.visits().stream()
            .map(
                v -> {
                  double east = v.longitude() + 140 + 179.95;
                  return moved(v, v.latitude(), east > 180 ? east - 360 : east, v.outcome());
                })
            .toList();
    FoulingScan there = scan(visits);
    FoulingScan here = scan(WITH.visits());
    assertEquals(
        here.members().stream().map(m -> m.siteId()).toList(),
        there.members().stream().map(m -> m.siteId()).toList());
    assertEquals(here.clusters().get(0).radiusKm(), there.clusters().get(0).radiusKm(), 1e-9);
  }

  @Test
  void aLargeFleetIsPutTogetherInPlaces() {
    List<FoulingVisit> visits = new RoutedTown(6, 4_000, 1, 0.02, 1, 0, 0).visits();
    ScanPlaces places = ScanPlaces.of(visits, 300);
    assertTrue(places.places() <= 300 && places.places() > 150, "" + places.places());
    assertEquals(4_000, places.sites());
    // A square of the grid has a side of at most 10 km / sqrt(150).
    assertTrue(places.radiusKm() < 10 / Math.sqrt(150), "" + places.radiusKm());
  }

  @Test
  void periodsAreQuartersOrLongerInALongRecord() {
    ScanPeriods short_ = ScanPeriods.of(LocalDate.of(2015, 5, 9), LocalDate.of(2016, 2, 1));
    assertEquals(new ScanPeriods(LocalDate.of(2015, 4, 1), 3, 4), short_);
    assertEquals(LocalDate.of(2016, 3, 31), short_.lastDay(3));
    assertEquals(3, short_.of(LocalDate.of(2016, 1, 1)));
    ScanPeriods long_ = ScanPeriods.of(LocalDate.of(1960, 12, 31), LocalDate.of(2020, 1, 1));
    assertEquals(12, long_.months());
    assertEquals(61, long_.count());
    assertEquals(62, long_.windows().size());
  }
}
