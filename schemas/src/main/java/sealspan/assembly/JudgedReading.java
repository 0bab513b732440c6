package sealspan.assembly;

import sealspan.event.Reading;

/**
 * A reading of a round, judged.
 *
 * @param reading the reading as entered
 * @param criterion the limit that it was held against; null for none
 * @param result what came of it
 * @param marginal whether it lies within the gauge's error of the limit
 */
public record JudgedReading(
    Reading reading, Criterion criterion, Result result, boolean marginal) {}
