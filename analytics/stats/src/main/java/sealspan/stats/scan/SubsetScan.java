package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/**
 * The fast subset scan inside balls: among the places nearest to a centre, any subset may be the
 * zone. The best one is found without trying all, because it is made of the places with the most
 * cases per expected case (linear-time subset scanning, Neill 2012, Journal of the Royal
 * Statistical Society B 74:337). It finds winding zones, and has less power for round ones.
 */
public final class SubsetScan {
  private final CaseGrid grid;
  private final List<Window> windows;
  private final List<ZoneOrder> balls;
  private final PoissonRatio ratio;

  /**
   * A scan.
   *
   * @param grid cases and expected cases
   * @param windows windows
   * @param balls the places of each ball; a few tens each are enough
   */
  public SubsetScan(CaseGrid grid, List<Window> windows, List<ZoneOrder> balls) {
    this.grid = grid;
    this.windows = windows;
    this.balls = balls;
    this.ratio = new PoissonRatio(grid.total());
  }

  /** The best zone with its p-value; null where no place has more cases than expected. */
  public Cluster first(NullDraws draws, int replicates) {
    Zone best = best(grid.cases());
    if (best == null) {
      return null;
    }
    double[] maxima = new double[replicates];
    int[] cells = new int[grid.total()];
    int asLarge = 0;
    for (int r = 0; r < replicates; r++) {
      int[] cases = new int[grid.cases().length];
      draws.draw(r, cells);
      for (int cell : cells) {
        cases[cell]++;
      }
      Zone zone = best(cases);
      maxima[r] = zone == null ? 0 : zone.score();
      asLarge += maxima[r] >= best.score() - 1e-9 * Math.max(1, best.score()) ? 1 : 0;
    }
    return new Cluster(best, replicates, asLarge, Gumbel.of(maxima));
  }

  /** Which places the best subsets of the balls hold, of those that reach a score. */
  public NearBest nearBest(double least) {
    int[] holding = new int[grid.places()];
    int[] zones = new int[1];
    eachBall(
        grid.cases(),
        (ranked, window, cases, expected) -> {
          Zone zone = better(null, ranked, window, cases, expected);
          if (zone != null && zone.score() >= least) {
            zones[0]++;
            for (int place : zone.places()) {
              holding[place]++;
            }
          }
        });
    double[] share = new double[grid.places()];
    for (int place = 0; place < share.length; place++) {
      share[place] = zones[0] == 0 ? 0 : (double) holding[place] / zones[0];
    }
    return new NearBest(zones[0], share);
  }

  /** The places of a ball that have cases, those with the most per expected case first. */
  private interface Ranked {
    void look(NearestFirst ranked, Window window, double[] cases, double[] expected);
  }

  /** The best zone of cases by cell. */
  Zone best(int[] cases) {
    Zone[] best = new Zone[1];
    eachBall(
        cases,
        (ranked, window, byPlace, expected) ->
            best[0] = better(best[0], ranked, window, byPlace, expected));
    return best[0];
  }

  private void eachBall(int[] cases, Ranked ranked) {
    double[] byPlace = new double[grid.places()];
    double[] expected = new double[grid.places()];
    NearestFirst order = new NearestFirst();
    for (Window window : windows) {
      Arrays.fill(byPlace, 0);
      Arrays.fill(expected, 0);
      for (int period = window.first(); period <= window.last(); period++) {
        grid.addExpected(period, expected);
        for (int place = 0; place < byPlace.length; place++) {
          byPlace[place] += cases[period * grid.places() + place];
        }
      }
      for (ZoneOrder ball : balls) {
        order.clear();
        for (int place : ball.places()) {
          if (byPlace[place] > 0) {
            order.add(place, expected[place] / byPlace[place]);
          }
        }
        order.sort();
        ranked.look(order, window, byPlace, expected);
      }
    }
  }

  private Zone better(
      Zone best, NearestFirst ranked, Window window, double[] cases, double[] expected) {
    Zone found = best;
    int inZone = 0;
    double expectedInZone = 0;
    for (int k = 0; k < ranked.size(); k++) {
      inZone += (int) cases[ranked.id(k)];
      expectedInZone += expected[ranked.id(k)];
      double score = ratio.at(inZone, expectedInZone);
      if (score > (found == null ? 0 : found.score())) {
        int[] places = new int[k + 1];
        for (int i = 0; i <= k; i++) {
          places[i] = ranked.id(i);
        }
        found = new Zone(places, window, inZone, expectedInZone, score, grid.total());
      }
    }
    return found;
  }
}
