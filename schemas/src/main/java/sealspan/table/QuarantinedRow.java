package sealspan.table;

import java.time.Instant;
import sealspan.event.Means;

/**
 * A row of a source that did not go in, kept whole; or word that such a row was put right. It
 * travels on the quarantine topic.
 */
public record QuarantinedRow(
    @Means("id that follows from source, row and reason: the same row is listed once") String id,
    @Means("source") String source,
    @Means("file") String file,
    @Means("line in the file, from 1; of a row over several lines, the first") long line,
    @Means("field that is at fault; none: the row as a whole") String field,
    @Means("REJECTED, CONFLICT or PUT_RIGHT") String kind,
    @Means("what is wrong and what to do") String reason,
    @Means("the row as it stands in the file") String rowText,
    @Means("when it was first seen") Instant firstSeenAt,
    @Means("id of the row that is no longer at fault; none: this is a row that did not go in")
        String putsRight) {}
