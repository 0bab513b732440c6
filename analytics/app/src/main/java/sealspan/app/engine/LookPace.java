package sealspan.app.engine;

import java.time.Duration;
import java.time.Instant;

/**
 * How often the newest snapshot is looked through for what is due. A look goes through much of it,
 * and while a large record is caught up with there is a new one every few seconds: looking shall
 * not take more than a quarter of the time.
 */
final class LookPace {
  private static final Duration PAUSE = Duration.ofSeconds(2);
  private static final int REST_PER_WORK = 3;

  private Instant next = Instant.MIN;

  /** Whether there was rest enough since the last look. */
  boolean isDue(Instant now) {
    return !now.isBefore(next);
  }

  /** Looks, and rests from the end of it. */
  void look(Runnable look) {
    Instant began = Instant.now();
    try {
      look.run();
    } finally {
      Instant ended = Instant.now();
      Duration rest = Duration.between(began, ended).multipliedBy(REST_PER_WORK);
      next = ended.plus(rest.compareTo(PAUSE) < 0 ? PAUSE : rest);
    }
  }
}
