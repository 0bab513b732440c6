package sealspan.study;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import sealspan.stats.recurrence.EventTimes;
import sealspan.table.AssemblyRows;
import sealspan.table.RepairRow;
import sealspan.table.SealRow;
import sealspan.table.TestRow;

/**
 * The days on which seals of one assembly were replaced, several seals on one day counting once.
 * Replacements wait for visits, and watching begins and ends with visits: dated on their own days
 * they would lie too late in the watch, and every fleet would seem to get worse. So each is also
 * dated half way back to the visit before.
 *
 * <p>All days are days since 1970-01-01.
 *
 * @param entry first day of watching, which sees no replacement
 * @param exit last day of watching, after the entry
 * @param origin day on which all seals were new; null where that of a seal is unknown
 * @param days days of replacement, in (entry, exit], ascending
 * @param dated the same, half way back to the visit before
 */
record ReplacementDays(int entry, int exit, Integer origin, int[] days, double[] dated) {
  private static final int[] NO_DAYS = {};
  private static final double[] NO_DATES = {};

  /**
   * Of all seals, or of one component's where one is named; null where nobody watched for a day.
   */
  static ReplacementDays of(AssemblyRows rows, String component) {
    List<SealPosition> positions = SealPosition.of(rows, component);
    if (positions.isEmpty()) {
      return null;
    }
    LocalDate entry = null;
    LocalDate exit = null;
    LocalDate origin = positions.get(0).seals().get(0).startDay();
    TreeSet<LocalDate> replaced = new TreeSet<>();
    for (SealPosition position : positions) {
      origin = position.originKnown() ? origin : null;
      for (SealRow seal : position.seals()) {
        entry = entry == null || seal.entryDay().isBefore(entry) ? seal.entryDay() : entry;
        exit = exit == null || seal.endDay().isAfter(exit) ? seal.endDay() : exit;
        if (SealPosition.replaced(seal)) {
          replaced.add(seal.endDay());
        }
      }
    }
    if (!entry.isBefore(exit)) {
      return null;
    }
    List<LocalDate> days = List.copyOf(replaced.tailSet(entry, false));
    boolean none = days.isEmpty();
    return new ReplacementDays(
        day(entry),
        day(exit),
        origin == null ? null : day(origin),
        none ? NO_DAYS : days.stream().mapToInt(ReplacementDays::day).toArray(),
        none ? NO_DATES : dated(rows, entry, days));
  }

  private static int day(LocalDate day) {
    return Math.toIntExact(day.toEpochDay());
  }

  private static double[] dated(AssemblyRows rows, LocalDate entry, List<LocalDate> days) {
    double[] dated = new double[days.size()];
    TreeSet<LocalDate> visits = new TreeSet<>();
    visits.add(entry);
    for (TestRow test : rows.tests()) {
      visits.add(test.day());
    }
    for (RepairRow repair : rows.repairs()) {
      visits.add(repair.day());
    }
    for (int i = 0; i < dated.length; i++) {
      LocalDate before = visits.lower(days.get(i));
      before = before == null || before.isBefore(entry) ? entry : before;
      dated[i] = (before.toEpochDay() + days.get(i).toEpochDay()) / 2.0;
    }
    return dated;
  }

  /** On the calendar, in days since 1970-01-01. */
  EventTimes onCalendar() {
    return EventTimes.watched(entry, exit, dated);
  }

  /** By age in days; only where the origin is known. */
  EventTimes byAge() {
    double born = origin;
    double[] ages = dated.clone();
    for (int i = 0; i < ages.length; i++) {
      ages[i] -= born;
    }
    return EventTimes.watched(entry - born, exit - born, ages);
  }
}
