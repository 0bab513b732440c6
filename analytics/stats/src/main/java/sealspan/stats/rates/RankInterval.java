package sealspan.stats.rates;

/**
 * A range of ranks, both ends included; 1 is the highest rate.
 *
 * @param lower best supported low end, at least 1
 * @param upper high end
 * @param level probability that it is meant to hold
 */
public record RankInterval(long lower, long upper, double level) {}
