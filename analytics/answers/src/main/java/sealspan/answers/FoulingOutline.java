package sealspan.answers;

import java.util.ArrayList;
import java.util.List;
import sealspan.study.fouling.ClusterOutline;

/** The line about a cluster, as maps draw it. */
public final class FoulingOutline {
  private FoulingOutline() {}

  /**
   * Corners of the line about the centre, {east, north} in kilometres, anticlockwise from the east
   * or from the end of the long axis, not closed. Empty where no line goes about it.
   *
   * @param corners number of corners
   * @param leastKm what is smaller is drawn so large
   */
  public static List<double[]> cornersKm(ClusterOutline outline, int corners, double leastKm) {
    double halfLong;
    double halfShort;
    double turn = 0;
    if (outline instanceof ClusterOutline.Circle circle) {
      halfLong = circle.radiusKm();
      halfShort = halfLong;
    } else if (outline instanceof ClusterOutline.Ellipse ellipse) {
      halfLong = ellipse.halfLongKm();
      halfShort = ellipse.halfShortKm();
      turn = Math.toRadians(90 - ellipse.bearingDegrees());
    } else {
      return List.of();
    }
    double a = Math.max(leastKm, halfLong);
    double b = Math.max(leastKm, halfShort);
    List<double[]> line = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      double at = 2 * Math.PI * i / corners;
      double along = a * Math.cos(at);
      double across = b * Math.sin(at);
      line.add(
          new double[] {
            along * Math.cos(turn) - across * Math.sin(turn),
            along * Math.sin(turn) + across * Math.cos(turn)
          });
    }
    return line;
  }

  /** How far it reaches from the centre, straight; 0 where no line goes about it. */
  public static double reachKm(ClusterOutline outline) {
    if (outline instanceof ClusterOutline.Circle circle) {
      return circle.radiusKm();
    }
    return outline instanceof ClusterOutline.Ellipse ellipse ? ellipse.halfLongKm() : 0;
  }
}
