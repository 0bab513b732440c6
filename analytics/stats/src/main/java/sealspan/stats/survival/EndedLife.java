package sealspan.stats.survival;

/**
 * One life that may have ended for one of several reasons, or several equal ones, in days since its
 * start; at risk over (entry, day].
 *
 * @param entryDay watched from here, at least 0
 * @param day day of the end, or last day on which it was seen going on; at least 0
 * @param reason number of the reason, from 0; {@link #GOING_ON} when it has not ended
 * @param count number of such lives, at least 1
 */
public record EndedLife(int entryDay, int day, int reason, long count) {
  /** The end has not been seen. */
  public static final int GOING_ON = -1;

  public EndedLife {
    if (entryDay < 0 || day < 0 || reason < GOING_ON || count < 1) {
      throw new IllegalArgumentException(
          "a life needs entry and day at least 0, a reason or none, and a count, but got entry "
              + entryDay
              + ", day "
              + day
              + ", reason "
              + reason
              + ", count "
              + count);
    }
  }

  /** The same without the reason. */
  Lifetime lifetime() {
    return new Lifetime(entryDay, day, reason == GOING_ON ? Lifetime.NEVER : day, count);
  }
}
