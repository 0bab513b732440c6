package sealspan.stats.scan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Zones of places in the plane: circles and ellipses about each place. */
public final class PlanarZones {
  private PlanarZones() {}

  /**
   * Circles about each distinct point, by nearest neighbours.
   *
   * @param x coordinates; both axes in one unit of length
   * @param y coordinates
   * @param weight expected cases of each place
   * @param limits how large zones may grow
   */
  public static List<ZoneOrder> circles(
      double[] x, double[] y, double[] weight, ZoneLimits limits) {
    return of(x, y, weight, limits, 1);
  }

  /**
   * Circles and ellipses. The penalty is [4 s / (s + 1)^2]^a with a = 1/2, where s is the ratio of
   * the long axis to the short one (Kulldorff, Huang, Pickle and Duczmal 2006, Statistics in
   * Medicine 25:3929; from memory).
   *
   * @param ratios ratios of long to short axis, each at least 1; 1 is a circle
   * @param angles number of directions of an ellipse, spread evenly over a half turn
   */
  public static List<ZoneOrder> ellipses(
      double[] x, double[] y, double[] weight, ZoneLimits limits, double[] ratios, int angles) {
    List<ZoneOrder> orders = new ArrayList<>();
    for (double ratio : ratios) {
      for (int angle = 0; angle < (ratio == 1 ? 1 : angles); angle++) {
        orders.addAll(ellipses(x, y, weight, limits, ratio, Math.PI * angle / angles));
      }
    }
    return orders;
  }

  /**
   * Ellipses of one ratio and direction; of ratio 1 circles.
   *
   * @param ratio ratio of long to short axis, at least 1
   * @param turn direction of the long axis, radians from the x axis towards the y axis
   */
  public static List<ZoneOrder> ellipses(
      double[] x, double[] y, double[] weight, ZoneLimits limits, double ratio, double turn) {
    if (ratio == 1) {
      return circles(x, y, weight, limits);
    }
    double cos = StrictMath.cos(turn);
    double sin = StrictMath.sin(turn);
    double[] along = new double[x.length];
    double[] across = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      along[i] = x[i] * cos + y[i] * sin;
      across[i] = ratio * (y[i] * cos - x[i] * sin);
    }
    double penalty = Math.sqrt(4 * ratio / ((ratio + 1) * (ratio + 1)));
    return of(along, across, weight, limits, penalty);
  }

  private static List<ZoneOrder> of(
      double[] x, double[] y, double[] weight, ZoneLimits limits, double penalty) {
    List<ZoneOrder> orders = new ArrayList<>();
    if (x.length == 0) {
      return orders;
    }
    double mostWeight = limits.mostWeight(weight);
    PointBins bins = new PointBins(x, y, limits.mostPlaces());
    Set<List<Double>> centres = new HashSet<>();
    NearestFirst near = new NearestFirst();
    for (int centre = 0; centre < x.length; centre++) {
      if (centres.add(Arrays.asList(x[centre], y[centre]))) {
        boolean known = bins.nearest(centre, limits.mostPlaces() + 1, near);
        ZoneOrder order = near.order(weight, mostWeight, limits.mostPlaces(), known, penalty);
        if (order != null) {
          orders.add(order);
        }
      }
    }
    return orders;
  }
}
