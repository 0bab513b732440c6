package sealspan.table;

import java.time.Instant;
import java.time.LocalDate;
import sealspan.event.Means;

/**
 * A forecast as it was issued, never changed since, and what came of it. It is held against the
 * first counted as-found round that happened after its basis and was recorded after it was issued.
 */
public record FrozenForecastRow(
    @Means("assembly id") String assemblyId,
    @Means("id of the entry of the ledger that holds it") String ledgerId,
    @Means("when it was issued") Instant issuedAt,
    @Means("id of the cut of the fit that it rests on") String fitCutId,
    @Means("version of the code that made it") String codeVersion,
    @Means("event id of the round that had passed last") String basisEventId,
    @Means("day of that round") LocalDate basisDay,
    @Means("probability that it fails a test made on the basis day") double probabilityAtOnce,
    @Means("the same, 6 months after it") double probability6Months,
    @Means("the same, 12 months after it") double probability12Months,
    @Means("the same, 24 months after it") double probability24Months,
    @Means("probability for any assembly of its type, 12 months after a pass")
        double baseProbability,
    @Means("of the probability after 12 months, by drift") double probabilityDrift,
    @Means("of the probability after 12 months, sudden") double probabilitySudden,
    @Means("what made up most of it") String drivenBy,
    @Means("assembly type then") String type,
    @Means("event id of the round that it is held against; none: not yet") String outcomeEventId,
    @Means("day of that round") LocalDate outcomeDay,
    @Means("when the log took that round in") Instant outcomeRecordedAt,
    @Means("probability that it gave a test on that day; none: not scored") Double probabilityThen,
    @Means("probability of its type on that day") Double baseProbabilityThen,
    @Means("whether the round failed") Boolean failed,
    @Means("why it is not scored, in words") String note) {}
