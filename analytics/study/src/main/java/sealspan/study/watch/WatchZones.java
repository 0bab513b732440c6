package sealspan.study.watch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sealspan.stats.scan.PlanarZones;
import sealspan.stats.scan.ZoneLimits;
import sealspan.stats.scan.ZoneOrder;

/**
 * The zones that a frozen model watches: about every place the circles of its nearest 1, 5 and 20
 * places, within {@link #LARGEST_KM} and with at most half of all places, and every water zone. A
 * place without coordinates is a circle by itself. Circles share half of the weight and water zones
 * the other half; within each, all weigh the same.
 */
final class WatchZones {
  static final double LARGEST_KM = 3;

  private static final int[] SIZES = {1, 5, 20};
  private static final double KM_PER_DEGREE = 40_030.173 / 360;
  private static final int[] NONE = {};

  private final List<WatchZone> zones = new ArrayList<>();
  private final Map<String, Integer> byName = new HashMap<>();
  private final Map<String, int[]> circlesOf = new HashMap<>();
  private final Map<String, WatchSite> sites = new TreeMap<>();
  private final double[] weights;

  WatchZones(WatchModel model) {
    model.sites().forEach(site -> sites.putIfAbsent(site.siteId(), site));
    List<WatchSite> placed = sites.values().stream().filter(WatchSite::isPlaced).toList();
    addCircles(placed);
    sites.values().stream().filter(s -> !s.isPlaced()).forEach(s -> add(circle(List.of(s), 0)));
    int circles = zones.size();
    indexCircles();
    addWaterZones();
    weights = weights(circles, zones.size() - circles);
  }

  private void addCircles(List<WatchSite> placed) {
    double latitude = placed.stream().mapToDouble(WatchSite::latitude).average().orElse(0);
    double shrink = StrictMath.cos(StrictMath.toRadians(latitude));
    double[] x = new double[placed.size()];
    double[] y = new double[placed.size()];
    double[] weight = new double[placed.size()];
    for (int i = 0; i < placed.size(); i++) {
      x[i] = placed.get(i).longitude() * shrink * KM_PER_DEGREE;
      y[i] = placed.get(i).latitude() * KM_PER_DEGREE;
      weight[i] = 1;
    }
    int most = Math.max(1, sites.size() / 2);
    int largest = SIZES[SIZES.length - 1];
    Set<List<String>> seen = new HashSet<>();
    for (ZoneOrder order :
        PlanarZones.circles(x, y, weight, new ZoneLimits(1, Math.max(1, largest)))) {
      for (int size : SIZES) {
        int end = end(order, Math.min(size, most), x, y);
        if (end > 0) {
          List<WatchSite> members = new ArrayList<>(end);
          for (int i = 0; i < end; i++) {
            members.add(placed.get(order.places()[i]));
          }
          double radius = distance(order.places()[0], order.places()[end - 1], x, y);
          if (seen.add(members.stream().map(WatchSite::siteId).sorted().toList())) {
            add(circle(members, radius));
          }
        }
      }
    }
  }

  /**
   * The largest zone of at most some places, complete and within reach; all at one point at least.
   */
  private static int end(ZoneOrder order, int most, double[] x, double[] y) {
    int end = 0;
    for (int i = 0; i < order.places().length; i++) {
      boolean within = distance(order.places()[0], order.places()[i], x, y) <= LARGEST_KM;
      if (order.complete()[i] && within && (i < most || end == 0)) {
        end = i + 1;
      }
    }
    return end;
  }

  private static double distance(int a, int b, double[] x, double[] y) {
    return Math.sqrt((x[a] - x[b]) * (x[a] - x[b]) + (y[a] - y[b]) * (y[a] - y[b]));
  }

  private static WatchZone circle(List<WatchSite> members, double radiusKm) {
    WatchSite centre = members.get(0);
    return new WatchZone(
        "circle " + members.size() + " " + centre.siteId(),
        null,
        centre,
        radiusKm,
        members.stream().map(WatchSite::siteId).toList());
  }

  private void addWaterZones() {
    Map<String, List<String>> byZone = new TreeMap<>();
    for (WatchSite site : sites.values()) {
      if (site.zoneId() != null) {
        byZone.computeIfAbsent(site.zoneId(), z -> new ArrayList<>()).add(site.siteId());
      }
    }
    byZone.forEach((id, members) -> add(new WatchZone("zone " + id, id, null, 0, members)));
  }

  private void add(WatchZone zone) {
    byName.put(zone.name(), zones.size());
    zones.add(zone);
  }

  private void indexCircles() {
    Map<String, List<Integer>> of = new HashMap<>();
    for (int z = 0; z < zones.size(); z++) {
      for (String member : zones.get(z).members()) {
        of.computeIfAbsent(member, m -> new ArrayList<>()).add(z);
      }
    }
    of.forEach((m, list) -> circlesOf.put(m, list.stream().mapToInt(i -> i).toArray()));
  }

  private static double[] weights(int circles, int waterZones) {
    double[] weights = new double[circles + waterZones];
    double half = circles > 0 && waterZones > 0 ? 0.5 : 1;
    Arrays.fill(weights, 0, circles, half / circles);
    Arrays.fill(weights, circles, weights.length, half / waterZones);
    return weights;
  }

  /** The numbers of the zones that a test lies in. */
  int[] holding(WatchedOutcome test) {
    WatchSite site = sites.get(test.place());
    String zone = test.zoneId() != null ? test.zoneId() : site == null ? null : site.zoneId();
    int[] circles = circlesOf.getOrDefault(test.place(), NONE);
    Integer water = zone == null ? null : byName.get("zone " + zone);
    if (water == null) {
      return circles;
    }
    int[] all = Arrays.copyOf(circles, circles.length + 1);
    all[circles.length] = water;
    return all;
  }

  /** For each zone its number among others; -1 where it is not among them. */
  int[] numbersIn(WatchZones others) {
    return zones.stream().mapToInt(z -> others.byName.getOrDefault(z.name(), -1)).toArray();
  }

  WatchZone zone(int number) {
    return zones.get(number);
  }

  int size() {
    return zones.size();
  }

  double[] weights() {
    return weights;
  }

  int sites() {
    return sites.size();
  }

  /** The places without coordinates, by id. */
  List<String> withoutPlace() {
    return sites.values().stream()
        .filter(site -> !site.isPlaced())
        .map(site -> site.siteId().strip())
        .sorted(Comparator.naturalOrder())
        .toList();
  }
}
