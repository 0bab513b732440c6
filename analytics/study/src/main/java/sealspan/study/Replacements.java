package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.EventHistory;
import sealspan.stats.recurrence.MeanCumulativeFunction;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;

/**
 * How many seal replacements, for any reason, come up to an age, and so the mean time between them.
 * The unit is the assembly: several seals of one assembly are not independent. Positions whose
 * first seal has an unknown origin are left out and counted.
 *
 * @param figures the figures
 * @param curve the mean number of replacements by age
 */
record Replacements(List<SealLifeRow> figures, List<CurveRow> curve) {
  static final String QUESTION = "REPLACED_ANY_REASON";
  private static final String ESTIMATOR = "MEAN_CUMULATIVE_FUNCTION";
  private static final double LEVEL = 0.95;

  /** Replacements in a stratum; at the positions of one component where one is named. */
  static Replacements of(String stratum, String component, ReplacementHistories all) {
    List<EventHistory> histories = all.histories();
    int replaced = histories.stream().mapToInt(history -> history.eventDays().length).sum();
    Estimate<MeanCumulativeFunction> estimate =
        MeanCumulativeFunction.of(histories, MeanCumulativeFunction.Mark.COUNT);
    SealFigures sample =
        new SealFigures(
            stratum, QUESTION, ESTIMATOR, all.seals(), histories.size(), replaced, all.leftOut());
    String quantity =
        component == null
            ? "years between seal replacements per assembly, all its seals"
            : "years between seal replacements at the position";
    if (!(estimate instanceof Estimate.Identified<MeanCumulativeFunction> identified)) {
      String because = ((Estimate.NotIdentified<MeanCumulativeFunction>) estimate).because();
      return new Replacements(List.of(sample.missing(quantity, because)), List.of());
    }
    MeanCumulativeFunction mcf = identified.value();
    int day = mcf.toDay();
    return new Replacements(
        List.of(
            sample.of(
                quantity,
                mcf.meanTimeBetween(day, LEVEL),
                RatePriors.YEAR_DAYS,
                day / RatePriors.YEAR_DAYS,
                "robust variance; average over the first " + years(day) + " years of age")),
        curve(stratum, mcf));
  }

  private static List<CurveRow> curve(String stratum, MeanCumulativeFunction mcf) {
    List<CurveRow> points = new ArrayList<>();
    int[] days = mcf.days();
    double[] mean = mcf.mean();
    for (int i = 0; i < days.length; i++) {
      PointEstimate at = mcf.at(days[i], LEVEL).orThrow();
      points.add(
          new CurveRow(
              stratum,
              QUESTION,
              ESTIMATOR,
              null,
              days[i],
              mean[i],
              mean[i],
              at.interval().lower(),
              SealFigures.finite(at.interval().upper()),
              mcf.watched()[i],
              mcf.events()[i]));
    }
    return points;
  }

  private static String years(int days) {
    return SealFigures.text(days / RatePriors.YEAR_DAYS);
  }
}
