package sealspan.study;

import sealspan.stats.Interval;
import sealspan.stats.rates.GridPosterior;
import sealspan.stats.rates.RankInterval;
import sealspan.table.RatePriorRow;

/**
 * What the last fit makes of an assembly's own tests. Where assemblies are not seen to differ, the
 * one rate of all, which says nothing of this assembly.
 */
record RateScore(
    String expectedFrom,
    Double perYear,
    Double lowerPerYear,
    Double upperPerYear,
    Double failsWithinYear,
    Double failsLower,
    Double failsUpper,
    Double failsVariance,
    Double aboveLimit,
    Double expectedRank,
    RankInterval rank,
    Double worstTen,
    Boolean listed,
    String note) {
  static final String ASSEMBLIES_LIKE_IT = "ASSEMBLIES_LIKE_IT";
  static final String COMMON_RATE = "COMMON_RATE";

  private static final double LEVEL = .95;

  /** The score; the model is null before the first fit. */
  static RateScore of(RatedUnit unit, RateModel model) {
    if (model == null) {
      return nothing("no prior is fitted yet");
    }
    RatePriorRow fit = model.row();
    if (!model.differs()) {
      boolean known = fit.commonPerYear() != null && fit.tests() > 0;
      return known ? common(fit) : nothing(fit.note());
    }
    GridPosterior posterior = model.posterior(unit);
    Interval perDay = posterior.interval(LEVEL);
    double year = RatePriors.YEAR_DAYS;
    double above = posterior.probabilityAbove(fit.limitPerYear() / year);
    double fails = posterior.mean(rate -> -StrictMath.expm1(-rate * year));
    double square =
        posterior.mean(rate -> StrictMath.expm1(-rate * year) * StrictMath.expm1(-rate * year));
    boolean ranked = model.ranked() && unit.inPlace() && !unit.tests().isEmpty();
    return new RateScore(
        ASSEMBLIES_LIKE_IT,
        posterior.meanPerDay() * year,
        perDay.lower() * year,
        perDay.upper() * year,
        fails,
        -StrictMath.expm1(-perDay.lower() * year),
        -StrictMath.expm1(-perDay.upper() * year),
        Math.max(0, square - fails * fails),
        above,
        ranked ? model.ranks().expected(posterior) : null,
        ranked ? model.ranks().interval(posterior, LEVEL) : null,
        ranked ? model.ranks().probabilityInWorst(RateModel.WORST, posterior) : null,
        ranked ? (Boolean) (1 - above <= fit.listCutoff()) : null,
        null);
  }

  private static RateScore common(RatePriorRow fit) {
    Double upper = fit.upperPerYear();
    return new RateScore(
        COMMON_RATE,
        fit.commonPerYear(),
        fit.lowerPerYear(),
        upper,
        -StrictMath.expm1(-fit.commonPerYear()),
        -StrictMath.expm1(-fit.lowerPerYear()),
        upper == null ? null : (Double) (-StrictMath.expm1(-upper)),
        null,
        null,
        null,
        null,
        null,
        null,
        fit.note() + "; the expected rate is the common one of all assemblies");
  }

  private static RateScore nothing(String because) {
    return new RateScore(
        null, null, null, null, null, null, null, null, null, null, null, null, null, because);
  }
}
