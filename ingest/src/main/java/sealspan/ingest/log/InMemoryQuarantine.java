package sealspan.ingest.log;

import java.time.InstantSource;
import sealspan.table.QuarantinedRow;

/** A {@link Quarantine} that is gone with the process, for tests and dry runs. */
public final class InMemoryQuarantine extends InMemoryAppendLog<QuarantinedRow>
    implements Quarantine {
  public InMemoryQuarantine() {
    this(InstantSource.system());
  }

  /** With a clock of the caller's. */
  public InMemoryQuarantine(InstantSource clock) {
    super(new QuarantineForm(), clock);
  }
}
