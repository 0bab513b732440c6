package sealspan.jobs;

/**
 * How long changed rows are held back: shortly where little happens, longer where much does, so
 * that sending takes at most about a quarter of the time and a log that is being caught up with is
 * not sent on event by event.
 */
final class SendPace {
  /** The longest that one round of scoring may take. */
  static final long SLICE_NANOS = 100_000_000;

  private static final long SHORTEST_MILLIS = 100;
  private static final long LONGEST_MILLIS = 30_000;
  private static final long REST_PER_WORK = 3;

  private long pauseMillis = SHORTEST_MILLIS;

  long pauseMillis() {
    return pauseMillis;
  }

  /** Notes how long the last round took. */
  void took(long nanos) {
    long rest = REST_PER_WORK * nanos / 1_000_000;
    pauseMillis = Math.max(SHORTEST_MILLIS, Math.min(LONGEST_MILLIS, rest));
  }
}
