/**
 * Where and when cases are too many for what was expected: scan statistics with a Monte Carlo null,
 * and a watch over a stream. Cases are counted against an expected number that the caller brings;
 * this package knows places, periods and counts only.
 */
package sealspan.stats.scan;
