package sealspan.assembly;

import java.time.LocalDate;
import sealspan.event.AssemblyEvent;

/**
 * One event of a history in canonical order.
 *
 * @param source the event
 * @param round what the history makes of it, for a test round; null for other events
 */
record HistoryStep(StandingEvent source, TestRound round) {
  AssemblyEvent event() {
    return source.event();
  }

  LocalDate day() {
    return source.event().when().day();
  }
}
