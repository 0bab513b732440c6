package sealspan.table;

import java.util.List;
import sealspan.event.Means;

/** What a fit at a cut found for one stratum. */
public record FitRows(
    @Means("stratum, such as all, or type=RP") String stratum,
    @Means("grows with every cut that is fitted") long revision,
    @Means("the fit") FitRow fit,
    @Means("prior of failure rates; absent where not fitted for this stratum")
        RatePriorRow ratePrior,
    @Means("the lattice of rates: prior and fleet") List<RateNodeRow> rateNodes,
    @Means("what goes with higher rates") List<RateEffectRow> rateEffects,
    @Means("whether failures accumulate with time") List<ExposurePowerRow> exposurePowers,
    @Means("figures of seal life and of replacements") List<SealLifeRow> sealLife,
    @Means("curves") List<CurveRow> curves,
    @Means("what cleaning and a new seal would each have led to")
        List<RepairEffectRow> repairEffects,
    @Means("how alike the compared cases are") List<RepairBalanceRow> repairBalance,
    @Means("drifts of readings, by component; only for strata of one type") List<DriftRow> drifts,
    @Means("sudden failures; absent where not fitted for this stratum")
        SuddenFailureRow suddenFailure,
    @Means("whether failures and replacements come ever oftener") List<TrendRow> trends,
    @Means("failures and replacements by calendar year") List<YearlyRateRow> yearlyRates,
    @Means("replacements of one group against the others")
        List<ReplacementComparisonRow> comparisons,
    @Means("ageing and what repairs leave of it") List<AgeingRow> ageing,
    @Means("repairs that did not take") List<RetestRow> retests)
    implements Bundle {

  /** The part of this fit that scores need. */
  public FitRows forScores() {
    return new FitRows(
        stratum,
        revision,
        fit,
        ratePrior,
        rateNodes,
        rateEffects,
        exposurePowers,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        drifts,
        suddenFailure,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  /** A fit of failure rates alone. */
  public static FitRows ofRates(
      String stratum,
      RatePriorRow ratePrior,
      List<RateNodeRow> rateNodes,
      List<RateEffectRow> rateEffects,
      List<ExposurePowerRow> exposurePowers) {
    return new FitRows(
        stratum,
        1,
        null,
        ratePrior,
        rateNodes,
        rateEffects,
        exposurePowers,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  @Override
  public String key() {
    return "fit/" + stratum;
  }
}
