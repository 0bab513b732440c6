package sealspan.answers.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sealspan.answers.ChartHeader;
import sealspan.answers.Wrapped;

/** A chart as one self-contained SVG 1.1 picture, with its caption. */
public final class SvgChart {
  private static final int WIDTH = 820;
  private static final int LEFT = 70;
  private static final int RIGHT = 20;
  private static final int PLOT_TOP = 50;
  private static final int PLOT_HEIGHT = 360;
  private static final int LINE_HEIGHT = 16;

  private final Chart chart;
  private final SvgPage page = new SvgPage(WIDTH);
  private final StringBuilder out = page.out();

  private SvgChart(Chart chart) {
    this.chart = chart;
  }

  /** The text of the picture, ending in a line break. */
  public static String of(Chart chart) {
    return new SvgChart(chart).draw();
  }

  private String draw() {
    List<String> caption = captionLines();
    int legendTop = PLOT_TOP + PLOT_HEIGHT + 55;
    int captionTop = legendTop + LINE_HEIGHT * (legendLines() + 1);
    int height = captionTop + LINE_HEIGHT * caption.size() + 10;
    page.begin(height, chart.title());
    page.text(LEFT, 26, "start", 16, chart.title());
    if (chart.series().isEmpty()) {
      page.text(LEFT, PLOT_TOP + 20, "start", 12, "No rows, so there is nothing to draw.");
    } else {
      axes();
      for (int s = 0; s < chart.series().size(); s++) {
        series(chart.series().get(s).points(), SvgPage.COLOURS[s]);
      }
      legend(legendTop);
    }
    for (int i = 0; i < caption.size(); i++) {
      page.text(LEFT, captionTop + LINE_HEIGHT * i, "start", 11, caption.get(i));
    }
    return page.end();
  }

  private List<String> captionLines() {
    StringBuilder lines = new StringBuilder();
    chart.caption().forEach(note -> Wrapped.append(note, lines));
    return lines.toString().lines().toList();
  }

  private void axes() {
    int bottom = PLOT_TOP + PLOT_HEIGHT;
    for (Axis.Mark mark : chart.axisY().marks()) {
      page.line(LEFT, y(mark.at()), WIDTH - RIGHT, y(mark.at()), "#dddddd");
      page.text(LEFT - 8, y(mark.at()) + 4, "end", 12, mark.label());
    }
    for (Axis.Mark mark : chart.axisX().marks()) {
      page.line(x(mark.at()), bottom, x(mark.at()), bottom + 5, "#333333");
      page.text(x(mark.at()), bottom + 19, "middle", 12, mark.label());
    }
    page.line(LEFT, bottom, WIDTH - RIGHT, bottom, "#333333");
    page.line(LEFT, PLOT_TOP, LEFT, bottom, "#333333");
    page.text((LEFT + WIDTH - RIGHT) / 2.0, bottom + 38, "middle", 12, chart.axisX().name());
    int middle = PLOT_TOP + PLOT_HEIGHT / 2;
    out.append("<g transform=\"rotate(-90 18 " + middle + ")\">");
    page.text(18, middle, "middle", 12, chart.axisY().name());
    out.append("</g>\n");
  }

  private void series(List<Series.Point> points, String colour) {
    if (chart.draw() == ChartHeader.Draw.POINTS) {
      for (Series.Point point : points) {
        if (point.hasBand()) {
          page.line(x(point.x()), y(point.lower()), x(point.x()), y(point.upper()), colour);
        }
        out.append(
                "<circle cx=\""
                    + SvgPage.number(x(point.x()))
                    + "\" cy=\""
                    + SvgPage.number(y(point.y())))
            .append("\" r=\"3.5\" fill=\"" + colour + "\"/>\n");
      }
      return;
    }
    for (List<Series.Point> run : runs(points, Series.Point::lower)) {
      area(run, Series.Point::lower, Series.Point::upper, colour, "0.15");
    }
    for (List<Series.Point> run : runs(points, Series.Point::also)) {
      area(run, Series.Point::y, Series.Point::also, colour, "0.35");
      path(run, Series.Point::also, colour, " stroke-dasharray=\"5 3\"");
    }
    path(points, Series.Point::y, colour, "");
  }

  /** Stretches of points, one after another, at which something is known. */
  private static List<List<Series.Point>> runs(
      List<Series.Point> points, ToDoubleFunction<Series.Point> what) {
    List<List<Series.Point>> runs = new ArrayList<>();
    List<Series.Point> run = new ArrayList<>();
    for (Series.Point point : points) {
      if (!Double.isNaN(what.applyAsDouble(point))) {
        run.add(point);
      } else if (!run.isEmpty()) {
        runs.add(run);
        run = new ArrayList<>();
      }
    }
    if (!run.isEmpty()) {
      runs.add(run);
    }
    return runs;
  }

  private void path(
      List<Series.Point> points,
      ToDoubleFunction<Series.Point> height,
      String colour,
      String more) {
    out.append("<polyline fill=\"none\" stroke=\"" + colour + "\" stroke-width=\"1.8\"" + more)
        .append(" points=\"" + String.join(" ", corners(points, height)) + "\"/>\n");
  }

  private void area(
      List<Series.Point> points,
      ToDoubleFunction<Series.Point> from,
      ToDoubleFunction<Series.Point> to,
      String colour,
      String opacity) {
    List<String> corners = new ArrayList<>(corners(points, from));
    List<String> back = new ArrayList<>(corners(points, to));
    java.util.Collections.reverse(back);
    corners.addAll(back);
    out.append("<polygon stroke=\"none\" fill=\"" + colour + "\" fill-opacity=\"" + opacity)
        .append("\" points=\"" + String.join(" ", corners) + "\"/>\n");
  }

  private List<String> corners(List<Series.Point> points, ToDoubleFunction<Series.Point> height) {
    List<String> corners = new ArrayList<>();
    double before = Double.NaN;
    for (Series.Point point : points) {
      double y = y(height.applyAsDouble(point));
      if (chart.draw() == ChartHeader.Draw.STEP && !Double.isNaN(before)) {
        corners.add(SvgPage.number(x(point.x())) + "," + SvgPage.number(before));
      }
      corners.add(SvgPage.number(x(point.x())) + "," + SvgPage.number(y));
      before = y;
    }
    return corners;
  }

  private int legendLines() {
    return (int) chart.series().stream().filter(s -> !s.name().isEmpty()).count();
  }

  private void legend(int top) {
    int row = 0;
    for (int s = 0; s < chart.series().size(); s++) {
      String name = chart.series().get(s).name();
      if (!name.isEmpty()) {
        int y = top + LINE_HEIGHT * row++;
        out.append(
                "<rect x=\"" + LEFT + "\" y=\"" + (y - 9) + "\" width=\"22\" height=\"8\" fill=\"")
            .append(SvgPage.COLOURS[s] + "\"/>\n");
        page.text(LEFT + 30, y, "start", 12, name);
      }
    }
  }

  private double x(double value) {
    return LEFT + chart.axisX().share(value) * (WIDTH - LEFT - RIGHT);
  }

  private double y(double value) {
    return PLOT_TOP + (1 - chart.axisY().share(value)) * PLOT_HEIGHT;
  }
}
