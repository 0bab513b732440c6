package sealspan.study.fouling;

import java.util.Locale;

/** The form of a cluster on the map, about its centre. */
public sealed interface ClusterOutline {
  /** Its size in words, such as {@code within 1.2 km}. */
  String words();

  /**
   * All within a distance.
   *
   * @param radiusKm distance from the centre to the farthest site
   */
  record Circle(double radiusKm) implements ClusterOutline {
    @Override
    public String words() {
      return "within " + km(radiusKm);
    }
  }

  /**
   * All within an ellipse.
   *
   * @param ratio long axis over short axis, more than 1
   * @param halfLongKm from the centre to the end of the long axis
   * @param bearingDegrees direction of the long axis, clockwise from north, 0 to 180 (out)
   */
  record Ellipse(double ratio, double halfLongKm, double bearingDegrees) implements ClusterOutline {
    /** From the centre to the end of the short axis. */
    public double halfShortKm() {
      return halfLongKm / ratio;
    }

    @Override
    public String words() {
      return String.format(
          Locale.ROOT,
          "in an ellipse %s by %s, long axis %.0f degrees from north",
          km(2 * halfLongKm),
          km(2 * halfShortKm()),
          bearingDegrees);
    }
  }

  /**
   * Chosen sites among those near a centre; those between them are not in it.
   *
   * @param ballKm radius of the smallest ball that was looked at and holds them
   * @param ballSites sites in that ball, chosen or not
   */
  record Chosen(double ballKm, int ballSites) implements ClusterOutline {
    @Override
    public String words() {
      return "chosen among "
          + ExplorationWords.counted(ballSites, "site")
          + " within "
          + km(ballKm);
    }
  }

  /**
   * All within a distance along the pipes.
   *
   * @param reachKm longest way along the pipes from the centre to a site, service lines included
   */
  record AlongPipes(double reachKm) implements ClusterOutline {
    @Override
    public String words() {
      return "within " + km(reachKm) + " along the pipes";
    }
  }

  private static String km(double km) {
    return String.format(Locale.ROOT, km < 10 ? "%.2f km" : "%.1f km", km);
  }
}
