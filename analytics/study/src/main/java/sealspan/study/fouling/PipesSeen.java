package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import sealspan.stats.scan.PipeNetwork;

/**
 * The sites of visits as they hang on pipes.
 *
 * @param near the visits to sites near enough to an open pipe
 * @param farVisits visits to sites that are too far
 * @param farFouled of these, with a fouling failure
 * @param farSites the sites that are too far
 * @param nearestM distance of the nearest site of all from a pipe, metres; infinite without sites
 * @param farValves closed valves that are too far from every pipe, and so close nothing
 * @param valves the other closed valves, {longitude, latitude}
 * @param lengthKm length of the open pipes
 */
public record PipesSeen(
    List<FoulingVisit> near,
    int farVisits,
    int farFouled,
    Set<String> farSites,
    double nearestM,
    int farValves,
    List<double[]> valves,
    double lengthKm) {
  private static final double M_A_KM = 1000;

  /** Holds visits with coordinates against pipes. */
  static PipesSeen of(List<FoulingVisit> visits, PipeLines pipes, double withinM) {
    ScanPlaces sites = ScanPlaces.of(visits, Integer.MAX_VALUE);
    List<double[][]> lines = pipes.in(sites.plane());
    double[] offsets = PipeNetwork.offsets(lines, sites.siteX(), sites.siteY());
    List<FoulingVisit> near = new ArrayList<>();
    Set<String> farSites = new TreeSet<>();
    int farVisits = 0;
    int farFouled = 0;
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < visits.size(); i++) {
      double metres = offsets[sites.siteOfVisit()[i]] * M_A_KM;
      nearest = Math.min(nearest, metres);
      if (metres <= withinM) {
        near.add(visits.get(i));
      } else {
        farSites.add(visits.get(i).place());
        farVisits++;
        farFouled += visits.get(i).fouled() ? 1 : 0;
      }
    }
    List<double[]> valves = pipes.valvesIn(sites.plane());
    double[] valveX = valves.stream().mapToDouble(v -> v[0]).toArray();
    double[] valveY = valves.stream().mapToDouble(v -> v[1]).toArray();
    double[] fromPipe = PipeNetwork.offsets(lines, valveX, valveY);
    List<double[]> closing = new ArrayList<>();
    for (int i = 0; i < fromPipe.length; i++) {
      if (fromPipe[i] * M_A_KM <= withinM) {
        closing.add(pipes.closedValves().get(i));
      }
    }
    return new PipesSeen(
        near,
        farVisits,
        farFouled,
        farSites,
        nearest,
        valves.size() - closing.size(),
        closing,
        length(lines));
  }

  private static double length(List<double[][]> lines) {
    double length = 0;
    for (double[][] line : lines) {
      for (int i = 1; i < line.length; i++) {
        length += StrictMath.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]);
      }
    }
    return length;
  }

  /** The sites of the near visits on the pipes that are open. */
  PipeNetwork network(ScanPlaces places, PipeLines pipes) {
    PipeLines cut = new PipeLines(pipes.open(), pipes.closedLines(), valves, pipes.passedOver());
    return new PipeNetwork(
        cut.in(places.plane()), cut.valvesIn(places.plane()), places.x(), places.y());
  }

  /** Sites of each part of the network that has any, the largest first. */
  static List<Integer> parts(PipeNetwork network) {
    Map<Integer, Integer> sites = new HashMap<>();
    for (int part : network.parts()) {
      sites.merge(part, 1, Integer::sum);
    }
    return sites.values().stream().sorted((a, b) -> b - a).toList();
  }
}
