package sealspan.study.fouling;

import java.util.List;
import java.util.function.IntConsumer;
import sealspan.stats.Estimate;
import sealspan.stats.scan.Cluster;
import sealspan.stats.scan.ScanNull;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.ZoneFinder;

/**
 * One scan of visits that are laid out: what to look for, and what against.
 *
 * @param layout the visits
 * @param windows the times, ordered by first period, then last
 * @param form the zones
 * @param against what cases are held against
 * @param settings replicates, seed, most clusters, largest p-value
 */
record ScanRun(
    ScanLayout layout,
    List<Window> windows,
    ZoneForm form,
    ScanNull against,
    ScanSettings settings) {
  private static final int FEWEST_CASES = 5;

  /**
   * What it finds.
   *
   * @param oneZone one of the zones, in words
   * @param begun told the number of each cluster before it is looked for
   */
  FoulingClusters found(String oneZone, IntConsumer begun) {
    int cases = layout.counted().cases();
    if (cases > 0 && cases < FEWEST_CASES) {
      return FoulingClusters.none(
          "not identified: only "
              + cases
              + " visits to sites with coordinates found fouling; a scan needs "
              + FEWEST_CASES);
    }
    Estimate<List<Cluster>> found =
        ScanStatistic.of(layout.counted(), finder(), against, settings, begun);
    if (found instanceof Estimate.NotIdentified<List<Cluster>> not) {
      return FoulingClusters.none("not identified: " + not.because());
    }
    List<Cluster> clusters = found.orThrow();
    return clusters.isEmpty()
        ? FoulingClusters.none(
            "no " + oneZone + " and time held more fouling failures than expected")
        : FoulingClusters.of(clusters, this);
  }

  ZoneFinder finder() {
    return form.finder(windows, settings.fewestExpected());
  }
}
