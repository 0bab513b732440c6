package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Where the visits of a scan were. Each site is a place; in a large fleet the sites of one square
 * of a grid are one place, in their middle.
 *
 * @param plane the plane
 * @param siteX kilometres east, by site
 * @param siteY kilometres north, by site
 * @param siteOfVisit number of the site of each visit
 * @param placeOfSite number of the place of each site
 * @param x kilometres east, by place
 * @param y kilometres north, by place
 * @param radiusKm greatest distance of a site from its place
 */
record ScanPlaces(
    Plane plane,
    double[] siteX,
    double[] siteY,
    int[] siteOfVisit,
    int[] placeOfSite,
    double[] x,
    double[] y,
    double radiusKm) {

  /**
   * The places of visits that all have coordinates.
   *
   * @param most most places
   */
  static ScanPlaces of(List<FoulingVisit> visits, int most) {
    Map<String, FoulingVisit> bySite = new TreeMap<>();
    visits.forEach(visit -> bySite.putIfAbsent(visit.place(), visit));
    Plane plane = middle(bySite.values().stream().toList());
    Map<String, Integer> number = new HashMap<>();
    double[] siteX = new double[bySite.size()];
    double[] siteY = new double[bySite.size()];
    for (FoulingVisit visit : bySite.values()) {
      int site = number.size();
      number.put(visit.place(), site);
      siteX[site] = plane.x(visit.longitude());
      siteY[site] = plane.y(visit.latitude());
    }
    int[] siteOfVisit = new int[visits.size()];
    for (int i = 0; i < siteOfVisit.length; i++) {
      siteOfVisit[i] = number.get(visits.get(i).place());
    }
    int[] placeOfSite = numbered(cells(siteX, siteY, most));
    return withMiddles(plane, siteX, siteY, siteOfVisit, placeOfSite);
  }

  /** Halfway between the outermost latitudes, and the longitudes about the first site. */
  private static Plane middle(List<FoulingVisit> sites) {
    if (sites.isEmpty()) {
      return new Plane(0, 0);
    }
    double south = 90;
    double north = -90;
    for (FoulingVisit site : sites) {
      south = Math.min(south, site.latitude());
      north = Math.max(north, site.latitude());
    }
    return new Plane((south + north) / 2, sites.get(0).longitude());
  }

  /** A text for each site: equal for those of one place. */
  private static List<String> cells(double[] x, double[] y, int most) {
    List<String> own = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      own.add("" + i);
    }
    if (x.length <= most) {
      return own;
    }
    double width = spread(x);
    double height = spread(y);
    double side = Math.max(Math.sqrt(width * height / most), Math.max(width, height) / most);
    while (side > 0) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < x.length; i++) {
        cells.add((long) Math.floor(x[i] / side) + " " + (long) Math.floor(y[i] / side));
      }
      Set<String> used = new HashSet<>(cells);
      if (used.size() <= most) {
        return cells;
      }
      side *= 1.1;
    }
    // All at one point.
    return own.stream().map(i -> "0").toList();
  }

  private static double spread(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    return most - least;
  }

  private static int[] numbered(List<String> cells) {
    Map<String, Integer> number = new HashMap<>();
    int[] numbers = new int[cells.size()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = number.computeIfAbsent(cells.get(i), cell -> number.size());
    }
    return numbers;
  }

  private static ScanPlaces withMiddles(
      Plane plane, double[] siteX, double[] siteY, int[] siteOfVisit, int[] placeOfSite) {
    int places = 0;
    for (int place : placeOfSite) {
      places = Math.max(places, place + 1);
    }
    double[] x = new double[places];
    double[] y = new double[places];
    int[] sites = new int[places];
    for (int i = 0; i < placeOfSite.length; i++) {
      x[placeOfSite[i]] += siteX[i];
      y[placeOfSite[i]] += siteY[i];
      sites[placeOfSite[i]]++;
    }
    for (int p = 0; p < places; p++) {
      x[p] /= sites[p];
      y[p] /= sites[p];
    }
    double radius = 0;
    for (int i = 0; i < placeOfSite.length; i++) {
      radius =
          Math.max(
              radius, StrictMath.hypot(siteX[i] - x[placeOfSite[i]], siteY[i] - y[placeOfSite[i]]));
    }
    return new ScanPlaces(plane, siteX, siteY, siteOfVisit, placeOfSite, x, y, radius);
  }

  int sites() {
    return siteX.length;
  }

  int places() {
    return x.length;
  }

  /** Kilometres from a place to each site. */
  double[] siteDistancesKm(int place) {
    double[] distances = new double[siteX.length];
    for (int site = 0; site < distances.length; site++) {
      distances[site] = StrictMath.hypot(siteX[site] - x[place], siteY[site] - y[place]);
    }
    return distances;
  }

  /** Kilometres between two places. */
  double kmBetween(int a, int b) {
    return StrictMath.hypot(x[a] - x[b], y[a] - y[b]);
  }
}
