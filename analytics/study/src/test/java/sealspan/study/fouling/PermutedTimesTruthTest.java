package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import sealspan.stats.scan.ScanNull;
import sealspan.stats.scan.ScanSettings;
import sealspan.stats.scan.ZoneLimits;
import sealspan.study.practice.RoutedTown;

/**
 * What the warning about times dealt out anew says: in towns whose tests follow a route and where
 * nothing clusters, far more records than 5 percent raise a false alarm. That a permutation of
 * times presumes tests that are spread alike over places and times is said by Kulldorff and others
 * (2005, PLoS Medicine 2:e59) of populations that grow unevenly. Seeds were fixed beforehand.
 */
class PermutedTimesTruthTest {
  private static boolean alarm(long seed) {
    List<FoulingVisit> visits = new RoutedTown(seed, 150, 4, 0.1, 1, 0, 0).visits();
    FoulingModel model = FoulingModel.of(FoulingFit.of(visits).coefficients()).orElseThrow();
    ScanPeriods periods = ScanLayout.periods(visits);
    ScanPlaces places = ScanPlaces.of(visits, 150);
    ScanRun run =
        new ScanRun(
            ScanLayout.of(visits, model, places, periods),
            periods.windows().stream().filter(w -> w.length() < periods.count()).toList(),
            new CircleForm(places, new ZoneLimits(FoulingScan.LARGEST_SHARE, 75)),
            ScanNull.PERMUTED_TIMES,
            new ScanSettings(99, 11, 1, 1, .05));
    return run.found("circle", number -> {}).clusters().stream().anyMatch(c -> c.significant());
  }

  @Test
  void aRouteOfTestsIsTakenForClusters() {
    long alarms =
        IntStream.range(0, ExplorationCautions.ROUTED_RECORDS)
            .filter(set -> alarm(3_000 + set))
            .count();
    assertEquals(ExplorationCautions.ROUTED_ALARMS, alarms);
    double chance =
        1
            - new BinomialDistribution(ExplorationCautions.ROUTED_RECORDS, .05)
                .cumulativeProbability((int) alarms - 1);
    assertTrue(chance < 1e-6, "with " + alarms + " alarms there would be nothing to warn of");
  }
}
