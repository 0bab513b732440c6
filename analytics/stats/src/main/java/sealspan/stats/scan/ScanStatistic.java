package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import sealspan.stats.Estimate;

/**
 * The Poisson scan statistic with a Monte Carlo null (Kulldorff and Nagarwalla 1995, Statistics in
 * Medicine 14:799). Further clusters are found by taking the visits of the found one out and
 * scanning the rest anew, with its own replicates (Zhang, Assuncao and Kulldorff 2010, Statistica
 * Neerlandica 64; from memory), so that a strong cluster does not hide a weaker one.
 */
public final class ScanStatistic {
  /** Scores closer than this, relative to the larger, count as equal: rounding is no evidence. */
  private static final double TIE = 1e-9;

  private ScanStatistic() {}

  /** Where the places of zones come from: expected cases by place in, orders out. */
  public interface Shapes {
    /** The places about each centre. */
    List<ZoneOrder> orders(double[] expectedByPlace);
  }

  /**
   * Scans visits against the tests that were made, by zones that grow place by place: clusters in
   * the order found, the last possibly with a p-value above the limit; or why there can be none.
   */
  public static Estimate<List<Cluster>> of(
      Visits visits, List<Window> windows, Shapes shapes, ScanSettings settings) {
    ZoneFinder zones = new OrderedZones(windows, shapes, settings.fewestExpected());
    return of(visits, zones, ScanNull.TESTS, settings, number -> {});
  }

  /**
   * Scans visits: clusters in the order found, the last possibly with a p-value above the limit; or
   * why there can be none.
   *
   * @param visits the visits
   * @param zones where to look; the fewest expected cases of a zone are its own affair
   * @param against what cases are held against
   * @param settings replicates, seed, most clusters, largest p-value
   * @param begun told the number of each cluster, from 1, before it is looked for
   */
  public static Estimate<List<Cluster>> of(
      Visits visits, ZoneFinder zones, ScanNull against, ScanSettings settings, IntConsumer begun) {
    String because = whyNot(visits);
    if (because != null) {
      return Estimate.notIdentified(because);
    }
    List<Cluster> clusters = new ArrayList<>();
    Visits left = visits;
    for (int i = 0; i < settings.mostClusters() && left.cases() > 0; i++) {
      begun.accept(i + 1);
      ZoneFinder.OnGrid onGrid = zones.on(against.grid(left));
      if (onGrid.none() && i == 0) {
        return Estimate.notIdentified(
            "no group of places is small enough to stand out: all lie at one point, or one place"
                + " holds nearly all that is expected");
      }
      // Each round has replicates of its own.
      NullDraws draws = against.draws(left, settings.seed() + i);
      Cluster cluster = onGrid.first(draws, settings.replicates());
      if (cluster == null) {
        break;
      }
      clusters.add(cluster);
      if (cluster.p() > settings.largestP()) {
        break;
      }
      left = left.without(cluster.zone().places(), cluster.zone().window());
    }
    return Estimate.of(clusters);
  }

  private static String whyNot(Visits visits) {
    int cases = visits.cases();
    if (visits.size() == 0) {
      return "there is no visit with a place";
    }
    if (cases == 0) {
      return "nothing was found at any visit";
    }
    if (cases == visits.size()) {
      return "it was found at every visit, so no place can stand out";
    }
    if (visits.places() < 2) {
      return "all visits are of one place";
    }
    if (cases > LaneGroup.MOST_CASES) {
      return "there are more than " + LaneGroup.MOST_CASES + " cases; take a shorter time";
    }
    return null;
  }

  /**
   * The best zone of a grid with its p-value; null where no zone that is looked at has more cases
   * than expected.
   */
  public static Cluster first(
      CaseGrid grid,
      List<Window> windows,
      List<ZoneOrder> orders,
      NullDraws draws,
      ScanSettings settings) {
    Zone best = new ZoneSearch(grid, windows, orders, settings.fewestExpected()).best();
    if (best == null) {
      return null;
    }
    double[] maxima = maxima(grid, windows, orders, draws, settings);
    int asLarge = 0;
    for (double maximum : maxima) {
      asLarge += maximum >= best.score() - TIE * Math.max(1, best.score()) ? 1 : 0;
    }
    return new Cluster(best, settings.replicates(), asLarge, Gumbel.of(maxima));
  }

  /** The largest score of each replicate. */
  public static double[] maxima(
      CaseGrid grid,
      List<Window> windows,
      List<ZoneOrder> orders,
      NullDraws draws,
      ScanSettings settings) {
    return new ReplicateMaxima(
            grid, windows, orders, settings.fewestExpected(), draws, ReplicateMaxima.MOST_WORDS)
        .of(settings.replicates());
  }
}
