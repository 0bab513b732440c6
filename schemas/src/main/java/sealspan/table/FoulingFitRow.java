package sealspan.table;

import java.time.Instant;
import java.time.LocalDate;
import sealspan.event.Means;

/**
 * How likely a fouling failure is at a site visit, whatever the place, and what was counted for it.
 */
public record FoulingFitRow(
    @Means("id of the cut") String cutId,
    @Means("offset after the last event of each partition that is in, such as 0:12,1:7")
        String cutOffsets,
    @Means("recorded time of the newest event that is in") Instant newestRecordedAt,
    @Means("version of the code that made it") String codeVersion,
    @Means("what counts as a fouling failure, in words") String rule,
    @Means("routine as-found rounds that count and have an exposure") int rounds,
    @Means("of these, failed on performance") int failedRounds,
    @Means("of the failed rounds, fouling failures") int foulingRounds,
    @Means("of the failed rounds, those that could not be classified") int unclassifiedRounds,
    @Means("site visits: all such rounds at one site on one day") int visits,
    @Means("of the visits, those with a fouling failure") int foulingVisits,
    @Means("visits with a failure that could not be classified and none by fouling; left out")
        int unclassifiedVisits,
    @Means("first day of a visit") LocalDate firstDay,
    @Means("last day of a visit") LocalDate lastDay,
    @Means("sum of the exposures of the visits' rounds, days") long exposureDays,
    @Means("REGRESSION; POOLED: one rate for all; NONE: there is nothing to fit") String method,
    @Means("the type that the other types are compared with") String baseType,
    @Means("why there is no regression, in words") String because) {}
