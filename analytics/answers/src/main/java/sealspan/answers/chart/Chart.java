package sealspan.answers.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import sealspan.answers.Answer;
import sealspan.answers.AnswersException;
import sealspan.answers.ChartHeader;
import sealspan.answers.Question;
import sealspan.answers.Questions;

/**
 * An answer laid out for drawing. Rows without x or y are left out; of many series the first
 * {@value #MOST_SERIES} are drawn, and the caption says so.
 *
 * @param title the question in words
 * @param caption as-of, n, what was left out, cautions
 * @param draw how points are joined
 * @param axisX x axis; null where there is nothing to draw
 * @param axisY y axis; null where there is nothing to draw
 * @param series the series
 */
public record Chart(
    String title,
    List<String> caption,
    ChartHeader.Draw draw,
    Axis axisX,
    Axis axisY,
    List<Series> series) {
  static final int MOST_SERIES = 6;

  public Chart {
    caption = List.copyOf(caption);
    series = List.copyOf(series);
  }

  /**
   * The chart of an answer.
   *
   * @throws AnswersException where the question has no chart
   */
  public static Chart of(Question question, Answer answer) {
    ChartHeader header = question.chart();
    if (header == null) {
      throw new AnswersException(
          "The question "
              + question.name()
              + " has no chart. Questions that have one: "
              + Questions.all().stream()
                  .filter(other -> other.chart() != null)
                  .map(Question::name)
                  .collect(Collectors.joining(", "))
              + ".");
    }
    List<Series> all = series(header, answer);
    List<Series> drawn = all.subList(0, Math.min(all.size(), MOST_SERIES));
    List<String> caption = new ArrayList<>();
    caption.add("As of: " + answer.asOf());
    if (drawn.size() < all.size()) {
      caption.add(
          "Drawn: the first "
              + drawn.size()
              + " of "
              + all.size()
              + " series; narrow the question by its filters to see the others.");
    }
    caption.addAll(answer.notes());
    boolean empty = drawn.isEmpty();
    return new Chart(
        answer.title(),
        caption,
        header.draw(),
        empty ? null : axisX(header, answer, drawn),
        empty ? null : axisY(header, drawn),
        drawn);
  }

  private static List<Series> series(ChartHeader header, Answer answer) {
    Rows rows = new Rows(answer);
    Map<String, List<Series.Point>> byName = new LinkedHashMap<>();
    for (List<Object> row : answer.table().rows()) {
      Series.Point point =
          new Series.Point(
              rows.number(row, header.x()),
              rows.number(row, header.y()),
              rows.number(row, header.lower()),
              rows.number(row, header.upper()),
              rows.number(row, header.also()));
      if (Double.isFinite(point.x()) && Double.isFinite(point.y())) {
        byName.computeIfAbsent(rows.name(row, header.by()), n -> new ArrayList<>()).add(point);
      }
    }
    List<Series> series = new ArrayList<>();
    byName.forEach(
        (name, points) -> {
          points.sort(Comparator.comparingDouble(Series.Point::x));
          series.add(new Series(name, points));
        });
    return series;
  }

  private static Axis axisX(ChartHeader header, Answer answer, List<Series> series) {
    double[] xs =
        series.stream().flatMap(s -> s.points().stream()).mapToDouble(Series.Point::x).toArray();
    double lowest = DoubleStream.of(xs).min().orElseThrow();
    double highest = DoubleStream.of(xs).max().orElseThrow();
    return new Rows(answer).holdsDays(header.x())
        ? Axis.ofDays(header.axisX(), lowest, highest)
        : Axis.ofNumbers(header.axisX(), lowest, highest);
  }

  private static Axis axisY(ChartHeader header, List<Series> series) {
    double[] ys =
        DoubleStream.concat(
                series.stream()
                    .flatMap(s -> s.points().stream())
                    .flatMapToDouble(p -> DoubleStream.of(p.y(), p.lower(), p.upper(), p.also()))
                    .filter(Double::isFinite),
                java.util.stream.Stream.of(header.from(), header.to())
                    .filter(end -> end != null)
                    .mapToDouble(Double::doubleValue))
            .toArray();
    return Axis.ofNumbers(
        header.axisY(),
        DoubleStream.of(ys).min().orElseThrow(),
        DoubleStream.of(ys).max().orElseThrow());
  }

  /** Reads cells by the names of their columns. */
  private record Rows(Answer answer) {
    /** NaN where the column is not named or the cell is not known. */
    double number(List<Object> row, String column) {
      Object cell = column == null ? null : row.get(answer.table().indexOf(column));
      if (cell == null) {
        return Double.NaN;
      }
      return cell instanceof LocalDate day ? day.toEpochDay() : ((Number) cell).doubleValue();
    }

    String name(List<Object> row, List<String> columns) {
      return columns.stream()
          .map(column -> row.get(answer.table().indexOf(column)))
          .filter(cell -> cell != null)
          .map(Object::toString)
          .collect(Collectors.joining(", "));
    }

    boolean holdsDays(String column) {
      return answer.table().columns().get(answer.table().indexOf(column)).sqlType().equals("DATE");
    }
  }
}
