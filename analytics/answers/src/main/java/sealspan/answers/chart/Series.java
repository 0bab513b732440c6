package sealspan.answers.chart;

import java.util.List;

/**
 * One line or cloud of points of a chart.
 *
 * @param name its name; empty where it is the only one
 * @param points in order of x, rows of the answer with the same x in their order
 */
record Series(String name, List<Point> points) {
  /**
   * A point.
   *
   * @param x place on the x axis
   * @param y height
   * @param lower lower end of the interval; NaN for none
   * @param upper upper end of the interval; NaN for none; may be infinite
   * @param also height of the second line; NaN for none
   */
  record Point(double x, double y, double lower, double upper, double also) {
    boolean hasBand() {
      return !Double.isNaN(lower) && !Double.isNaN(upper);
    }
  }

  Series {
    points = List.copyOf(points);
  }
}
