package sealspan.stats.survival;

import java.util.Arrays;
import java.util.Collection;

/**
 * Entries, ends and open exits by day, and which stretch of days a curve can be drawn over. A life
 * is at risk over (entry, exit].
 */
final class RiskTable {
  /** After a restart the curve begins where this many lives are at risk, if so many ever are. */
  static final int FEWEST_AT_RESTART = 5;

  private final int[] days;
  private final long[] entries;
  private final long[] ends;
  private final long[] leaving;

  /**
   * A stretch of days in which somebody is at risk and the curve does not come to 0 while others go
   * on.
   *
   * @param fromDay start of the curve
   * @param toDay end of the stretch
   * @param ends lives that end in it
   * @param restarted whether lives at risk came before it
   */
  record Stretch(int fromDay, int toDay, long ends, boolean restarted) {}

  RiskTable(Collection<Lifetime> lifetimes) {
    int[] all = new int[2 * lifetimes.size()];
    int at = 0;
    for (Lifetime life : lifetimes) {
      if (life.lowerDay() > life.entryDay()) {
        all[at++] = life.entryDay();
        all[at++] = life.lowerDay();
      }
    }
    DayIndex index = new DayIndex(Arrays.copyOf(all, at));
    days = new int[index.size()];
    entries = new long[days.length];
    ends = new long[days.length];
    leaving = new long[days.length];
    for (int i = 0; i < days.length; i++) {
      days[i] = index.day(i);
    }
    for (Lifetime life : lifetimes) {
      if (life.lowerDay() > life.entryDay()) {
        int last = index.place(life.lowerDay());
        entries[index.place(life.entryDay())] += life.count();
        ends[last] += life.exact() ? life.count() : 0;
        leaving[last] += life.count();
      }
    }
  }

  boolean empty() {
    return days.length == 0;
  }

  /** The stretch with most ends, the earliest of several. */
  Stretch stretch() {
    Stretch best = null;
    int first = 0;
    while (first < days.length) {
      int last = endOfStretch(first);
      Stretch stretch = stretch(first, last);
      if (best == null || stretch.ends > best.ends) {
        best = stretch;
      }
      boolean othersGoOnToday = entries[last] > 0;
      first = othersGoOnToday ? last : last + 1;
    }
    return best;
  }

  /** The index of the day on which the stretch that begins with the entries of a day is over. */
  private int endOfStretch(int first) {
    long atRisk = entries[first];
    for (int i = first + 1; i < days.length; i++) {
      boolean allEnded = ends[i] > 0 && ends[i] == atRisk;
      atRisk -= leaving[i];
      if (allEnded || atRisk == 0 && entries[i] == 0) {
        return i;
      }
      atRisk += entries[i];
    }
    return days.length - 1;
  }

  private Stretch stretch(int first, int last) {
    boolean restarted = first > 0;
    long most = 0;
    long atRisk = 0;
    for (int i = first; i < last; i++) {
      atRisk += entries[i] - (i == first ? 0 : leaving[i]);
      most = Math.max(most, atRisk);
    }
    long needed = restarted ? Math.min(FEWEST_AT_RESTART, most) : 1;
    atRisk = 0;
    int start = first;
    for (int i = first; i < last; i++) {
      atRisk += entries[i] - (i == first ? 0 : leaving[i]);
      if (atRisk >= needed) {
        start = i;
        break;
      }
    }
    long ended = 0;
    for (int i = start + 1; i <= last; i++) {
      ended += ends[i];
    }
    return new Stretch(days[start], days[last], ended, restarted);
  }

  /**
   * The days of a stretch on which lives end.
   *
   * @param days ascending
   * @param atRisk lives at risk on each
   * @param ended lives that end on each
   * @param fewestBeforeFirstEnd the fewest lives at risk before the first of them
   */
  record Steps(int[] days, long[] atRisk, long[] ended, long fewestBeforeFirstEnd) {}

  /** The steps of a stretch. */
  Steps steps(Stretch stretch) {
    int count = 0;
    for (int i = 0; i < days.length; i++) {
      count += within(i, stretch) && ends[i] > 0 ? 1 : 0;
    }
    int[] stepDays = new int[count];
    long[] atRisk = new long[count];
    long[] ended = new long[count];
    long now = 0;
    long fewest = Long.MAX_VALUE;
    int j = 0;
    for (int i = 0; i < days.length && days[i] <= stretch.toDay; i++) {
      if (within(i, stretch) && ends[i] > 0) {
        stepDays[j] = days[i];
        atRisk[j] = now;
        ended[j] = ends[i];
        j++;
      }
      now += entries[i] - leaving[i];
      if (days[i] >= stretch.fromDay && days[i] < stretch.toDay && j == 0) {
        fewest = Math.min(fewest, now);
      }
    }
    return new Steps(stepDays, atRisk, ended, fewest);
  }

  private boolean within(int i, Stretch stretch) {
    return days[i] > stretch.fromDay && days[i] <= stretch.toDay;
  }
}
