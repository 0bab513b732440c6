package sealspan.ingest.log;

import sealspan.table.LedgerEntry;

/**
 * What was decided and cannot be derived from the events again, in one order. The log sets the id,
 * which follows from kind and content: the same decision is entered once.
 */
public interface Ledger extends AppendLog<LedgerEntry> {}
