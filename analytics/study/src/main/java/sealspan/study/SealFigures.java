package sealspan.study;

import java.util.Locale;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;

/**
 * Makes the rows of figures that share their sample.
 *
 * @param stratum the stratum
 * @param question which of the two questions of seal life
 * @param estimator how the figures are made
 * @param seals seals used
 * @param assemblies assemblies that they belong to
 * @param endings replacements or failures among them
 * @param leftOut seals left out because their origin is unknown
 */
record SealFigures(
    String stratum,
    String question,
    String estimator,
    int seals,
    int assemblies,
    int endings,
    int leftOut) {

  /** A number as short text, one decimal. */
  static String text(double number) {
    return String.format(Locale.ROOT, "%.1f", number);
  }

  /** The number, or null where it has no end. */
  static Double finite(double number) {
    return Double.isFinite(number) ? number : null;
  }

  /** A figure; without an interval where there is none. */
  SealLifeRow row(
      String quantity,
      double figure,
      Interval interval,
      double longestYears,
      Double extrapolatedShare,
      String note) {
    return new SealLifeRow(
        stratum,
        question,
        estimator,
        quantity,
        figure,
        interval == null ? null : finite(interval.lower()),
        interval == null ? null : finite(interval.upper()),
        seals,
        assemblies,
        endings,
        leftOut,
        longestYears,
        extrapolatedShare,
        note);
  }

  /**
   * A point of a curve that is known there.
   *
   * @param reason what the endings are of; null for all
   * @param day age, days
   * @param atRisk units at risk at a step; 0 where there is none
   * @param ended units that ended there
   */
  CurveRow point(String reason, int day, PointEstimate at, long atRisk, long ended) {
    return new CurveRow(
        stratum,
        question,
        estimator,
        reason,
        day,
        at.value(),
        at.value(),
        at.interval().lower(),
        at.interval().upper(),
        atRisk,
        ended);
  }

  /** The same sample by another estimator. */
  SealFigures by(String other) {
    return new SealFigures(stratum, question, other, seals, assemblies, endings, leftOut);
  }

  /** A figure that the data may fix only to within an interval: then it is null. */
  SealLifeRow between(
      String quantity, Double figure, Interval interval, double longestYears, String note) {
    return new SealLifeRow(
        stratum,
        question,
        estimator,
        quantity,
        figure,
        finite(interval.lower()),
        finite(interval.upper()),
        seals,
        assemblies,
        endings,
        leftOut,
        longestYears,
        null,
        note);
  }

  /** A figure that the data do not give, and why. */
  SealLifeRow missing(String quantity, String because) {
    return new SealLifeRow(
        stratum,
        question,
        estimator,
        quantity,
        null,
        null,
        null,
        seals,
        assemblies,
        endings,
        leftOut,
        null,
        null,
        "not identified: " + because);
  }

  /**
   * A figure from an estimate in days or as a share. An interval without width claims a certainty
   * that the data do not have: without an ending the figure is only how long was watched, and where
   * all units went alike their spread was not seen.
   *
   * @param unitDays days that make one unit of the figure; 1 for a share
   */
  SealLifeRow of(
      String quantity,
      Estimate<PointEstimate> estimate,
      double unitDays,
      double longestYears,
      String note) {
    if (!(estimate instanceof Estimate.Identified<PointEstimate> identified)) {
      return missing(quantity, ((Estimate.NotIdentified<PointEstimate>) estimate).because());
    }
    PointEstimate point = identified.value();
    Interval interval = point.interval();
    if (interval.lower() < interval.upper()) {
      Interval scaled =
          new Interval(interval.lower() / unitDays, interval.upper() / unitDays, interval.level());
      return row(quantity, point.value() / unitDays, scaled, longestYears, null, note);
    }
    return endings == 0
        ? missing(quantity, "none of the " + seals + " seals was seen to end")
        : row(
            quantity,
            point.value() / unitDays,
            null,
            longestYears,
            null,
            note + "; no interval: all units went alike, so how they differ was not seen");
  }
}
