package sealspan.ingest.log;

import sealspan.table.QuarantinedRow;

/**
 * The rows that did not go in. The log sets the id and the time at which a row was first seen; what
 * is handed in there does not count. The same row with the same complaint is listed once, however
 * often and under whatever file name it is imported.
 */
public interface Quarantine extends AppendLog<QuarantinedRow> {}
