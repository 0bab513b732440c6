package sealspan.stats.scan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Distance along pipes. A place hangs on the nearest pipe by a straight service line; pipes join
 * where their ends or corners have equal coordinates; nothing passes a closed valve. What cannot be
 * reached is no neighbour.
 */
public final class PipeNetwork {
  private final List<List<Link>> links = new ArrayList<>();
  private final int places;

  private int reachedOf;
  private Reached[] reached;

  private record Link(int to, double length) {}

  /** Places by distance; known where there are no others. */
  private record Reached(int[] ids, double[] distances, boolean known) {
    static Reached of(NearestFirst near, boolean known) {
      int[] ids = new int[near.size()];
      double[] distances = new double[ids.length];
      for (int i = 0; i < ids.length; i++) {
        ids[i] = near.id(i);
        distances[i] = near.distance(i);
      }
      return new Reached(ids, distances, known);
    }
  }

  private record Stretch(int from, int to, double x, double y, double dx, double dy) {
    double length() {
      return Math.hypot(dx, dy);
    }
  }

  /** A place (its number) or a closed valve (-1) on a stretch, by share of the way along it. */
  private record Hung(int place, double share, double offset) {}

  /**
   * A network.
   *
   * @param pipes each a line of corners {x, y}
   * @param closedValves points {x, y}; each closes the nearest pipe there
   * @param x coordinates of the places, in the unit of the pipes
   * @param y coordinates of the places
   */
  public PipeNetwork(List<double[][]> pipes, List<double[]> closedValves, double[] x, double[] y) {
    places = x.length;
    List<Stretch> stretches = stretches(pipes);
    List<List<Hung>> hung = new ArrayList<>();
    stretches.forEach(s -> hung.add(new ArrayList<>()));
    for (double[] valve : closedValves) {
      hang(-1, valve[0], valve[1], stretches, hung);
    }
    for (int i = 0; i < places; i++) {
      hang(i, x[i], y[i], stretches, hung);
    }
    for (int i = 0; i < stretches.size(); i++) {
      lay(stretches.get(i), hung.get(i));
    }
  }

  private List<Stretch> stretches(List<double[][]> pipes) {
    for (int i = 0; i < places; i++) {
      links.add(new ArrayList<>());
    }
    Map<List<Double>, Integer> corners = new HashMap<>();
    List<Stretch> stretches = new ArrayList<>();
    for (double[][] pipe : pipes) {
      for (int i = 1; i < pipe.length; i++) {
        double[] a = pipe[i - 1];
        double[] b = pipe[i];
        stretches.add(
            new Stretch(
                corner(corners, a), corner(corners, b), a[0], a[1], b[0] - a[0], b[1] - a[1]));
      }
    }
    return stretches;
  }

  private int corner(Map<List<Double>, Integer> corners, double[] at) {
    return corners.computeIfAbsent(Arrays.asList(at[0], at[1]), key -> node());
  }

  private int node() {
    links.add(new ArrayList<>());
    return links.size() - 1;
  }

  /** The point of the pipes that is nearest to a point. */
  private record Foot(int stretch, double share, double offset) {}

  private static void hang(
      int place, double x, double y, List<Stretch> stretches, List<List<Hung>> hung) {
    Foot foot = foot(x, y, stretches);
    if (foot != null) {
      hung.get(foot.stretch()).add(new Hung(place, foot.share(), foot.offset()));
    }
  }

