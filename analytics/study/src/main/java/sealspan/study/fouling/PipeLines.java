package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;

/**
 * Pipes as they were drawn. Points are {longitude, latitude}, WGS84, degrees.
 *
 * @param open the pipes that water passes, each a line of at least two points
 * @param closedLines number of pipes that are marked as closed; they are not among the open ones
 * @param closedValves points at which the nearest pipe is closed
 * @param passedOver features that are neither a pipe nor a closed valve: open valves, and features
 *     without a geometry
 */
public record PipeLines(
    List<double[][]> open, int closedLines, List<double[]> closedValves, int passedOver) {
  /** The open pipes in a plane, in kilometres {east, north}. */
  List<double[][]> in(Plane plane) {
    List<double[][]> lines = new ArrayList<>();
    for (double[][] line : open) {
      double[][] projected = new double[line.length][];
      for (int i = 0; i < line.length; i++) {
        projected[i] = at(line[i], plane);
      }
      lines.add(projected);
    }
    return lines;
  }

  /** The closed valves in a plane, in kilometres {east, north}. */
  List<double[]> valvesIn(Plane plane) {
    return closedValves.stream().map(valve -> at(valve, plane)).toList();
  }

  private static double[] at(double[] point, Plane plane) {
    return new double[] {plane.x(point[0]), plane.y(point[1])};
  }
}
