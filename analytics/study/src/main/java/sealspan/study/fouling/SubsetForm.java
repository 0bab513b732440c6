package sealspan.study.fouling;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.SubsetZones;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneFinder;
import sealspan.stats.scan.ZoneLimits;
import sealspan.stats.scan.ZoneOrder;

/** Any places of a ball about each place; the limits are those of the balls. */
record SubsetForm(ScanPlaces places, ZoneLimits limits) implements ZoneForm {
  /** The smallest ball about a centre that holds all places of a zone. */
  private record Ball(int centre, double radiusKm, Set<Integer> places) {}

  @Override
  public ScanStatistic.Shapes shapes() {
    return weight -> PlanarZones.circles(places.x(), places.y(), weight, limits);
  }

  /** The fewest expected cases are not asked for: the fast search holds for all subsets only. */
  @Override
  public ZoneFinder finder(List<Window> windows, double fewestExpected) {
    return new SubsetZones(windows, shapes());
  }

  @Override
  public int centre(Zone zone, double[] weight) {
    return ball(zone, weight).centre();
  }

  @Override
  public ClusterOutline outline(Zone zone, double[] weight, double farthestKm) {
    Ball ball = ball(zone, weight);
    int sites = 0;
    for (int place : places.placeOfSite()) {
      sites += ball.places().contains(place) ? 1 : 0;
    }
    return new ClusterOutline.Chosen(Math.max(ball.radiusKm(), farthestKm), sites);
  }

  private Ball ball(Zone zone, double[] weight) {
    Ball smallest = null;
    for (ZoneOrder order : shapes().orders(weight)) {
      Set<Integer> missing = new HashSet<>();
      for (int place : zone.places()) {
        missing.add(place);
      }
      Set<Integer> within = new HashSet<>();
      for (int place : order.places()) {
        within.add(place);
        missing.remove(place);
        if (missing.isEmpty()) {
          double radius = places.kmBetween(order.places()[0], place);
          if (smallest == null || radius < smallest.radiusKm()) {
            smallest = new Ball(order.places()[0], radius, within);
          }
          break;
        }
      }
    }
    return smallest;
  }
}