  /** Null where there is no pipe; of points equally near that of the first stretch. */
  private static Foot foot(double x, double y, List<Stretch> stretches) {
    int nearest = -1;
    double nearestShare = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      double length = s.dx() * s.dx() + s.dy() * s.dy();
      double along = length == 0 ? 0 : ((x - s.x()) * s.dx() + (y - s.y()) * s.dy()) / length;
      double share = Math.max(0, Math.min(1, along));
      double east = x - s.x() - share * s.dx();
      double north = y - s.y() - share * s.dy();
      double square = east * east + north * north;
      if (square < least) {
        least = square;
        nearest = i;
        nearestShare = share;
      }
    }
    return nearest < 0 ? null : new Foot(nearest, nearestShare, Math.sqrt(least));
  }

  /**
   * Distance of each point from the nearest pipe; infinite where there is no pipe.
   *
   * @param pipes each a line of corners {x, y}
   * @param x coordinates of the points, in the unit of the pipes
   * @param y coordinates of the points
   */
  public static double[] offsets(List<double[][]> pipes, double[] x, double[] y) {
    List<Stretch> stretches = new ArrayList<>();
    for (double[][] pipe : pipes) {
      for (int i = 1; i < pipe.length; i++) {
        double[] a = pipe[i - 1];
        stretches.add(new Stretch(0, 0, a[0], a[1], pipe[i][0] - a[0], pipe[i][1] - a[1]));
      }
    }
    double[] offsets = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      Foot foot = foot(x[i], y[i], stretches);
      offsets[i] = foot == null ? Double.POSITIVE_INFINITY : foot.offset();
    }
    return offsets;
  }

  private void lay(Stretch stretch, List<Hung> hung) {
    hung.sort(Comparator.comparingDouble(Hung::share).thenComparingInt(Hung::place));
    int before = stretch.from();
    double beforeShare = 0;
    for (Hung h : hung) {
      int here = node();
      link(before, here, (h.share() - beforeShare) * stretch.length());
      if (h.place() < 0) {
        // Beyond a closed valve the pipe goes on from a node of its own.
        here = node();
      } else {
        link(here, h.place(), h.offset());
      }
      before = here;
      beforeShare = h.share();
    }
    link(before, stretch.to(), (1 - beforeShare) * stretch.length());
  }

  private void link(int a, int b, double length) {
    links.get(a).add(new Link(b, length));
    links.get(b).add(new Link(a, length));
  }

  /**
   * Zones about each place by distance along the pipes. The ways are kept: with other weights and
   * the same limits they need not be looked for again.
   */
  public List<ZoneOrder> zones(double[] weight, ZoneLimits limits) {
    if (reached == null || reachedOf != limits.mostPlaces()) {
      reachedOf = limits.mostPlaces();
      reached = new Reached[places];
      for (int place = 0; place < places; place++) {
        reached[place] = reached(place, limits.mostPlaces() + 1);
      }
    }
    double mostWeight = limits.mostWeight(weight);
    List<ZoneOrder> orders = new ArrayList<>();
    NearestFirst near = new NearestFirst();
    for (Reached from : reached) {
      near.clear();
      for (int i = 0; i < from.ids().length; i++) {
        near.add(from.ids()[i], from.distances()[i]);
      }
      ZoneOrder order = near.order(weight, mostWeight, limits.mostPlaces(), from.known(), 1);
      if (order != null) {
        orders.add(order);
      }
    }
    return orders;
  }

  /** Distance from a place to each place; infinite where it cannot be reached. */
  public double[] distances(int place) {
    Reached near = reached(place, places);
    double[] distances = new double[places];
    Arrays.fill(distances, Double.POSITIVE_INFINITY);
    for (int i = 0; i < near.ids().length; i++) {
      distances[near.ids()[i]] = near.distances()[i];
    }
    return distances;
  }

  /** By place the number of the part of the network that it hangs on, from 0 in order of places. */
  public int[] parts() {
    int[] part = new int[links.size()];
    Arrays.fill(part, -1);
    int parts = 0;
    Deque<Integer> open = new ArrayDeque<>();
    for (int place = 0; place < places; place++) {
      if (part[place] < 0) {
        part[place] = parts++;
        open.add(place);
      }
      while (!open.isEmpty()) {
        int node = open.remove();
        for (Link link : links.get(node)) {
          if (part[link.to()] < 0) {
            part[link.to()] = part[node];
            open.add(link.to());
          }
        }
      }
    }
    return Arrays.copyOf(part, places);
  }

  /** Dijkstra from a place until some places beyond the wanted ones, or until there are no more. */
  private Reached reached(int start, int wanted) {
    NearestFirst near = new NearestFirst();
    boolean[] settled = new boolean[links.size()];
    ShortestFirst front = new ShortestFirst();
    front.add(start, 0);
    while (!front.isEmpty()) {
      int node = front.nextNode();
      double length = front.nextDistance();
      front.removeNext();
      if (settled[node]) {
        continue;
      }
      settled[node] = true;
      if (node < places) {
        near.add(node, length);
        if (near.size() > wanted && near.distance(wanted - 1) < length) {
          return Reached.of(near, false);
        }
        if (node != start) {
          continue;
        }
      }
      for (Link link : links.get(node)) {
        if (!settled[link.to()]) {
          front.add(link.to(), length + link.length());
        }
      }
    }
    return Reached.of(near, true);
  }
}
