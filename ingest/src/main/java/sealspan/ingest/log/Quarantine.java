package sealspan.ingest.log;

import sealspan.table.QuarantinedRow;

/**
 * The rows that did not go in. The log sets the time at which a row was first seen, and the id of a
 * row that has none. The same row with the same complaint is listed once, however often and under
 * whatever file name it is imported; {@link StandingRows} tells which of them were put right.
 */
public interface Quarantine extends AppendLog<QuarantinedRow> {}
