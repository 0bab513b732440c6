package sealspan.bench.truth;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import sealspan.stats.scan.ScanSettings;
import sealspan.study.fouling.Exploration;
import sealspan.study.fouling.ExplorationChoice;
import sealspan.study.fouling.FoulingFit;
import sealspan.study.fouling.FoulingModel;
import sealspan.study.fouling.FoulingScan;
import sealspan.study.fouling.FoulingVisit;
import sealspan.study.fouling.PipeLines;
import sealspan.study.fouling.ZoneShape;
import sealspan.study.practice.RoutedTown;
import sealspan.table.FoulingClusterMemberRow;

/**
 * How often the scan for clusters of fouling cries wolf, and how often it finds one that is there.
 * Towns with tests on a route; probabilities are fitted anew in each.
 *
 * <p>Run {@code java -cp ... sealspan.bench.truth.ScanTruth NULLS POWER REPLICATES SITES...}; seeds
 * are 1 to NULLS, and 1 to POWER. A cluster holds 12 of 100 sites for a year. Run {@code
 * ...ScanTruth shapes RUNS REPLICATES SITES} for looks by zones of each shape, where the cluster is
 * round and where it keeps to one street.
 */
public final class ScanTruth {
  private static final double LEVEL = .05;
  private static final double ALLOWED = .06;

  /** Streets are 1.4 km apart, so every site lies within half of that from its main. */
  private static final double PIPE_WITHIN_M = 1_000;

  private ScanTruth() {}

  /** What one scan said: whether it called a cluster, and how far that was the true one. */
  private record Said(boolean alarm, double ofCluster, double ofFound) {}

  /** How a town is scanned. */
  private interface Scan {
    FoulingScan of(List<FoulingVisit> visits, FoulingModel model, ScanSettings settings);
  }

  /** Prints the rows of the table. */
  public static void main(String[] arguments) {
    System.out.println(
        "| zones | sites | years | ratio | cluster | runs | called | share (95 %) | of its sites"
            + " found | of the sites found its own |");
    System.out.println("|---|---:|---:|---:|---|---:|---:|---|---:|---:|");
    if (arguments[0].equals("shapes")) {
      int runs = Integer.parseInt(arguments[1]);
      int replicates = Integer.parseInt(arguments[2]);
      printShapes(Integer.parseInt(arguments[3]), runs, replicates);
      return;
    }
    int nulls = Integer.parseInt(arguments[0]);
    int power = Integer.parseInt(arguments[1]);
    int replicates = Integer.parseInt(arguments[2]);
    print("circles", FoulingScan::of, towns(nulls, 200, 1, false), replicates);
    for (int i = 3; i < arguments.length; i++) {
      int sites = Integer.parseInt(arguments[i]);
      for (int ratio = 2; ratio <= 4; ratio++) {
        print("circles", FoulingScan::of, towns(power, sites, ratio, false), replicates);
      }
    }
  }

  private static void printShapes(int sites, int runs, int replicates) {
    for (ZoneShape shape : ZoneShape.values()) {
      boolean pipes = shape == ZoneShape.PIPES;
      PipeLines mains = pipes ? new PipeLines(RoutedTown.mains(), 0, List.of(), 0) : null;
      ExplorationChoice choice =
          new ExplorationChoice(shape, mains, PIPE_WITHIN_M, false, false, null, null, 1);
      Scan scan = (visits, model, settings) -> Exploration.found(visits, model, choice, settings);
      String name = shape.name().toLowerCase(Locale.ROOT);
      print(name, scan, towns(runs, sites, 1, false), replicates);
      for (int ratio = 2; ratio <= 4; ratio++) {
        print(name, scan, towns(runs, sites, ratio, false), replicates);
        print(name, scan, towns(runs, sites, ratio, true), replicates);
      }
    }
  }

  private static List<RoutedTown> towns(int runs, int sites, int ratio, boolean thin) {
    int clusterSites = ratio == 1 ? 0 : sites * 12 / 100;
    return IntStream.rangeClosed(1, runs)
        .mapToObj(seed -> new RoutedTown(seed, sites, 5, 0.1, ratio, clusterSites, 365, thin))
        .toList();
  }

  private static void print(String zones, Scan scan, List<RoutedTown> towns, int replicates) {
    List<Said> said = towns.parallelStream().map(town -> run(town, scan, replicates)).toList();
    int runs = towns.size();
    RoutedTown town = towns.get(0);
    int alarms = (int) said.stream().filter(Said::alarm).count();
    double[] limits = exact(alarms, runs);
    boolean none = town.clusterSites() == 0;
    System.out.printf(
        Locale.ROOT,
        "| %s | %d | %d | %.0f | %s | %d | %d | %.3f (%.3f to %.3f) | %s | %s |%n",
        zones,
        town.sites(),
        town.years(),
        town.ratio(),
        none
            ? "none"
            : town.clusterSites() + " sites" + (town.thin() ? " of a street" : "") + ", 1 year",
        runs,
        alarms,
        (double) alarms / runs,
        limits[0],
        limits[1],
        none ? "" : mean(said.stream().filter(Said::alarm).map(Said::ofCluster).toList()),
        none ? "" : mean(said.stream().filter(Said::alarm).map(Said::ofFound).toList()));
    if (none) {
      double p = 1 - new BinomialDistribution(runs, ALLOWED).cumulativeProbability(alarms - 1);
      System.err.printf(
          Locale.ROOT,
          "false alarms: p %.4f that there are so many or more if the share is %.2f%n",
          p,
          ALLOWED);
    }
  }

  private static Said run(RoutedTown town, Scan how, int replicates) {
    List<FoulingVisit> visits = town.visits();
    FoulingModel model = FoulingModel.of(FoulingFit.of(visits).coefficients()).orElseThrow();
    FoulingScan scan =
        how.of(visits, model, new ScanSettings(replicates, town.seed(), 1, 1, LEVEL));
    boolean alarm = scan.clusters().stream().anyMatch(c -> c.significant());
    Set<String> truth = new TreeSet<>(town.clusterSiteIds());
    Set<String> found =
        scan.members().stream()
            .filter(m -> m.number() == 1)
            .map(FoulingClusterMemberRow::siteId)
            .collect(Collectors.toCollection(TreeSet::new));
    long both = found.stream().filter(truth::contains).count();
    return new Said(
        alarm,
        truth.isEmpty() ? 0 : (double) both / truth.size(),
        found.isEmpty() ? 0 : (double) both / found.size());
  }

  private static String mean(List<Double> values) {
    return values.isEmpty()
        ? "none"
        : String.format(
            Locale.ROOT,
            "%.2f",
            values.stream().mapToDouble(Double::doubleValue).average().orElse(0));
  }

  /** Clopper and Pearson, by bisection. */
  private static double[] exact(int hits, int trials) {
    double lower = hits == 0 ? 0 : solve(p -> 1 - below(hits - 1, trials, p) - .025);
    double upper = hits == trials ? 1 : solve(p -> .025 - below(hits, trials, p));
    return new double[] {lower, upper};
  }

  private static double below(int hits, int trials, double p) {
    return new BinomialDistribution(trials, p).cumulativeProbability(hits);
  }

  private static double solve(java.util.function.DoubleUnaryOperator rising) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(middle) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
