package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;
import sealspan.stats.scan.PipeNetwork;
import sealspan.stats.scan.ScanNull;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.ZoneLimits;
import sealspan.study.Members;
import sealspan.table.AssemblyRows;
import sealspan.table.FoulingClusterMemberRow;
import sealspan.table.FoulingClusterRow;
import sealspan.table.FoulingScanRow;

/**
 * One look for clusters of fouling, as a person chose to look: by zones of some shape, in times or
 * over the whole time, against the tests that were made or against times dealt out anew. It is made
 * anew from the rows of all assemblies, with a fit of its own, by the steps of {@link FoulingScan}.
 *
 * @param choice how to look
 * @param visits the visits of the days that were chosen
 * @param visitsOutside visits of other days
 * @param roundsWithoutPass routine as-found rounds of all days that no earlier pass is known for
 * @param fit what is expected, whatever the place
 * @param scan how the scan was made; null where nothing could be fitted
 * @param clusters what was found
 * @param outlines the form of each cluster
 * @param members the sites of all clusters
 * @param sites all sites with coordinates that were looked at, and how often they were found fouled
 * @param pipes what became of sites and valves on the pipes; null for other shapes
 * @param partSites sites of each part of the network, the largest first; empty for other shapes
 * @param mostPlaces most places of a zone, or of a ball for subsets
 */
