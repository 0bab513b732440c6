package sealspan.answers;

import java.util.List;
import sealspan.table.AgeingRow;
import sealspan.table.ReplacementComparisonRow;
import sealspan.table.RetestRow;
import sealspan.table.TrendRow;
import sealspan.table.YearlyRateRow;

/** Figures of trend and ageing for the small invented utility; all numbers are invented. */
final class HandMadeTrends {
  private HandMadeTrends() {}

  static List<TrendRow> trends() {
    return List.of(
        trend(
            "all",
            "FAILURES_AT_TESTS",
            0,
            "in words",
            null,
            null,
            null,
            null,
            "RISING",
            "Getting worse: failures found at tests rise by +8.0 % a year (95 % interval +3.0 % to"
                + " +13.2 %)."),
        trend(
            "all",
            "FAILURES_AT_TESTS",
            1,
            "rate ratio, one calendar year later",
            1.08,
            1.03,
            1.132,
            null,
            "RISING",
            "invented"),
        trend(
            "all",
            "FAILURES_AT_TESTS",
            2,
            "rate ratio, one year of age more",
            null,
            null,
            null,
            null,
            "NOT_IDENTIFIED",
            "not identified: there is no observation"),
        trend(
            "all",
            "REPLACEMENTS",
            0,
            "in words",
            null,
            null,
            null,
            null,
            "NO_TREND_SEEN",
            "Flat as far as can be told: days with seal replacements change by +1.0 % a year (95 %"
                + " interval -4.0 % to +6.3 %)."),
        trend(
            "all",
            "REPLACEMENTS",
            1,
            "Laplace's test",
            0.4,
            null,
            null,
            0.689,
            "NO_TREND_SEEN",
            "invented"),
        trend(
            "type=RP",
            "FAILURES_AT_TESTS",
            0,
            "in words",
            null,
            null,
            null,
            null,
            "NOT_IDENTIFIED",
            "Cannot be told: failures found at tests were 2, and fewer than 5 say nothing of a"
                + " trend."));
  }

  private static TrendRow trend(
      String stratum,
      String subject,
      int place,
      String quantity,
      Double figure,
      Double lower,
      Double upper,
      Double p,
      String verdict,
      String note) {
    return new TrendRow(
        stratum, subject, place, quantity, figure, lower, upper, p, verdict, 40, 30, note);
  }

  static List<YearlyRateRow> years() {
    return List.of(
        new YearlyRateRow(
            "all", 2023, 30, 2, 10_950, 0.0690, 0.0083, 0.2463, 1, 10_957, 0.0333, 0.0008, 0.1857),
        new YearlyRateRow("all", 2024, 30, 0, 10_950, 0.0, 0.0, 0.1230, 0, 0, null, null, null));
  }

  static List<ReplacementComparisonRow> comparisons() {
    return List.of(
        new ReplacementComparisonRow(
            "component=check1",
            "type=RP",
            4.0,
            12,
            6,
            0.5,
            0.25,
            1.0,
            18,
            0.2,
            0.3,
            0.02,
            0.58,
            0.035,
            "invented"),
        new ReplacementComparisonRow(
            "component=check1",
            "type=SVB",
            null,
            2,
            0,
            null,
            null,
            null,
            28,
            null,
            null,
            null,
            null,
            null,
            "not identified: a group has fewer than 5 assemblies of known origin"));
  }

  static List<AgeingRow> ageing() {
    return List.of(
        new AgeingRow(
            "component=check1",
            "KIJIMA_I",
            false,
            900,
            900,
            120,
            14,
            1.7,
            1.4,
            2.0,
            12.0,
            10.5,
            14.1,
            0.71,
            0.4,
            0.9,
            0.1,
            0.02,
            0.4,
            0.2,
            -400.5,
            811.0,
            4,
            4,
            true,
            "invented"),
        new AgeingRow(
            "component=check1",
            "KIJIMA_II",
            true,
            900,
            900,
            120,
            14,
            1.8,
            1.5,
            2.1,
            11.8,
            10.3,
            13.9,
            0.62,
            0.3,
            0.86,
            0.08,
            0.01,
            0.35,
            0.0,
            -399.0,
            806.0,
            4,
            4,
            true,
            "invented"),
        new AgeingRow(
            "type=RP component=check1",
            "KIJIMA_II",
            false,
            2,
            1,
            2,
            1,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            false,
            "cannot separate clean from replace through ageing; not identified: 2 failures of 2"
                + " components of known origin, and at least 5 are needed"));
  }

  static List<RetestRow> retests() {
    return List.of(
        new RetestRow("component=check1", "CLEANED", 60, 5, 0.0833, 0.0276, 0.1839),
        new RetestRow("component=check1", "SEAL_RENEWED", 0, 0, null, null, null),
        new RetestRow("type=RP component=check1", "CLEANED", 1, 0, 0.0, 0.0, 0.975));
  }
}
