package sealspan.study.fouling;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sealspan.stats.scan.ScanNull;
import sealspan.stats.scan.ScanSettings;
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
  static final int MOST_PLACES = 2_000;
  static final double LARGEST_SHARE = .25;
  static final int REPLICATES = 999;
  static final int MOST_CLUSTERS = 6;
  static final long SEED = 20_260_101;
  static final int MOST_NAMES = 10;

  /** The scan of classified visits, ordered, with the probabilities of a model. */
  public static FoulingScan of(List<FoulingVisit> classified, FoulingModel model) {
    return of(classified, model, new ScanSettings(REPLICATES, SEED, 1, MOST_CLUSTERS, LEVEL));
  }

  /** The same with other settings, for studies of the scan itself. */
  public static FoulingScan of(
      List<FoulingVisit> classified, FoulingModel model, ScanSettings settings) {
    List<FoulingVisit> visits = classified.stream().filter(FoulingVisit::hasPlace).toList();
    ScanPeriods periods = ScanLayout.periods(visits);
    List<Window> windows = periods.windows();
    int mostPlaces = mostPlaces(windows.size(), MOST_CYLINDERS);
    ScanPlaces places = ScanPlaces.of(visits, mostPlaces);
    ScanLayout layout = ScanLayout.of(visits, model, places, periods);
    ZoneLimits limits = new ZoneLimits(LARGEST_SHARE, Math.max(1, mostPlaces / 2));
    ScanRun run =
        new ScanRun(layout, windows, new CircleForm(places, limits), ScanNull.TESTS, settings);
    FoulingClusters found = run.found(ZoneShape.CIRCLES.one(), number -> {});
    return new FoulingScan(
        row(classified, run, found.because()), found.clusters(), found.members());
  }

  /** Most places for which the cylinders of one shape are about so many. */
  static int mostPlaces(int windows, long cylinders) {
    return Math.min(MOST_PLACES, (int) Math.sqrt(cylinders / LARGEST_SHARE / windows));
  }

  /** How a scan of classified visits was made. */
  static FoulingScanRow row(List<FoulingVisit> classified, ScanRun run, String because) {
    ScanLayout layout = run.layout();
    ScanPeriods periods = layout.periods();
    List<FoulingVisit> lost = classified.stream().filter(v -> !v.hasPlace()).toList();
    Set<String> lostSites =
        lost.stream().map(FoulingVisit::place).collect(Collectors.toCollection(TreeSet::new));
    long zones = 0;
    for (ZoneOrder order :
        run.form().shapes().orders(run.against().grid(layout.counted()).expectedByPlace())) {
      zones += order.places().length;
    }
    boolean empty = layout.visits().isEmpty();
    return new FoulingScanRow(
        layout.visits().size(),
        layout.counted().cases(),
        lost.size(),
        (int) lost.stream().filter(FoulingVisit::fouled).count(),
        lostSites.size(),
        names(lostSites, MOST_NAMES),
        layout.places().sites(),
        layout.places().places(),
        layout.places().radiusKm(),
        empty ? null : periods.firstDay(0),
        empty ? null : periods.lastDay(periods.count() - 1),
        periods.count(),
        periods.months(),
        periods.longestWindowMonths(),
        layout.strata(),
        zones * run.windows().size(),
        LARGEST_SHARE,
        run.settings().replicates(),
        run.settings().seed(),
        because);
  }

  /** Up to some names; null where there are none. */
  static String names(Set<String> sites, int most) {
    return sites.isEmpty() ? null : sites.stream().limit(most).collect(Collectors.joining(", "));
  }
}
