package sealspan.answers;

import java.time.Instant;
import java.util.List;
import sealspan.table.CurveRow;
import sealspan.table.ExposurePowerRow;
import sealspan.table.FitRow;
import sealspan.table.FitRows;
import sealspan.table.RateEffectRow;
import sealspan.table.RateNodeRow;
import sealspan.table.RatePriorRow;
import sealspan.table.RepairBalanceRow;
import sealspan.table.RepairEffectRow;
import sealspan.table.SealLifeRow;

/** Two fits of the small invented utility: of all assemblies, and of one type. */
final class HandMadeFits {
  private HandMadeFits() {}

  private static RepairEffectRow effect(
      int place, String quantity, Double figure, Double lower, Double upper, String note) {
    return new RepairEffectRow(
        "all", "ANY", place, quantity, figure, lower, upper, 60, 21, 40, 6, 55, note);
  }

  private static CurveRow curve(
      String question, String estimator, String reason, int days, double height, double least) {
    return new CurveRow(
        "type=RP component=check1",
        question,
        estimator,
        reason,
        days,
        height,
        least,
        Math.max(0, least - 0.1),
        Math.min(1, height + 0.1),
        12,
        days == 0 ? 0 : 2);
  }

  private static SealLifeRow restrictedMean(String stratum) {
    return new SealLifeRow(
        stratum,
        "REPLACED_ANY_REASON",
        "Kaplan-Meier, first gaps",
        "restricted mean to 4 years, years",
        3.6,
        2.9,
        4.0,
        2,
        1,
        1,
        0,
        4.0,
        null,
        null);
  }

  private static RatePriorRow rates(String stratum, int assemblies) {
    boolean all = stratum.equals("all");
    return new RatePriorRow(
        stratum,
        assemblies,
        2 * assemblies,
        2,
        731L * assemblies,
        0.2,
        0.1,
        0.4,
        2 * assemblies - 1,
        1,
        0.11,
        0.003,
        0.5,
        1.2,
        6.0,
        0.2,
        all ? -20.0 : null,
        -20.5,
        all ? -19.8 : null,
        all ? -12.1 : null,
        all ? 0.046 : null,
        all ? 2L : null,
        all ? 0.4 : null,
        all ? 1 : null,
        all ? 0.1 : null,
        all ? 0.03 : null,
        all ? 1.2 : null,
        "the intervals take all assemblies to share one rate");
  }

  /** Rates of all assemblies, with two nodes of the lattice. */
  static FitRows ofAll() {
    FitRow fit =
        new FitRow("all", "cut-1", "0:9", Instant.parse("2025-02-01T00:00:00Z"), 4, "00fe", "test");
    FitRows rates =
        FitRows.ofRates(
            "all",
            rates("all", 2),
            List.of(
                new RateNodeRow("all", 0, 0, 0.1, 0.6, 1L << 40, 0L),
                new RateNodeRow("all", 0, 1, 0.4, 0.4, 1L << 40, 1L << 38)),
            List.of(
                new RateEffectRow("all", "type", "RP", 60, 9, 1.0, null, null, "the base"),
                new RateEffectRow("all", "type", "DC", 40, 3, 0.6, 0.3, 1.1, null)),
            List.of(
                new ExposurePowerRow("all", "ALL", 100, 12, 0, 0.9, 0.7, 1.1, "PER_YEAR", null),
                new ExposurePowerRow("type=DC", "ALL", 40, 12, 0, 0.2, -0.1, 0.5, "PER_TEST", null),
                new ExposurePowerRow(
                    "type=DC",
                    "FOULING",
                    38,
                    2,
                    2,
                    null,
                    null,
                    null,
                    "PER_YEAR",
                    "not identified: there are only 2 such failures; it needs 10")));
    return new FitRows(
        "all",
        1,
        fit,
        rates.ratePrior(),
        rates.rateNodes(),
        rates.rateEffects(),
        rates.exposurePowers(),
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

  /** Seal life, repairs and trends of one type. */
  static FitRows ofType() {
    return new FitRows(
        "type=RP",
        1,
        new FitRow(
            "type=RP", "cut-1", "0:9", Instant.parse("2025-02-01T00:00:00Z"), 2, "00ff", "test"),
        rates("type=RP", 1),
        List.of(),
        List.of(),
        List.of(),
        List.of(
            restrictedMean("component=check1"),
            restrictedMean("type=RP"),
            new SealLifeRow(
                "type=RP component=check1",
                "SEAL_FAILED",
                "TURNBULL",
                "median years until failed",
                null,
                2.0,
                null,
                12,
                12,
                6,
                1,
                4.0,
                null,
                "first seals of known origin; half had failed after 2.0 and not after 3.0 years"),
            new SealLifeRow(
                "type=RP",
                "SEAL_FAILED",
                "Weibull, interval-censored",
                "median, years",
                null,
                null,
                null,
                2,
                1,
                1,
                0,
                4.0,
                null,
                "fewer than 5 failures: no figure")),
        List.of(
            curve("SEAL_FAILED", "TURNBULL", null, 0, 1.0, 1.0),
            curve("SEAL_FAILED", "TURNBULL", null, 366, 1.0, 0.8),
            curve("SEAL_FAILED", "TURNBULL", null, 731, 0.8, 0.8),
            curve("REPLACED_ANY_REASON", "WANG_CHANG", null, 0, 1.0, 1.0),
            curve("REPLACED_ANY_REASON", "WANG_CHANG", null, 1434, 0.5, 0.5),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "FAILED", 0, 0.0, 0.0),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "FAILED", 1434, 0.3, 0.3),
            curve("REPLACED_ANY_REASON", "AALEN_JOHANSEN", "SCHEDULED", 900, 0.2, 0.2)),
        List.of(
            effect(
                0,
                "in words",
                null,
                null,
                null,
                "Had all been cleaned, 31 % (20 to 42) would have failed the next yearly test;"
                    + " had all seals been renewed, 14 % (5 to 24); n = 100 (invented)."),
            effect(
                1,
                "failing the next yearly test, had all been cleaned",
                0.31,
                0.2,
                0.42,
                "invented"),
            effect(
                2,
                "failing the next yearly test, had all seals been renewed",
                0.14,
                0.05,
                0.24,
                "invented"),
            effect(3, "difference, cleaned less renewed", 0.17, 0.03, 0.31, "invented"),
            effect(5, "as it happened, cleaned: not comparable", 0.35, 0.23, 0.48, "raw share"),
            effect(6, "as it happened, seal renewed: not comparable", 0.15, 0.06, 0.3, null)),
        List.of(
            new RepairBalanceRow(
                "all", "ANY", "age of the seal", 4.1, 6.2, -0.62, 5.0, 5.1, -0.02)),
        HandMadeForecasts.drifts(),
        HandMadeForecasts.suddenFailure(),
        HandMadeTrends.trends(),
        HandMadeTrends.years(),
        HandMadeTrends.comparisons(),
        HandMadeTrends.ageing(),
        HandMadeTrends.retests());
  }
}
