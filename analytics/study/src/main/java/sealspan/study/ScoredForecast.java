package sealspan.study;

/**
 * A forecast and what came of it.
 *
 * @param group what it belongs to, such as the assembly type
 * @param probability that the test would fail
 * @param base the same, for any assembly of its type
 * @param failed whether it did
 */
public record ScoredForecast(String group, double probability, double base, boolean failed) {}
