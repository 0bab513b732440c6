package sealspan.jobs;

/**
 * How long changed rows are held back: shortly where little happens, longer where much does, so
 * that sending takes at most about a quarter of the time. While events pour in faster than anyone
 * can record them, a long log is being caught up with: then most histories would be worked out over
 * and over, and nothing is sent until it is over or a quarter of an hour has passed. A checkpoint
 * sends all there is in any case.
 */
final class SendPace {
  /** The longest that one round of scoring may take. */
  static final long SLICE_NANOS = 100_000_000;

  private static final long SHORTEST_MILLIS = 100;
  private static final long LONGEST_MILLIS = 30_000;
  private static final long REST_PER_WORK = 3;

  private static final long FLOOD_PER_SECOND = 1_000;
  private static final long LONGEST_FLOOD_MILLIS = 900_000;

  /** A flood is over when it has not been seen for so long: the reading may falter meanwhile. */
  private static final long OVER_MILLIS = 2_000;

  private long pauseMillis = SHORTEST_MILLIS;
  private long arrivals;
  private long lookedAtMillis;
  private long floodSinceMillis = -1;
  private long floodSeenMillis;

  /** When to look again, for whoever begins to wait now; what comes meanwhile is counted. */
  long dueMillis(long nowMillis) {
    lookedAtMillis = nowMillis;
    return nowMillis + pauseMillis;
  }

  /** Notes that an event has come. */
  void arrived() {
    arrivals++;
  }

  /** Whether to wait on for the end of a flood. */
  boolean holds(long nowMillis) {
    boolean flood = arrivals * 1_000 > FLOOD_PER_SECOND * (nowMillis - lookedAtMillis);
    arrivals = 0;
    if (flood) {
      floodSeenMillis = nowMillis;
      floodSinceMillis = floodSinceMillis < 0 ? nowMillis : floodSinceMillis;
    }
    if (floodSinceMillis < 0 || nowMillis - floodSeenMillis >= OVER_MILLIS) {
      floodSinceMillis = -1;
      return false;
    }
    if (nowMillis - floodSinceMillis > LONGEST_FLOOD_MILLIS) {
      floodSinceMillis = nowMillis;
      return false;
    }
    return true;
  }

  /** Notes how long the last round took. */
  void took(long nanos) {
    long rest = REST_PER_WORK * nanos / 1_000_000;
    pauseMillis = Math.max(SHORTEST_MILLIS, Math.min(LONGEST_MILLIS, rest));
  }
}
