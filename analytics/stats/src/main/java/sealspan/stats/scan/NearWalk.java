package sealspan.stats.scan;

import java.util.Arrays;
import java.util.List;

/**
 * Orders in such a sequence that successive ones have most of their places in common: from each
 * order to the nearest centre not yet visited. What was counted for one is then still at hand in
 * the memory next to the processor for the next.
 */
final class NearWalk {
  private NearWalk() {}

  /** The orders, each once. */
  static ZoneOrder[] of(List<ZoneOrder> orders, int places) {
    int[] firstAt = new int[places];
    int[] next = new int[orders.size()];
    Arrays.fill(firstAt, -1);
    for (int i = orders.size() - 1; i >= 0; i--) {
      int centre = orders.get(i).places()[0];
      next[i] = firstAt[centre];
      firstAt[centre] = i;
    }
    ZoneOrder[] walk = new ZoneOrder[orders.size()];
    int place = -1;
    int unvisited = 0;
    for (int step = 0; step < walk.length; step++) {
      place = step == 0 ? -1 : nearest(walk[step - 1], firstAt);
      while (place < 0) {
        place = firstAt[unvisited] < 0 ? -1 : unvisited;
        unvisited += place < 0 ? 1 : 0;
      }
      walk[step] = orders.get(firstAt[place]);
      firstAt[place] = next[firstAt[place]];
    }
    return walk;
  }

  /** The first place of an order about which an order is left; -1 where there is none. */
  private static int nearest(ZoneOrder order, int[] firstAt) {
    for (int place : order.places()) {
      if (firstAt[place] >= 0) {
        return place;
      }
    }
    return -1;
  }
}
