package sealspan.answers.chart;

import java.util.Arrays;
import java.util.List;
import sealspan.answers.ChartHeader;
import sealspan.answers.Wrapped;

/** A chart as text for the terminal: letters for the series, dots for their intervals. */
public final class TextChart {
  private static final int COLUMNS = 68;
  private static final int ROWS = 21;
  private static final String SIGNS = "ABCDEF";
  private static final char INTERVAL = '.';
  private static final char ROOM = ':';

  private final Chart chart;
  private final char[][] cells = new char[ROWS][COLUMNS];
  private int indent;

  private TextChart(Chart chart) {
    this.chart = chart;
    for (char[] row : cells) {
      Arrays.fill(row, ' ');
    }
  }

  /** The text of a chart, ending in a line break. */
  public static String of(Chart chart) {
    StringBuilder out = new StringBuilder();
    out.append(chart.title()).append("\n\n");
    if (chart.series().isEmpty()) {
      out.append("No rows, so there is nothing to draw.\n");
    } else {
      new TextChart(chart).draw(out);
    }
    out.append('\n');
    chart.caption().forEach(note -> Wrapped.append(note, out));
    return out.toString();
  }

  private void draw(StringBuilder out) {
    for (Series series : chart.series()) {
      bands(series.points());
    }
    // The first series is drawn last, so that it lies on top.
    for (int s = chart.series().size() - 1; s >= 0; s--) {
      lines(chart.series().get(s).points(), SIGNS.charAt(s));
    }
    out.append(chart.axisY().name()).append('\n');
    rows(out);
    marksOfX(out);
    out.append('\n');
    for (int s = 0; s < chart.series().size(); s++) {
      String name = chart.series().get(s).name();
      out.append("  ").append(SIGNS.charAt(s)).append("  ");
      out.append(name.isEmpty() ? chart.axisY().name() : name).append('\n');
    }
    if (any(Series.Point::hasBand)) {
      out.append("  ").append(INTERVAL).append("  interval\n");
    }
    if (any(point -> !Double.isNaN(point.also()))) {
      out.append("  ").append(ROOM).append("  left open by the data\n");
    }
  }

  private boolean any(java.util.function.Predicate<Series.Point> test) {
    return chart.series().stream().flatMap(s -> s.points().stream()).anyMatch(test);
  }

  private void bands(List<Series.Point> points) {
    for (int column = 0; column < COLUMNS; column++) {
      for (Series.Point point : pointsAt(points, column)) {
        if (point.hasBand()) {
          fill(column, point.lower(), point.upper(), INTERVAL);
        }
      }
    }
    for (int column = 0; column < COLUMNS; column++) {
      for (Series.Point point : pointsAt(points, column)) {
        if (!Double.isNaN(point.also())) {
          fill(column, Math.min(point.y(), point.also()), Math.max(point.y(), point.also()), ROOM);
        }
      }
    }
  }

  private void lines(List<Series.Point> points, char sign) {
    for (int column = 0; column < COLUMNS; column++) {
      for (Series.Point point : pointsAt(points, column)) {
        cells[row(point.y())][column] = sign;
      }
    }
  }

  /** What a series shows in a column: its own points there, else what holds or lies between. */
  private List<Series.Point> pointsAt(List<Series.Point> points, int column) {
    List<Series.Point> own = points.stream().filter(p -> column(p.x()) == column).toList();
    if (!own.isEmpty() || chart.draw() == ChartHeader.Draw.POINTS) {
      return own;
    }
    int after = 0;
    while (after < points.size() && column(points.get(after).x()) < column) {
      after++;
    }
    if (after == 0 || after == points.size()) {
      return List.of();
    }
    Series.Point before = points.get(after - 1);
    return List.of(
        chart.draw() == ChartHeader.Draw.STEP
            ? before
            : between(before, points.get(after), column));
  }

  private Series.Point between(Series.Point a, Series.Point b, int column) {
    double from = column(a.x());
    double part = (column - from) / (column(b.x()) - from);
    return new Series.Point(
        a.x() + part * (b.x() - a.x()),
        a.y() + part * (b.y() - a.y()),
        a.lower() + part * (b.lower() - a.lower()),
        a.upper() + part * (b.upper() - a.upper()),
        a.also() + part * (b.also() - a.also()));
  }

  private void fill(int column, double low, double high, char sign) {
    for (int row = row(high); row <= row(low); row++) {
      cells[row][column] = sign;
    }
  }

  private int column(double x) {
    return (int) Math.round(chart.axisX().share(x) * (COLUMNS - 1));
  }

  private int row(double y) {
    return (int) Math.round((1 - chart.axisY().share(y)) * (ROWS - 1));
  }

  private void rows(StringBuilder out) {
    String[] labels = new String[ROWS];
    Arrays.fill(labels, "");
    int width = 0;
    for (Axis.Mark mark : chart.axisY().marks()) {
      labels[row(mark.at())] = mark.label();
      width = Math.max(width, mark.label().length());
    }
    for (int row = 0; row < ROWS; row++) {
      String label = labels[row];
      out.append(" ".repeat(width - label.length())).append(label);
      out.append(label.isEmpty() ? " |" : " +");
      out.append(new String(cells[row]).stripTrailing()).append('\n');
    }
    indent = width + 2;
  }

  private void marksOfX(StringBuilder out) {
    char[] rule = new char[COLUMNS];
    Arrays.fill(rule, '-');
    char[] labels = new char[COLUMNS + 8];
    Arrays.fill(labels, ' ');
    int free = 0;
    for (Axis.Mark mark : chart.axisX().marks()) {
      int column = column(mark.at());
      int start = Math.max(0, column - mark.label().length() / 2);
      if (start >= free && start + mark.label().length() <= labels.length) {
        rule[column] = '+';
        mark.label().getChars(0, mark.label().length(), labels, start);
        free = start + mark.label().length() + 1;
      }
    }
    String margin = " ".repeat(indent - 1);
    out.append(margin).append('+').append(rule).append('\n');
    out.append(margin).append(' ').append(new String(labels).stripTrailing()).append('\n');
    int middle = Math.max(0, (COLUMNS - chart.axisX().name().length()) / 2);
    out.append(margin).append(' ').append(" ".repeat(middle)).append(chart.axisX().name());
    out.append('\n');
  }
}
