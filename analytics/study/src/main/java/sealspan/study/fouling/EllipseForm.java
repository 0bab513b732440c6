package sealspan.study.fouling;

import java.util.Arrays;
import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.PoissonRatio;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneLimits;
import sealspan.stats.scan.ZoneOrder;

/** Circles and ellipses about each place. */
record EllipseForm(ScanPlaces places, ZoneLimits limits) implements ZoneForm {
  static final double[] RATIOS = {1, 1.5, 2, 3};
  static final int ANGLES = 6;

  /** Orders about each place: one circle, and the ellipses. */
  static final int SHAPES = 1 + (RATIOS.length - 1) * ANGLES;

  @Override
  public ScanStatistic.Shapes shapes() {
    return weight -> PlanarZones.ellipses(places.x(), places.y(), weight, limits, RATIOS, ANGLES);
  }

  /** The first of the shapes that holds just these places, by the penalty of the score. */
  @Override
  public ClusterOutline outline(Zone zone, double[] weight, double farthestKm) {
    double ratioOfCounts = new PoissonRatio(zone.total()).at(zone.cases(), zone.expected());
    for (double ratio : RATIOS) {
      for (int angle = 0; angle < (ratio == 1 ? 1 : ANGLES); angle++) {
        double turn = StrictMath.PI * angle / ANGLES;
        for (ZoneOrder order :
            PlanarZones.ellipses(places.x(), places.y(), weight, limits, ratio, turn)) {
          if (beginsWith(order, zone.places())
              && Math.abs(order.penalty() * ratioOfCounts - zone.score())
                  <= 1e-9 * Math.max(1, zone.score())) {
            return ratio == 1
                ? new ClusterOutline.Circle(farthestKm)
                : ellipse(zone.places(), ratio, turn);
          }
        }
      }
    }
    throw new IllegalStateException("a zone comes from one of the shapes");
  }

  private static boolean beginsWith(ZoneOrder order, int[] places) {
    return order.places().length >= places.length
        && Arrays.equals(order.places(), 0, places.length, places, 0, places.length);
  }

  private ClusterOutline ellipse(int[] zone, double ratio, double turn) {
    double cos = StrictMath.cos(turn);
    double sin = StrictMath.sin(turn);
    double halfLong = 0;
    for (int place : zone) {
      double east = places.x()[place] - places.x()[zone[0]];
      double north = places.y()[place] - places.y()[zone[0]];
      double along = east * cos + north * sin;
      double across = ratio * (north * cos - east * sin);
      halfLong = Math.max(halfLong, StrictMath.hypot(along, across));
    }
    double bearing = 90 - StrictMath.toDegrees(turn);
    return new ClusterOutline.Ellipse(ratio, halfLong, bearing < 0 ? bearing + 180 : bearing);
  }
}
