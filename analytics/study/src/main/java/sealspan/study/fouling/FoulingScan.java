package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sealspan.stats.Estimate;
import sealspan.stats.scan.Cluster;
import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Visits;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.ZoneLimits;
import sealspan.stats.scan.ZoneOrder;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.FoulingScanRow;

/**
 * Where and when site visits found more fouling failures than the same visits let expect, looking
 * back over all of the record. Visits stay where and when they were made, so a route of tests is no
 * cluster; in each stratum of season and type the number of fouling failures is taken as given.
 *
 * <p>The work is bounded: places times circles times windows are about {@value #MOST_CYLINDERS} at
 * most, and at most {@value #MOST_CLUSTERS} clusters are looked for. In a larger fleet neighbouring
 * sites are put together until there are few enough places.
 *
 * @param row how it was made
 * @param clusters what was found
 * @param members their sites
 */
public record FoulingScan(
    FoulingScanRow row, List<FoulingClusterRow> clusters, List<FoulingClusterMemberRow> members) {
  /** The 5 percent that a cluster must not exceed to be called one. */
  public static final double LEVEL = .05;

  private static final int MOST_CYLINDERS = 8_000_000;
  private static final int MOST_PLACES = 2_000;
  private static final double LARGEST_SHARE = .25;
  private static final int FEWEST_CASES = 5;
  private static final int REPLICATES = 999;
  private static final int MOST_CLUSTERS = 6;
  private static final long SEED = 20_260_101;
  private static final int MOST_NAMES = 10;

  /** The scan of classified visits, ordered, with the probabilities of a model. */
  public static FoulingScan of(List<FoulingVisit> classified, FoulingModel model) {
    return of(classified, model, new ScanSettings(REPLICATES, SEED, 1, MOST_CLUSTERS, LEVEL));
  }

  /** The same with other settings, for studies of the scan itself. */
  public static FoulingScan of(
      List<FoulingVisit> classified, FoulingModel model, ScanSettings settings) {
    List<FoulingVisit> visits = classified.stream().filter(FoulingVisit::hasPlace).toList();
    LocalDate first = visits.isEmpty() ? LocalDate.EPOCH : visits.get(0).day();
    LocalDate last = visits.isEmpty() ? first : visits.get(visits.size() - 1).day();
    ScanPeriods periods = ScanPeriods.of(first, last);
    List<Window> windows = periods.windows();
    int mostPlaces =
        Math.min(MOST_PLACES, (int) Math.sqrt(MOST_CYLINDERS / LARGEST_SHARE / windows.size()));
    ScanPlaces places = ScanPlaces.of(visits, mostPlaces);
    Visits counted = counted(visits, model, places, periods);
    ZoneLimits limits = new ZoneLimits(LARGEST_SHARE, Math.max(1, mostPlaces / 2));
    ScanStatistic.Shapes circles =
        weight -> PlanarZones.circles(places.x(), places.y(), weight, limits);
    Estimate<List<Cluster>> found =
        counted.cases() > 0 && counted.cases() < FEWEST_CASES
            ? Estimate.notIdentified(
                "only "
                    + counted.cases()
                    + " visits to sites with coordinates found fouling; a scan needs "
                    + FEWEST_CASES)
            : ScanStatistic.of(counted, windows, circles, settings);
    FoulingClusters rows =
        found instanceof Estimate.Identified<List<Cluster>> some
            ? FoulingClusters.of(some.value(), visits, counted, places, periods, circles, settings)
            : FoulingClusters.NONE;
    String because =
        found instanceof Estimate.NotIdentified<List<Cluster>> not
            ? "not identified: " + not.because()
            : rows.clusters().isEmpty()
                ? "no circle and time held more fouling failures than expected"
                : null;
    FoulingScanRow row =
        row(classified, visits, places, periods, counted, circles, settings, because);
    return new FoulingScan(row, rows.clusters(), rows.members());
  }

  private static Visits counted(
      List<FoulingVisit> visits, FoulingModel model, ScanPlaces places, ScanPeriods periods) {
    int n = visits.size();
    int[] place = new int[n];
    int[] period = new int[n];
    int[] stratum = new int[n];
    boolean[] found = new boolean[n];
    double[] probability = new double[n];
    Map<String, Integer> strata = new HashMap<>();
    for (int i = 0; i < n; i++) {
      FoulingVisit visit = visits.get(i);
      place[i] = places.placeOfSite()[places.siteOfVisit()[i]];
      period[i] = periods.of(visit.day());
      String season = "quarter " + (visit.day().getMonthValue() - 1) / 3;
      stratum[i] = strata.computeIfAbsent(season + " " + visit.type(), key -> strata.size());
      found[i] = visit.fouled();
      probability[i] = model.probability(visit);
    }
    return new Visits(places.places(), periods.count(), place, period, stratum, found, probability);
  }

  private static FoulingScanRow row(
      List<FoulingVisit> classified,
      List<FoulingVisit> visits,
      ScanPlaces places,
      ScanPeriods periods,
      Visits counted,
      ScanStatistic.Shapes circles,
      ScanSettings settings,
      String because) {
    List<FoulingVisit> lost = classified.stream().filter(v -> !v.hasPlace()).toList();
    Set<String> lostSites =
        lost.stream().map(FoulingVisit::place).collect(Collectors.toCollection(TreeSet::new));
    long zones = 0;
    for (ZoneOrder order : circles.orders(counted.grid().expectedByPlace())) {
      zones += order.places().length;
    }
    int strata = 0;
    for (int s : counted.stratum()) {
      strata = Math.max(strata, s + 1);
    }
    return new FoulingScanRow(
        visits.size(),
        counted.cases(),
        lost.size(),
        (int) lost.stream().filter(FoulingVisit::fouled).count(),
        lostSites.size(),
        lostSites.isEmpty()
            ? null
            : lostSites.stream().limit(MOST_NAMES).collect(Collectors.joining(", ")),
        places.sites(),
        places.places(),
        places.radiusKm(),
        visits.isEmpty() ? null : periods.firstDay(0),
        visits.isEmpty() ? null : periods.lastDay(periods.count() - 1),
        periods.count(),
        periods.months(),
        periods.longestWindowMonths(),
        strata,
        zones * periods.windows().size(),
        LARGEST_SHARE,
        settings.replicates(),
        settings.seed(),
        because);
  }
}
