package sealspan.stats.survival;

import java.util.Collection;

/**
 * Lives counted by the days that they share, which is all that a likelihood needs of them. Lives
 * that carry no information (never at risk for a day) are left out. Counts are whole, so they do
 * not depend on the order of input.
 */
final class LifeCounts {
  private final DayIndex index;
  private final double[] logDays;
  private final double[] entering;
  private final double[] open;
  private final double[] exact;
  private final PairCounts.Sorted enclosed;
  private final long lives;
  private final long ended;
  private final double exposureDays;

  LifeCounts(Collection<Lifetime> lifetimes) {
    int[] days = new int[3 * lifetimes.size()];
    int at = 0;
    for (Lifetime life : lifetimes) {
      if (!silent(life)) {
        days[at++] = life.entryDay();
        days[at++] = Math.max(life.entryDay(), life.lowerDay());
        days[at++] = life.open() ? life.entryDay() : life.upperDay();
      }
    }
    index = new DayIndex(java.util.Arrays.copyOf(days, at));
    logDays = new double[index.size()];
    for (int i = 0; i < logDays.length; i++) {
      logDays[i] = StrictMath.log(index.day(i));
    }
    entering = new double[index.size()];
    open = new double[index.size()];
    exact = new double[index.size()];
    PairCounts pairs = new PairCounts(lifetimes.size());
    long all = 0;
    long over = 0;
    double exposure = 0;
    for (Lifetime life : lifetimes) {
      if (silent(life)) {
        continue;
      }
      int lower = index.place(Math.max(life.entryDay(), life.lowerDay()));
      entering[index.place(life.entryDay())] += life.count();
      if (life.open()) {
        open[lower] += life.count();
      } else if (life.exact()) {
        exact[lower] += life.count();
      } else {
        pairs.add(lower, index.place(life.upperDay()), life.count());
      }
      all += life.count();
      over += life.open() ? 0 : life.count();
      int last = life.open() ? life.lowerDay() : life.upperDay();
      exposure += (double) life.count() * (last - life.entryDay());
    }
    lives = all;
    ended = over;
    exposureDays = exposure;
    enclosed = pairs.sorted();
  }

  private static boolean silent(Lifetime life) {
    return life.open() ? life.lowerDay() <= life.entryDay() : life.upperDay() <= life.entryDay();
  }

  /** Distinct days. */
  int days() {
    return logDays.length;
  }

  /** Logarithm of a day; negative infinite for day 0. */
  double logDay(int place) {
    return logDays[place];
  }

  /** Whether the first of the days is day 0. */
  boolean beginsAtZero() {
    return index.size() > 0 && index.day(0) == 0;
  }

  /** Lives that entered on a day. */
  double entering(int place) {
    return entering[place];
  }

  /** Lives last seen going on, on a day. */
  double open(int place) {
    return open[place];
  }

  /** Lives that ended on a day. */
  double exact(int place) {
    return exact[place];
  }

  /** Lives that ended between two days, by the places of these. */
  PairCounts.Sorted enclosed() {
    return enclosed;
  }

  /** Lives that carry information. */
  long lives() {
    return lives;
  }

  /** Those of them that ended. */
  long ended() {
    return ended;
  }

  /** The longest time in the data. */
  int longestDay() {
    return index.size() == 0 ? 0 : index.day(index.size() - 1);
  }

  /** Log of days at risk per end, each enclosed end taken at its last possible day. */
  double roughLogMean() {
    return StrictMath.log(exposureDays / ended);
  }
}
