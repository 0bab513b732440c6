package sealspan.stats.rates;

/**
 * A fitted gamma prior.
 *
 * @param prior the prior
 * @param logLikelihood marginal log-likelihood at the maximum
 * @param standardErrorLogShape of the logarithm of the shape
 * @param standardErrorLogExposure of the logarithm of the exposure
 * @param units units used
 * @param failures failures among them; posteriors take the prior as known, so with few units or
 *     failures their intervals are too narrow
 */
public record PriorFit(
    GammaPrior prior,
    double logLikelihood,
    double standardErrorLogShape,
    double standardErrorLogExposure,
    long units,
    long failures) {}
