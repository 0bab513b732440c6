package sealspan.stats.scan;

import sealspan.stats.Estimate;

/**
 * A zone with what its score is worth.
 *
 * @param zone the zone
 * @param replicates Monte Carlo replicates
 * @param asLarge replicates whose largest score is as large or larger; ties count
 * @param gumbel fit of the tail to the replicates
 */
public record Cluster(Zone zone, int replicates, int asLarge, Estimate<Gumbel> gumbel) {
  /** (1 + replicates as large) / (1 + replicates). */
  public double p() {
    return (1.0 + asLarge) / (1.0 + replicates);
  }

  /** The Gumbel tail at the score, which reaches below what the replicates can count. */
  public Estimate<Double> gumbelP() {
    if (gumbel instanceof Estimate.Identified<Gumbel> fitted) {
      return Estimate.of(fitted.value().tail(zone.score()));
    }
    return Estimate.notIdentified(((Estimate.NotIdentified<Gumbel>) gumbel).because());
  }
}
