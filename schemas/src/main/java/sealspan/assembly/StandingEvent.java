package sealspan.assembly;

import java.time.Instant;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.LoggedEvent;

/**
 * An event that holds, after duplicates, conflicts, corrections and voids.
 *
 * @param logged the event as the log keeps it
 * @param event what holds: its own content, or that of the correction
 * @param correction the correction that put it there; null for none
 */
public record StandingEvent(LoggedEvent logged, AssemblyEvent event, LoggedEvent correction) {
  /** Id of the event, which a correction does not change. */
  public String id() {
    return logged.id();
  }

  /** When the log took in the newest of what holds; null before it is appended. */
  public Instant recordedAt() {
    Instant own = logged.recordedAt();
    if (correction == null || correction.recordedAt() == null || own == null) {
      return own;
    }
    return own.isAfter(correction.recordedAt()) ? own : correction.recordedAt();
  }

  /** The content of the correction; null for none. */
  EventCorrected corrected() {
    return correction == null ? null : (EventCorrected) correction.event();
  }
}
