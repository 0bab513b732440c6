package sealspan.table;

import java.time.Instant;
import sealspan.event.Means;

/**
 * Something that was decided and cannot be derived again from events: a cut that was fitted, a
 * criteria table that was adopted. It travels on the ledger topic.
 */
public record LedgerEntry(
    @Means("id that follows from kind and content") String id,
    @Means("CUT_FITTED, CRITERIA_ADOPTED or PLACES_MOVED") String kind,
    @Means("the content: offsets of a cut, the table as CSV, or why events were moved")
        String content,
    @Means("when it was decided") Instant decidedAt,
    @Means("id of who or what decided it") String by) {}
