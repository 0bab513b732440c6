package sealspan.study.fouling;

import java.util.List;
import sealspan.stats.scan.OrderedZones;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneFinder;

/** How zones of one shape are made of the places of a scan, and how a found one is described. */
interface ZoneForm {
  /** The places. */
  ScanPlaces places();

  /** The places about each centre. */
  ScanStatistic.Shapes shapes();

  /** The zones in some windows. */
  default ZoneFinder finder(List<Window> windows, double fewestExpected) {
    return new OrderedZones(windows, shapes(), fewestExpected);
  }

  /**
   * The place that stands for the middle of a zone.
   *
   * @param weight expected cases by place, of the grid in which the zone was found
   */
  default int centre(Zone zone, double[] weight) {
    return zone.places()[0];
  }

  /** Kilometres from a place to each site, in the sense of the shape. */
  default double[] siteDistancesKm(int centre) {
    return places().siteDistancesKm(centre);
  }

  /**
   * The form of a zone.
   *
   * @param weight expected cases by place, of the grid in which the zone was found
   * @param farthestKm greatest distance of its sites from its centre
   */
  ClusterOutline outline(Zone zone, double[] weight, double farthestKm);
}
