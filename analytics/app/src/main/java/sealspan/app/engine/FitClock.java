package sealspan.app.engine;

import java.time.Duration;
import java.time.Instant;

/**
 * Decides when it is time for a new fit: when new events have come and then none for a while, or
 * when they never cease, after a longest wait; and never so often that fitting is all there is.
 * Both waits grow with the number of new events: a fit of half an import is work for nothing, and
 * holds up the other half. Immutable.
 *
 * @param seen the end of the log when it was last looked at; empty before
 * @param grewAt when the end was last seen to have moved
 * @param fitted the end at which the last fit was made; empty for none
 * @param waitingSince when the oldest event without a fit was first seen; null for none
 * @param restUntil before this no fit is due
 */
record FitClock(
    String seen, Instant grewAt, String fitted, Instant waitingSince, Instant restUntil) {
  /** How long no event may have come, where they are few. */
  private static final Duration SETTLED_OF_FEW = Duration.ofSeconds(1);

  private static final Duration LONGEST_SETTLED = Duration.ofSeconds(30);
  private static final long EVENTS_PER_SETTLED_MILLI = 20;

  /** How long events wait at most for a fit, where they never cease and are few. */
  static final Duration WAIT_OF_FEW = Duration.ofMinutes(2);

  private static final Duration LONGEST_WAIT = Duration.ofMinutes(30);
  private static final long EVENTS_PER_WAITED_MILLI = 2;

  private static final Duration REST_AFTER_FAILURE = Duration.ofSeconds(30);
  private static final int REST_PER_WORK = 4;

  /**
   * A clock of an engine that starts.
   *
   * @param fitted the end at which the last fit was made; empty for none
   */
  static FitClock starting(String fitted) {
    return new FitClock("", Instant.MIN, fitted, null, Instant.MIN);
  }

  /** After a look at the log. */
  FitClock looked(Instant now, String end) {
    if (end.equals(seen)) {
      return this;
    }
    Instant waiting = end.equals(fitted) ? null : waitingSince == null ? now : waitingSince;
    return new FitClock(end, now, fitted, waiting, restUntil);
  }

  /** Whether a fit should begin. */
  boolean isDue(Instant now) {
    if (waitingSince == null || now.isBefore(restUntil)) {
      return false;
    }
    long events = Cuts.events(Cuts.parse(seen)) - Cuts.events(Cuts.parse(fitted));
    Duration settled = between(SETTLED_OF_FEW, events / EVENTS_PER_SETTLED_MILLI, LONGEST_SETTLED);
    Duration wait = between(WAIT_OF_FEW, events / EVENTS_PER_WAITED_MILLI, LONGEST_WAIT);
    return !now.isBefore(grewAt.plus(settled)) || !now.isBefore(waitingSince.plus(wait));
  }

  private static Duration between(Duration least, long millis, Duration most) {
    return Duration.ofMillis(Math.max(least.toMillis(), Math.min(millis, most.toMillis())));
  }

  /** After a fit at an end of the log. */
  FitClock fittedAt(String end, Instant began, Instant now) {
    Instant rest = now.plus(Duration.between(began, now).multipliedBy(REST_PER_WORK));
    return new FitClock(seen, grewAt, end, end.equals(seen) ? null : now, rest);
  }

  /** After a fit that failed: it is tried again after a rest. */
  FitClock failedAt(Instant now) {
    return new FitClock(seen, grewAt, fitted, waitingSince, now.plus(REST_AFTER_FAILURE));
  }
}
