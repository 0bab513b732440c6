package sealspan.study.fouling;

import java.util.List;
import sealspan.stats.scan.OrderedZones;
import sealspan.stats.scan.PipeNetwork;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Window;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneFinder;
import sealspan.stats.scan.ZoneLimits;

/** Reaches along the pipes about each place; every site is a place. */
record PipeForm(ScanPlaces places, PipeNetwork network, ZoneLimits limits) implements ZoneForm {
  @Override
  public ScanStatistic.Shapes shapes() {
    return weight -> network.zones(weight, limits);
  }

  @Override
  public ZoneFinder finder(List<Window> windows, double fewestExpected) {
    return new OrderedZones(windows, shapes(), fewestExpected);
  }

  @Override
  public double[] siteDistancesKm(int centre) {
    double[] toPlace = network.distances(centre);
    double[] toSite = new double[places.sites()];
    for (int site = 0; site < toSite.length; site++) {
      toSite[site] = toPlace[places.placeOfSite()[site]];
    }
    return toSite;
  }

  @Override
  public ClusterOutline outline(Zone zone, double[] weight, double farthestKm) {
    return new ClusterOutline.AlongPipes(farthestKm);
  }
}
