package sealspan.stats.rates;

/**
 * A prior fitted on a lattice.
 *
 * @param prior the prior
 * @param logLikelihood marginal log-likelihood of the units
 * @param furthestFromTop how much higher the log-likelihood of any prior on the lattice can be; 0
 *     where not worked out
 * @param units units used
 */
public record GridPriorFit(
    GridPrior prior, double logLikelihood, double furthestFromTop, long units) {}