public record Exploration(
    ExplorationChoice choice,
    FoulingVisits visits,
    int visitsOutside,
    int roundsWithoutPass,
    FoulingFit fit,
    FoulingScanRow scan,
    List<FoulingClusterRow> clusters,
    List<ClusterOutline> outlines,
    List<FoulingClusterMemberRow> members,
    List<ExploredSite> sites,
    PipesSeen pipes,
    List<Integer> partSites,
    int mostPlaces) {
  private static final long MOST_CYLINDERS_OF_CIRCLES = 8_000_000;
  private static final long MOST_CYLINDERS = 60_000_000;
  private static final int MOST_PLACES_OF_A_BALL = 30;
  private static final int FEWEST_PLACES_OF_A_REACH = 10;

  /** The form, and what is known of the pipes that it follows. */
  private record Ground(
      ScanLayout layout, ZoneForm form, ZoneLimits limits, PipesSeen pipes, List<Integer> parts) {}

  /**
   * Looks.
   *
   * @param assemblies the rows of all assemblies, in any order
   * @param choice how to look
   * @param begun told the number of each cluster, from 1, before it is looked for
   */
  public static Exploration of(
      List<AssemblyRows> assemblies, ExplorationChoice choice, IntConsumer begun) {
    return of(assemblies, choice, FoulingScan.REPLICATES, begun);
  }

  /** The same with another number of replicates, for tests. */
  static Exploration of(
      List<AssemblyRows> all, ExplorationChoice choice, int replicates, IntConsumer begun) {
    Members assemblies = Members.of(all);
    LocalDate since = choice.since() == null ? LocalDate.MIN : choice.since();
    LocalDate until = choice.until() == null ? LocalDate.MAX : choice.until();
    FoulingVisits visits = FoulingVisits.of(assemblies, since, until);
    int outside = FoulingVisits.of(assemblies).visits().size() - visits.visits().size();
    List<FoulingVisit> classified = visits.classified();
    FoulingFit fit = FoulingFit.of(classified);
    FoulingModel model = FoulingModel.of(fit.coefficients()).orElse(null);
    int withoutPass = withoutPass(all);
    if (model == null) {
      return new Exploration(
          choice,
          visits,
          outside,
          withoutPass,
          fit,
          null,
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          null,
          List.of(),
          0);
    }
    Ground ground =
        ground(classified.stream().filter(FoulingVisit::hasPlace).toList(), model, choice);
    ScanSettings settings =
        new ScanSettings(
            replicates, FoulingScan.SEED, 1, FoulingScan.MOST_CLUSTERS, choice.level());
    ScanRun run = run(ground, choice, settings);
    String because = whyNot(ground, run, choice);
    FoulingClusters found =
        because == null ? run.found(choice.shape().one(), begun) : FoulingClusters.none(because);
    return new Exploration(
        choice,
        visits,
        outside,
        withoutPass,
        fit,
        FoulingScan.row(classified, run, found.because()),
        found.clusters(),
        found.outlines(),
        found.members(),
        ExploredSite.of(ground.layout().visits()),
        ground.pipes(),
        ground.parts(),
        ground.limits().mostPlaces());
  }

  /**
   * What a look finds among classified visits with other settings, for studies of the shapes.
   *
   * @param classified the visits, ordered
   * @param model what is expected
   */
  public static FoulingScan found(
      List<FoulingVisit> classified,
      FoulingModel model,
      ExplorationChoice choice,
      ScanSettings settings) {
    Ground ground =
        ground(classified.stream().filter(FoulingVisit::hasPlace).toList(), model, choice);
    ScanRun run = run(ground, choice, settings);
    FoulingClusters found = run.found(choice.shape().one(), number -> {});
    return new FoulingScan(
        FoulingScan.row(classified, run, found.because()), found.clusters(), found.members());
  }

  private static ScanRun run(Ground ground, ExplorationChoice choice, ScanSettings settings) {
    return new ScanRun(
        ground.layout(),
        windows(ground.layout().periods(), choice),
        ground.form(),
        choice.permuted() ? ScanNull.PERMUTED_TIMES : ScanNull.TESTS,
        settings);
  }

  private static int withoutPass(List<AssemblyRows> assemblies) {
    return (int)
        assemblies.stream()
            .flatMap(rows -> rows.tests().stream())
            .filter(r -> r.counted() && r.phase().equals("AS_FOUND"))
            .filter(r -> !FoulingVisits.countsIn(r))
            .count();
  }

  private static List<Window> windows(ScanPeriods periods, ExplorationChoice choice) {
    if (choice.wholeTime()) {
      return periods.wholeOnly();
    }
    // Over the whole time, cases with their times dealt out anew are always as many as expected.
    return choice.permuted()
        ? periods.windows().stream().filter(w -> w.length() < periods.count()).toList()
        : periods.windows();
  }

  private static Ground ground(
      List<FoulingVisit> placed, FoulingModel model, ExplorationChoice choice) {
    ScanPeriods periods = ScanLayout.periods(placed);
    int windows = Math.max(1, windows(periods, choice).size());
    if (choice.shape() == ZoneShape.PIPES) {
      return alongPipes(placed, model, choice, periods, windows);
    }
    int shapes = choice.shape() == ZoneShape.ELLIPSES ? EllipseForm.SHAPES : 1;
    int most =
        FoulingScan.mostPlaces(
            windows * shapes, shapes > 1 ? MOST_CYLINDERS : MOST_CYLINDERS_OF_CIRCLES);
    ScanPlaces places = ScanPlaces.of(placed, most);
    boolean subsets = choice.shape() == ZoneShape.SUBSETS;
    ZoneLimits limits =
        new ZoneLimits(
            FoulingScan.LARGEST_SHARE, subsets ? MOST_PLACES_OF_A_BALL : Math.max(1, most / 2));
    ZoneForm form =
        subsets
            ? new SubsetForm(places, limits)
            : shapes > 1 ? new EllipseForm(places, limits) : new CircleForm(places, limits);
    ScanLayout layout = ScanLayout.of(placed, model, places, periods);
    return new Ground(layout, form, limits, null, List.of());
  }

  private static Ground alongPipes(
      List<FoulingVisit> placed,
      FoulingModel model,
      ExplorationChoice choice,
      ScanPeriods periods,
      int windows) {
    PipesSeen seen = PipesSeen.of(placed, choice.pipes(), choice.pipeWithinM());
    ScanPlaces places = ScanPlaces.of(seen.near(), Integer.MAX_VALUE);
    PipeNetwork network = seen.network(places, choice.pipes());
    long most = MOST_CYLINDERS / Math.max(1, (long) places.places() * windows);
    ZoneLimits limits =
        new ZoneLimits(
            FoulingScan.LARGEST_SHARE,
            (int) Math.max(FEWEST_PLACES_OF_A_REACH, Math.min(most, FoulingScan.MOST_PLACES)));
    return new Ground(
        ScanLayout.of(seen.near(), model, places, periods),
        new PipeForm(places, network, limits),
        limits,
        seen,
        PipesSeen.parts(network));
  }

  private static String whyNot(Ground ground, ScanRun run, ExplorationChoice choice) {
    PipesSeen pipes = ground.pipes();
    if (pipes != null && pipes.near().isEmpty() && pipes.farVisits() > 0) {
      return String.format(
          Locale.ROOT,
          "not identified: none of the %d sites lies within %.0f m of an open pipe, the nearest is"
              + " %.0f m away; see whether the file is of the same town, with longitude before"
              + " latitude, or allow more metres",
          pipes.farSites().size(),
          choice.pipeWithinM(),
          pipes.nearestM());
    }
    return run.windows().isEmpty() && !ground.layout().visits().isEmpty()
        ? "not identified: all visits lie in one period, so there are no times to deal out anew"
        : null;
  }

  /** Whether anything was found that is beyond chance. */
  public boolean isBeyondChance() {
    return clusters.stream().anyMatch(FoulingClusterRow::significant);
  }
}
