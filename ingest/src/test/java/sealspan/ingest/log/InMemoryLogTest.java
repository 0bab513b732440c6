package sealspan.ingest.log;

import java.time.InstantSource;

class InMemoryLogTest extends LogContract {
  @Override
  EventLog events(InstantSource clock) {
    return new InMemoryEventLog(clock);
  }

  @Override
  Quarantine quarantine(InstantSource clock) {
    return new InMemoryQuarantine(clock);
  }

  @Override
  Ledger ledger(InstantSource clock) {
    return new InMemoryLedger(clock);
  }
}
