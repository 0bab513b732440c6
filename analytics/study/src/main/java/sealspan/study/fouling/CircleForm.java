package sealspan.study.fouling;

import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneLimits;

/** Circles about each place. */
record CircleForm(ScanPlaces places, ZoneLimits limits) implements ZoneForm {
  @Override
  public ScanStatistic.Shapes shapes() {
    return weight -> PlanarZones.circles(places.x(), places.y(), weight, limits);
  }

  @Override
  public ClusterOutline outline(Zone zone, double[] weight, double farthestKm) {
    return new ClusterOutline.Circle(farthestKm);
  }
}
