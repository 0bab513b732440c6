package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.stats.scan.Window;

/**
 * When the visits of a scan were: periods of whole months from the beginning of a calendar year, as
 * short as their number allows. Windows are up to a year long; beside them stands the whole time.
 *
 * @param begin first day of the first period
 * @param months months of a period
 * @param count number of periods, at least 1
 */
record ScanPeriods(LocalDate begin, int months, int count) {
  private static final int MOST = 48;
  private static final int LONGEST_WINDOW_MONTHS = 12;
  private static final int[] MONTHS = {3, 6, 12};

  /** The periods of the days from a first to a last one. */
  static ScanPeriods of(LocalDate first, LocalDate last) {
    LocalDate begin = first.withDayOfYear(1);
    for (int months : MONTHS) {
      LocalDate from = begin.plusMonths((first.getMonthValue() - 1) / months * (long) months);
      ScanPeriods periods = new ScanPeriods(from, months, 1);
      int count = periods.of(last) + 1;
      if (count <= MOST || months == LONGEST_WINDOW_MONTHS) {
        return new ScanPeriods(from, months, count);
      }
    }
    throw new IllegalStateException("the last length is taken in any case");
  }

  /** The period of a day. */
  int of(LocalDate day) {
    return (int)
            ((day.getYear() - begin.getYear()) * 12L + day.getMonthValue() - begin.getMonthValue())
        / months;
  }

  LocalDate firstDay(int period) {
    return begin.plusMonths((long) period * months);
  }

  LocalDate lastDay(int period) {
    return firstDay(period + 1).minusDays(1);
  }

  /** Ordered by first period, then last. */
  List<Window> windows() {
    List<Window> windows = new ArrayList<>(Window.upTo(LONGEST_WINDOW_MONTHS / months, count));
    if (count > LONGEST_WINDOW_MONTHS / months) {
      windows.add(new Window(0, count - 1));
    }
    windows.sort(Comparator.comparingInt(Window::first).thenComparingInt(Window::last));
    return windows;
  }

  /** The whole time as the only window: where fouling clusters, whenever it did. */
  List<Window> wholeOnly() {
    return Window.whole(count);
  }

  int longestWindowMonths() {
    return LONGEST_WINDOW_MONTHS;
  }
}
