package sealspan.stats.watch;

/**
 * An alarm: the evidence has reached the threshold, and what carries most of it.
 *
 * @param test number of the test that raised it, from 1 since the watch began
 * @param tests tests since the watch began or since the alarm before
 * @param evidence the evidence over all zones and multipliers, at least the threshold
 * @param zone the zone that carries most of it
 * @param multiplier the multiplier of that zone that carries most of it
 * @param share share of the evidence that this zone carries, with all its multipliers
 * @param since number of the test in the zone from which on it looks most likely, under that
 *     multiplier, that cases were too many
 * @param inZone tests in the zone from then on
 * @param cases cases among them
 * @param expected cases expected among them
 */
public record Raised(
    long test,
    long tests,
    double evidence,
    int zone,
    double multiplier,
    double share,
    long since,
    int inZone,
    int cases,
    double expected) {}
