package sealspan.ingest.log;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;

/** Gives recorded times that never decrease, whatever the clock of the machine does. */
final class RecordedClock {
  private final InstantSource clock;
  private Instant latest = Instant.EPOCH;

  RecordedClock(InstantSource clock) {
    this.clock = clock;
  }

  Instant next() {
    saw(clock.instant().truncatedTo(ChronoUnit.MILLIS));
    return latest;
  }

  /** Takes note of a recorded time that is in the log. */
  void saw(Instant recordedAt) {
    if (recordedAt.isAfter(latest)) {
      latest = recordedAt;
    }
  }

  Instant latest() {
    return latest;
  }
}
