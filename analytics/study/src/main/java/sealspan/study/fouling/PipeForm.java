package sealspan.study.fouling;

import sealspan.stats.scan.PipeNetwork;
import sealspan.stats.scan.ScanStatistic;
import sealspan.stats.scan.Zone;
import sealspan.stats.scan.ZoneLimits;

/** Reaches along the pipes about each place; every site is a place. */
record PipeForm(ScanPlaces places, PipeNetwork network, ZoneLimits limits) implements ZoneForm {
  @Override
  public ScanStatistic.Shapes shapes() {
    return weight -> network.zones(weight, limits);
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
