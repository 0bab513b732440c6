package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.survival.Median;
import sealspan.stats.survival.SurvivalCurve;
import sealspan.stats.survival.UnitGaps;
import sealspan.stats.survival.WangChang;
import sealspan.table.AssemblyRows;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

/**
 * How long the seals of one component last, as two questions that are never mixed: until replaced
 * for any reason (exact days), and until the seal failed (known only to lie between two tests).
 *
 * @param figures the figures
 * @param curves the curves
 */
record SealLives(List<SealLifeRow> figures, List<CurveRow> curves) {
  private static final String UNTIL_REPLACED = "WANG_CHANG";
  private static final double LEVEL = 0.95;
  private static final int MARK_YEARS = 5;

  /** The life of the seals of a component in a stratum. */
  static SealLives of(String stratum, String component, Members members) {
    List<UnitGaps> units = new ArrayList<>();
    int seals = 0;
    int replaced = 0;
    int leftOut = 0;
    List<FirstSeal> firstSeals = new ArrayList<>();
    int originsUnknown = 0;
    int later = 0;
    for (AssemblyRows rows : members) {
      for (SealPosition position : SealPosition.of(rows, component)) {
        if (position.originKnown()) {
          firstSeals.add(FirstSeal.of(position.seals().get(0)));
          later += position.seals().size() - 1;
        } else {
          originsUnknown++;
        }
        UnitGaps gaps = gaps(position);
        if (gaps == null) {
          leftOut += position.seals().size();
        } else {
          units.add(gaps);
          seals += position.seals().size();
          replaced += gaps.completeDays().length;
        }
      }
    }
    List<SealLifeRow> figures = new ArrayList<>();
    List<CurveRow> curves = new ArrayList<>();
    SealFigures until =
        new SealFigures(
            stratum, Replacements.QUESTION, UNTIL_REPLACED, seals, units.size(), replaced, leftOut);
    Estimate<WangChang> estimate = WangChang.of(units);
    if (estimate instanceof Estimate.Identified<WangChang> identified) {
      untilReplaced(identified.value(), until, figures, curves);
    } else {
      figures.add(
          until.missing(
              "median years until replaced",
              ((Estimate.NotIdentified<WangChang>) estimate).because()));
    }
    FirstSeals first = new FirstSeals(firstSeals, originsUnknown, later);
    SealFailures failures = SealFailures.of(stratum, first);
    ReplacementReasons reasons = ReplacementReasons.of(stratum, first);
    figures.addAll(failures.figures());
    figures.addAll(reasons.figures());
    curves.addAll(failures.curves());
    curves.addAll(reasons.curves());
    return new SealLives(List.copyOf(figures), List.copyOf(curves));
  }

  /** The gaps of a position that was watched since its first seal was new; null otherwise. */
  private static UnitGaps gaps(SealPosition position) {
    SealRow first = position.seals().get(0);
    if (!first.originKnown() || first.entryDay().isAfter(first.startDay())) {
      return null;
    }
    List<Integer> complete = new ArrayList<>();
    int open = 0;
    for (SealRow seal : position.seals()) {
      int days = SealPosition.days(seal.startDay(), seal.endDay());
      if (SealPosition.replaced(seal) && days > 0) {
        complete.add(days);
      } else if (!SealPosition.replaced(seal)) {
        open = Math.max(0, days);
      }
    }
    return new UnitGaps(complete.stream().mapToInt(Integer::intValue).toArray(), open);
  }

  private static void untilReplaced(
      WangChang life, SealFigures until, List<SealLifeRow> figures, List<CurveRow> curves) {
    SurvivalCurve curve = life.curve();
    double longest = curve.toDay() / RatePriors.YEAR_DAYS;
    String basis = "all gaps of one position share its weight; robust variance";
    Estimate<Median> median = curve.median(LEVEL);
    figures.add(
        median instanceof Estimate.Identified<Median> m
            ? until.row(
                "median years until replaced",
                m.value().day() / RatePriors.YEAR_DAYS,
                perYear(m.value().interval()),
                longest,
                null,
                basis)
            : until.missing(
                "median years until replaced",
                ((Estimate.NotIdentified<Median>) median).because()));
    int mark = (int) Math.round(MARK_YEARS * RatePriors.YEAR_DAYS);
    figures.add(
        until.of(
            "share not replaced after " + MARK_YEARS + " years",
            curve.at(mark, LEVEL),
            1,
            longest,
            basis));
    figures.add(
        until.of(
            "mean years until replaced, within the first " + SealFigures.text(longest) + " years",
            life.restrictedMean(curve.toDay(), LEVEL),
            RatePriors.YEAR_DAYS,
            longest,
            basis));
    curves.addAll(points(until, null, curve));
  }

  /** The steps of a curve, its start and the last day on which it is known. */
  static List<CurveRow> points(SealFigures sample, String reason, SurvivalCurve curve) {
    int[] days = curve.days();
    List<CurveRow> points = new ArrayList<>();
    points.add(point(sample, reason, curve, curve.fromDay(), -1));
    for (int i = 0; i < days.length; i++) {
      points.add(point(sample, reason, curve, days[i], i));
    }
    if (days.length == 0 || days[days.length - 1] < curve.toDay()) {
      points.add(point(sample, reason, curve, curve.toDay(), -1));
    }
    return points;
  }

  private static CurveRow point(
      SealFigures sample, String reason, SurvivalCurve curve, int day, int step) {
    PointEstimate at = curve.at(day, LEVEL).orThrow();
    return sample.point(
        reason,
        day,
        at,
        step < 0 ? 0 : Math.round(curve.atRisk()[step]),
        step < 0 ? 0 : Math.round(curve.ended()[step]));
  }

  private static Interval perYear(Interval days) {
    return new Interval(
        days.lower() / RatePriors.YEAR_DAYS, days.upper() / RatePriors.YEAR_DAYS, days.level());
  }
}
