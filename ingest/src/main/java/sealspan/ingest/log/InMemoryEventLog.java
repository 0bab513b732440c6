package sealspan.ingest.log;

import java.time.InstantSource;
import sealspan.event.LoggedEvent;

/** A {@link EventLog} that is gone with the process, for tests and dry runs. */
public final class InMemoryEventLog extends InMemoryAppendLog<LoggedEvent> implements EventLog {
  public InMemoryEventLog() {
    this(InstantSource.system());
  }

  /** With a clock of the caller's. */
  public InMemoryEventLog(InstantSource clock) {
    super(new EventForm(), clock);
  }
}
