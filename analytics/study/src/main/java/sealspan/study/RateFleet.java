package sealspan.study;

import java.util.List;
import sealspan.stats.rates.FalseDiscovery;
import sealspan.stats.rates.FleetSums;
import sealspan.stats.rates.GridPosterior;
import sealspan.stats.rates.GridPriorFit;
import sealspan.stats.rates.HiddenFailures;
import sealspan.stats.rates.NonparametricPrior;
import sealspan.stats.rates.RateLattice;
import sealspan.stats.rates.SplinePrior;
import sealspan.table.RateNodeRow;
import sealspan.table.RatePriorRow;

/**
 * The prior of a fleet whose assemblies differ, and the fleet scored with it: what ranks and claims
 * are measured against until the next fit.
 */
final class RateFleet {
  /** Share of wrong claims that is allowed on the list. */
  static final double WRONG_CLAIMS = .1;

  /** The claims are of rates above this many times the mean. */
  static final double LIMIT_TIMES_MEAN = 2;

  private static final int NODES = 160;
  private static final double LOWEST_PER_YEAR = .002;
  private static final double HIGHEST_PER_YEAR = 3;
  private static final double CHECK_TOLERANCE = 1;

  private final GridPriorFit fit;
  private final GridPriorFit highest;
  private final FleetSums sums;
  private final double limitPerYear;
  private final FalseDiscovery claims;

  private RateFleet(
      GridPriorFit fit,
      GridPriorFit highest,
      FleetSums sums,
      double limitPerYear,
      FalseDiscovery claims) {
    this.fit = fit;
    this.highest = highest;
    this.sums = sums;
    this.limitPerYear = limitPerYear;
    this.claims = claims;
  }

  /** Fits the prior to all units and scores those that are in place. */
  static RateFleet of(
      List<RatedUnit> units, ExposureScale scale, RateEffects effects, double perYear) {
    RateLattice lattice =
        RateLattice.between(
            Math.min(LOWEST_PER_YEAR, perYear / 25) / RatePriors.YEAR_DAYS,
            Math.max(HIGHEST_PER_YEAR, perYear * 12) / RatePriors.YEAR_DAYS,
            NODES);
    List<HiddenFailures> scaled =
        units.stream().map(unit -> RateModel.scaled(unit, scale, effects, 1)).toList();
    GridPriorFit fit = SplinePrior.fit(lattice, scaled).orThrow();
    GridPriorFit highest = NonparametricPrior.fit(lattice, scaled, CHECK_TOLERANCE).orThrow();
    RateModel model = RateModel.of(scale, effects, fit.prior());
    FleetSums sums = new FleetSums(model.lattice());
    List<RatedUnit> inPlace = units.stream().filter(RatedUnit::inPlace).toList();
    double mean = 0;
    for (RatedUnit unit : inPlace) {
      GridPosterior posterior = model.posterior(unit);
      sums.add(posterior);
      mean += posterior.meanPerDay();
    }
    double meanPerDay = inPlace.isEmpty() ? fit.prior().meanPerDay() : mean / inPlace.size();
    double limitPerYear = LIMIT_TIMES_MEAN * meanPerDay * RatePriors.YEAR_DAYS;
    // Back to days as a score does it, so that a claim at the cutoff is decided alike.
    double limit = limitPerYear / RatePriors.YEAR_DAYS;
    // Worked out once more, because all posteriors together would not fit in memory.
    double[] wrong =
        inPlace.stream()
            .mapToDouble(unit -> 1 - model.posterior(unit).probabilityAbove(limit))
            .toArray();
    return new RateFleet(fit, highest, sums, limitPerYear, FalseDiscovery.of(wrong, WRONG_CLAIMS));
  }

  /** The lattice with prior and fleet. */
  List<RateNodeRow> nodes(String stratum) {
    return RateNodes.of(stratum, fit.prior(), sums);
  }

  /**
   * The stratum's row with what the fleet adds.
   *
   * @param gammaLikelihood log-likelihood of a gamma prior on the same exposures; null: none
   */
  RatePriorRow complete(RatePriorRow row, Double gammaLikelihood) {
    return new RatePriorRow(
        row.stratum(),
        row.assemblies(),
        row.tests(),
        row.failures(),
        row.exposureDays(),
        row.commonPerYear(),
        row.lowerPerYear(),
        row.upperPerYear(),
        row.compliantTests(),
        row.compliantFailures(),
        row.compliantPerYear(),
        row.compliantLowerPerYear(),
        row.compliantUpperPerYear(),
        row.shape(),
        row.rateYears(),
        row.meanPerYear(),
        fit.logLikelihood(),
        gammaLikelihood,
        highest.logLikelihood() + highest.furthestFromTop(),
        fit.prior().lattice().lowestLogPerDay(),
        fit.prior().lattice().step(),
        sums.units(),
        limitPerYear,
        claims.listed(),
        claims.cutoff(),
        row.siteCorrelation(),
        row.siteDesignEffect(),
        row.note());
  }
}
