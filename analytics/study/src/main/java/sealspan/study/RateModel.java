package sealspan.study;

import sealspan.stats.rates.FleetRanks;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GridPosterior;
import sealspan.stats.rates.GridPrior;
import sealspan.stats.rates.GridScores;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.RateLattice;
import sealspan.table.FitRows;
import sealspan.table.RatePriorRow;

/**
 * What a fit says of rates, ready to score assemblies one by one. Not safe for several threads.
 *
 * <p>A rate is that of the assembly as it is now; the exposures of earlier years are scaled by how
 * much lower or higher its rate was expected to be then, in whole days.
 */
final class RateModel {
  /** Length of the list of which the probability of being on it is given. */
  static final int WORST = 10;

  private final RatePriorRow row;
  private final ExposureScale scale;
  private final RateEffects effects;
  private final GridScores scores;
  private final FleetRanks ranks;

  private RateModel(
      RatePriorRow row,
      ExposureScale scale,
      RateEffects effects,
      GridScores scores,
      FleetRanks ranks) {
    this.row = row;
    this.scale = scale;
    this.effects = effects;
    this.scores = scores;
    this.ranks = ranks;
  }

  /** From the fit of all assemblies. */
  static RateModel read(FitRows all) {
    GridScores scores = RateNodes.scores(all.ratePrior(), all.rateNodes());
    FleetSums fleet = scores == null ? null : RateNodes.fleet(scores.lattice(), all);
    return new RateModel(
        all.ratePrior(),
        ExposureScale.read(all.exposurePowers()),
        RateEffects.read(all.rateEffects()),
        scores,
        fleet == null || fleet.units() == 0 ? null : new FleetRanks(fleet));
  }

  /** A model that is being fitted: no ranks yet. */
  static RateModel of(ExposureScale scale, RateEffects effects, GridPrior prior) {
    return new RateModel(null, scale, effects, new GridScores(prior), null);
  }

  /** The prior's row. */
  RatePriorRow row() {
    return row;
  }

  /** How exposures count. */
  ExposureScale scale() {
    return scale;
  }

  /** Whether assemblies are seen to differ, so that each has a posterior. */
  boolean differs() {
    return scores != null;
  }

  /** Whether the fleet of the fit is there to be ranked in. */
  boolean ranked() {
    return ranks != null;
  }

  /** Ranks within the fleet of the fit. */
  FleetRanks ranks() {
    return ranks;
  }

  /** The lattice of posteriors. */
  RateLattice lattice() {
    return scores.lattice();
  }

  /** What is known of the rate of an assembly, in counted days. */
  GridPosterior posterior(RatedUnit unit) {
    double now = effects.multiplier(unit.levels());
    return scores.posterior(scaled(unit, scale, effects, now), scores.prior().lattice().shift(now));
  }

  /** The tests of a unit, its exposures as if at a rate with some multiplier. */
  static HiddenFailures scaled(
      RatedUnit unit, ExposureScale scale, RateEffects effects, double multiplier) {
    int[] days = new int[unit.tests().size()];
    boolean[] failed = new boolean[days.length];
    for (int i = 0; i < days.length; i++) {
      RatedTest test = unit.tests().get(i);
      double years = scale.years(test.days(), unit.type());
      double counted =
          years * RatePriors.YEAR_DAYS * effects.multiplier(test.levels()) / multiplier;
      days[i] = (int) Math.max(1, Math.rint(Math.min(counted, 1e8)));
      failed[i] = test.failed();
    }
    return HiddenFailures.of(days, failed);
  }
}
