package sealspan.stats.survival;

import java.util.Comparator;

/**
 * What is known of one life, or of several equal ones, in days since its start. The life is watched
 * only from its entry (it is in the data because it was still going then), and it ended after lower
 * and not after upper; both equal when the day is known.
 *
 * @param entryDay watched from here, at least 0; 0 when watched from the start
 * @param lowerDay last day on which it was known to go on; the day of the end if that is known
 * @param upperDay first day on which it was known to have ended, or {@link #NEVER}
 * @param count number of such lives, at least 1
 */
public record Lifetime(int entryDay, int lowerDay, int upperDay, long count) {
  /** The end has not been seen. */
  public static final int NEVER = Integer.MAX_VALUE;

  static final Comparator<Lifetime> ORDER =
      Comparator.comparingInt(Lifetime::entryDay)
          .thenComparingInt(Lifetime::lowerDay)
          .thenComparingInt(Lifetime::upperDay)
          .thenComparingLong(Lifetime::count);

  public Lifetime {
    if (entryDay < 0 || lowerDay < 0 || upperDay < lowerDay || count < 1) {
      throw new IllegalArgumentException(
          "a lifetime needs entry and lower at least 0, upper not below lower, and a count, but got"
              + " entry "
              + entryDay
              + ", lower "
              + lowerDay
              + ", upper "
              + upperDay
              + ", count "
              + count);
    }
  }

  /** Ended on a known day. */
  public static Lifetime ended(int entryDay, int day) {
    return new Lifetime(entryDay, day, day, 1);
  }

  /** Still going on this day; not seen after it. */
  public static Lifetime goingOn(int entryDay, int day) {
    return new Lifetime(entryDay, day, NEVER, 1);
  }

  /** Ended after one day and not after another. */
  public static Lifetime endedWithin(int entryDay, int afterDay, int notAfterDay) {
    return new Lifetime(entryDay, afterDay, notAfterDay, 1);
  }

  /** The same, so many times. */
  public Lifetime times(long lives) {
    return new Lifetime(entryDay, lowerDay, upperDay, lives);
  }

  /** The day of the end is known. */
  public boolean exact() {
    return lowerDay == upperDay;
  }

  /** The end has not been seen. */
  public boolean open() {
    return upperDay == NEVER;
  }
}
