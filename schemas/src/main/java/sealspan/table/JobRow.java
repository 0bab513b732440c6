package sealspan.table;

import java.time.LocalDate;
import sealspan.event.Means;

/** What a visit cost, in minor units of a currency. */
public record JobRow(
    @Means("assembly id") String assemblyId,
    @Means("event id") String eventId,
    @Means("day") LocalDate day,
    @Means("visit id") String visitId,
    @Means("contract id") String contractId,
    @Means("whether the contract covers it") Boolean covered,
    @Means("ISO 4217 code") String currency,
    @Means("labour, minor units") Long labourMinor,
    @Means("travel, minor units") Long travelMinor,
    @Means("parts, minor units") Long partsMinor,
    @Means("invoiced, minor units") Long invoicedMinor) {}
