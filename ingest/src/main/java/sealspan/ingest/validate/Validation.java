package sealspan.ingest.validate;

import java.util.List;
import sealspan.event.LoggedEvent;

/** What came of a row: its events, or what is wrong with it. A row goes in whole or not at all. */
public sealed interface Validation {

  /**
   * The row is sound.
   *
   * @param events its events with their envelopes, at least one
   */
  record Accepted(List<LoggedEvent> events) implements Validation {
    public Accepted {
      events = List.copyOf(events);
    }
  }

  /**
   * The row is not taken.
   *
   * @param problems everything that is wrong with it, at least one
   */
  record Rejected(List<Problem> problems) implements Validation {
    public Rejected {
      problems = List.copyOf(problems);
    }
  }
}
