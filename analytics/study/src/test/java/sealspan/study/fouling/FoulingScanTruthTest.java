package sealspan.study.fouling;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.junit.jupiter.api.Test;
import sealspan.stats.scan.ScanSettings;
import sealspan.study.practice.RoutedTown;

/**
 * The short form of the study of the scan in the module of benchmarks ({@code ScanTruth}): towns in
 * which tests follow a route and fouling does not cluster, and towns in which it does. Everything
 * is estimated as it is for a real fleet. Seeds were fixed beforehand.
 */
class FoulingScanTruthTest {
  private static final int SETS = 200;
  private static final double ALLOWED = .06;
  private static final ScanSettings SETTINGS = new ScanSettings(99, 11, 1, 1, .05);

  private static FoulingScan scan(RoutedTown town) {
    List<FoulingVisit> visits = town.visits();
    FoulingModel model = FoulingModel.of(FoulingFit.of(visits).coefficients()).orElseThrow();
    return FoulingScan.of(visits, model, SETTINGS);
  }

  private static int alarms(int sets, double ratio, int clusterSites) {
    return (int)
        IntStream.range(0, sets)
            .filter(
                set ->
                    scan(new RoutedTown(1_000 + set, 150, 4, 0.1, ratio, clusterSites, 365))
                        .clusters()
                        .stream()
                        .anyMatch(c -> c.significant()))
            .count();
  }

  /** At a nominal .05 at most .06; fails where a binomial test rejects that at p below .001. */
  @Test
  void aRouteOfTestsIsNoCluster() {
    int alarms = alarms(SETS, 1, 0);
    double p = 1 - new BinomialDistribution(SETS, ALLOWED).cumulativeProbability(alarms - 1);
    assertTrue(p >= .001, alarms + " false alarms of " + SETS);
    assertTrue(alarms > 0, "the scan never speaks: something is broken");
  }

  /** Twenty sites at eight times the risk for a year are found more often than not. */
  @Test
  void aStrongClusterIsFound() {
    int found = alarms(40, 8, 20);
    assertTrue(found > 20, found + " of 40");
  }
}
