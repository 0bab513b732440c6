package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A scan written a second time, from the definitions alone and as slowly as they read. */
final class BruteScan {
  private BruteScan() {}

  static double ratio(double c, double m, double total) {
    if (c <= m) {
      return 0;
    }
    double inner = c * Math.log(c / m);
    double outer = c == total ? 0 : (total - c) * Math.log((total - c) / (total - m));
    return inner + outer;
  }

  /** Largest ratio over all circles and windows, for cases in cells. */
  static double largest(
      int[] cases,
      CaseGrid grid,
      double[] x,
      double[] y,
      List<Window> windows,
      double share,
      double fewest) {
    double best = 0;
    double all = 0;
    for (double e : grid.expected()) {
      all += e;
    }
    double total = 0;
    for (int c : cases) {
      total += c;
    }
    for (List<Integer> zone : circles(x, y)) {
      double ever = 0;
      for (int place : zone) {
        for (int period = 0; period < grid.periods(); period++) {
          ever += grid.expected()[period * grid.places() + place];
        }
      }
      if (ever > share * all * (1 + 1e-12)) {
        continue;
      }
      for (Window w : windows) {
        double c = 0;
        double m = 0;
        for (int place : zone) {
          for (int period = w.first(); period <= w.last(); period++) {
            c += cases[period * grid.places() + place];
            m += grid.expected()[period * grid.places() + place];
          }
        }
        if (m >= fewest) {
          best = Math.max(best, ratio(c, m, total));
        }
      }
    }
    return best;
  }

  /** Every set of places within the distance of some place from some centre. */
  static List<List<Integer>> circles(double[] x, double[] y) {
    List<List<Integer>> zones = new ArrayList<>();
    for (int centre = 0; centre < x.length; centre++) {
      for (int edge = 0; edge < x.length; edge++) {
        double radius = square(x, y, centre, edge);
        List<Integer> zone = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
          if (square(x, y, centre, i) <= radius) {
            zone.add(i);
          }
        }
        int from = centre;
        zone.sort(Comparator.comparingDouble(i -> square(x, y, from, i)));
        zones.add(zone);
      }
    }
    return zones;
  }

  private static double square(double[] x, double[] y, int a, int b) {
    return (x[a] - x[b]) * (x[a] - x[b]) + (y[a] - y[b]) * (y[a] - y[b]);
  }
}
