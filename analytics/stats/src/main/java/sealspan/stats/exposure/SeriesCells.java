package sealspan.stats.exposure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Days and outcomes of units that tell something, by unit, window and band. */
record SeriesCells(List<Cell> list) {

  /** One cell with at least a day; window 0 is outside of all windows. */
  record Cell(int unit, int window, int band, long days, int outcomes) {}

  static SeriesCells of(List<WatchedSpan> units, List<RiskWindow> windows, IntUnaryOperator band) {
    List<Cell> cells = new ArrayList<>();
    for (int u = 0; u < units.size(); u++) {
      List<Cell> own = own(u, units.get(u), windows, band);
      boolean inside = own.stream().anyMatch(cell -> cell.window() > 0);
      boolean outside = own.stream().anyMatch(cell -> cell.window() == 0);
      if (inside && outside && own.stream().anyMatch(cell -> cell.outcomes() > 0)) {
        cells.addAll(own);
      }
    }
    return new SeriesCells(cells);
  }

  private static List<Cell> own(
      int number, WatchedSpan unit, List<RiskWindow> windows, IntUnaryOperator band) {
    int[] windowOfDay = unit.windowOfDay(windows);
    int[] outcomes = new int[windowOfDay.length];
    for (int day : unit.outcomeDays()) {
      if (day >= unit.fromDay() && day < unit.untilDay()) {
        outcomes[day - unit.fromDay()]++;
      }
    }
    TreeMap<Long, Cell> cells = new TreeMap<>();
    for (int d = 0; d < windowOfDay.length; d++) {
      int window = windowOfDay[d];
      int inBand = band.applyAsInt(unit.fromDay() + d);
      Cell day = new Cell(number, window, inBand, 1, outcomes[d]);
      cells.merge(
          ((long) window << 32) + inBand,
          day,
          (a, b) ->
              new Cell(number, a.window(), a.band(), a.days() + 1, a.outcomes() + b.outcomes()));
    }
    return List.copyOf(cells.values());
  }

  int outcomes() {
    return list.stream().mapToInt(Cell::outcomes).sum();
  }

  long days() {
    return list.stream().mapToLong(Cell::days).sum();
  }

  int outcomesIn(int window) {
    return list.stream().filter(c -> c.window() == window).mapToInt(Cell::outcomes).sum();
  }

  long daysIn(int window) {
    return list.stream().filter(c -> c.window() == window).mapToLong(Cell::days).sum();
  }

  int units() {
    return (int) list.stream().mapToInt(Cell::unit).distinct().count();
  }

  List<Integer> bands() {
    return list.stream().map(Cell::band).distinct().sorted().toList();
  }

  /** Without windows that have no outcome: their ratio is 0, and they tell the others nothing. */
  SeriesCells withoutEmptyWindows() {
    Set<Integer> telling = new HashSet<>();
    telling.add(0);
    list.stream().filter(c -> c.outcomes() > 0).forEach(c -> telling.add(c.window()));
    return new SeriesCells(list.stream().filter(c -> telling.contains(c.window())).toList());
  }

  /** Without bands that have no outcome, in which no day can be held against another. */
  SeriesCells withoutEmptyBands() {
    Set<Integer> telling = new HashSet<>();
    list.stream().filter(c -> c.outcomes() > 0).forEach(c -> telling.add(c.band()));
    return new SeriesCells(list.stream().filter(c -> telling.contains(c.band())).toList());
  }

  int[] unitNumbers() {
    return list.stream().mapToInt(Cell::unit).toArray();
  }

  double[] numbers(ToDoubleFunction<Cell> of) {
    return list.stream().mapToDouble(of).toArray();
  }

  double[] flags(Predicate<Cell> of) {
    return numbers(cell -> of.test(cell) ? 1 : 0);
  }
}
