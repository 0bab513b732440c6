package sealspan.stats.scan;

/**
 * Places in the order in which they enter the zones about one centre: the zones are the first one,
 * two, three ... places.
 *
 * @param places the places, nearest first
 * @param complete whether the zone that ends with the place holds every place as near as that one;
 *     only such zones are looked at, so that places at one point enter together
 * @param penalty factor of the log likelihood ratio, more than 0 and at most 1; below 1 for shapes
 *     that are less compact
 */
public record ZoneOrder(int[] places, boolean[] complete, double penalty) {
  public ZoneOrder {
    if (places.length != complete.length || !(penalty > 0 && penalty <= 1)) {
      throw new IllegalArgumentException("an order of " + places.length + " places");
    }
  }
}
