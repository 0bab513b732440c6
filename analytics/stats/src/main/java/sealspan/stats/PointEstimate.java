package sealspan.stats;

/**
 * A number with its uncertainty.
 *
 * @param value the estimate
 * @param standardError its standard error, on the scale of the value
 * @param interval an interval by the method that the estimator states; not always value +- z se
 */
public record PointEstimate(double value, double standardError, Interval interval) {}
