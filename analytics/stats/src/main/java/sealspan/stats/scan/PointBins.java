package sealspan.stats.scan;

/** Points in square bins, so that the nearest ones of many are found without measuring all. */
final class PointBins {
  private static final int MOST_BINS_A_SIDE = 1_000;

  private final double[] x;
  private final double[] y;
  private final double side;
  private final double leastX;
  private final double leastY;
  private final int columns;
  private final int rows;
  private final int[] start;
  private final int[] member;

  /** Bins that hold about an eighth of the wanted number each. */
  PointBins(double[] x, double[] y, int wanted) {
    this.x = x;
    this.y = y;
    double[] spanX = span(x);
    double[] spanY = span(y);
    leastX = spanX[0];
    leastY = spanY[0];
    double width = spanX[1] - spanX[0];
    double height = spanY[1] - spanY[0];
    double bins = Math.max(1, 8.0 * x.length / Math.max(1, wanted));
    double wished = Math.max(Math.sqrt(width * height / bins), Math.max(width, height) / bins);
    side = Math.max(wished, Math.max(width, height) / MOST_BINS_A_SIDE);
    columns = side > 0 ? (int) (width / side) + 1 : 1;
    rows = side > 0 ? (int) (height / side) + 1 : 1;
    start = new int[columns * rows + 1];
    for (int i = 0; i < x.length; i++) {
      start[bin(i) + 1]++;
    }
    for (int i = 0; i < columns * rows; i++) {
      start[i + 1] += start[i];
    }
    member = new int[x.length];
    int[] next = start.clone();
    for (int i = 0; i < x.length; i++) {
      member[next[bin(i)]++] = i;
    }
  }

  /**
   * Collects the points about a centre by squared distance: at least the wanted number of nearest
   * ones, all as near as any of those included, unless there are fewer. Tells whether all points
   * were collected.
   */
  boolean nearest(int centre, int wanted, NearestFirst near) {
    int column = column(centre);
    int row = row(centre);
    int farthest = Math.max(Math.max(column, columns - 1 - column), Math.max(row, rows - 1 - row));
    near.clear();
    for (int ring = 0; ring <= farthest; ring++) {
      collectRing(centre, column, row, ring, near);
      // Whatever was not collected lies farther away than this.
      double safe = ring * side * (ring * side) * (1 - 1e-9);
      if (near.size() > wanted) {
        int settled = 0;
        for (int i = 0; i < near.size(); i++) {
          settled += near.distance(i) < safe ? 1 : 0;
        }
        if (settled > wanted) {
          return near.size() == x.length;
        }
      }
    }
    return true;
  }

  private void collectRing(int centre, int column, int row, int ring, NearestFirst near) {
    for (int r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
      boolean edge = Math.abs(r - row) == ring;
      int step = edge || ring == 0 ? 1 : 2 * ring;
      for (int c = column - ring; c <= column + ring; c += step) {
        if (c >= 0 && c < columns) {
          collectBin(centre, r * columns + c, near);
        }
      }
    }
  }

  private void collectBin(int centre, int bin, NearestFirst near) {
    for (int m = start[bin]; m < start[bin + 1]; m++) {
      double dx = x[member[m]] - x[centre];
      double dy = y[member[m]] - y[centre];
      near.add(member[m], dx * dx + dy * dy);
    }
  }

  private int bin(int i) {
    return row(i) * columns + column(i);
  }

  private int column(int i) {
    return side > 0 ? Math.min(columns - 1, (int) ((x[i] - leastX) / side)) : 0;
  }

  private int row(int i) {
    return side > 0 ? Math.min(rows - 1, (int) ((y[i] - leastY) / side)) : 0;
  }

  private static double[] span(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      if (!Double.isFinite(v)) {
        throw new IllegalArgumentException("a coordinate that is no number: " + v);
      }
      least = Math.min(least, v);
      most = Math.max(most, v);
    }
    return new double[] {least, most};
  }
}
