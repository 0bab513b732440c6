package sealspan.event;

/**
 * An amount of money.
 *
 * @param minorUnits whole minor units (cents) of the currency
 * @param currency ISO 4217 code
 */
public record Money(
    @Means("whole minor units of the currency") long minorUnits,
    @Means("ISO 4217 code") String currency) {}
