package sealspan.ingest.log;

import java.time.InstantSource;
import sealspan.table.LedgerEntry;

/** A {@link Ledger} that is gone with the process, for tests and dry runs. */
public final class InMemoryLedger extends InMemoryAppendLog<LedgerEntry> implements Ledger {
  public InMemoryLedger() {
    this(InstantSource.system());
  }

  /** With a clock of the caller's. */
  public InMemoryLedger(InstantSource clock) {
    super(new LedgerForm(), clock);
  }
}
