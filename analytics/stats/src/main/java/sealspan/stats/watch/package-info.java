/**
 * A watch over outcomes as they become known: when are there more in some zone than their
 * probabilities allow, with a promise how seldom that is said for nothing. Outcomes come one at a
 * time, with a probability that was fixed before; this package knows zones and numbers only.
 */
package sealspan.stats.watch;
