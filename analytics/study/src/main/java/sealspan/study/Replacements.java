package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.EventHistory;
import sealspan.stats.recurrence.MeanCumulativeFunction;
import sealspan.table.AssemblyRows;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

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
  static Replacements of(String stratum, String component, List<AssemblyRows> members) {
    List<EventHistory> histories = new ArrayList<>();
    int leftOut = 0;
    int seals = 0;
    int replaced = 0;
    for (AssemblyRows rows : members) {
      List<SealPosition> watched = new ArrayList<>();
      for (SealPosition position : SealPosition.of(rows, component)) {
        if (position.originKnown()) {
          watched.add(position);
        } else {
          leftOut += position.seals().size();
        }
      }
      EventHistory history = watched.isEmpty() ? null : history(watched);
      if (history != null) {
        seals += watched.stream().mapToInt(p -> p.seals().size()).sum();
        replaced += history.eventDays().length;
        histories.add(history);
      }
    }
    Estimate<MeanCumulativeFunction> estimate =
        MeanCumulativeFunction.of(histories, MeanCumulativeFunction.Mark.COUNT);
    SealFigures sample =
        new SealFigures(stratum, QUESTION, ESTIMATOR, seals, histories.size(), replaced, leftOut);
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

  /** The positions of known origin of one assembly; null where there is none to watch for a day. */
  static EventHistory historyFromNew(AssemblyRows rows, String component) {
    List<SealPosition> watched =
        SealPosition.of(rows, component).stream().filter(SealPosition::originKnown).toList();
    return watched.isEmpty() ? null : history(watched);
  }

  /** An assembly since its first seal was new; null where it was not watched for a day. */
  private static EventHistory history(List<SealPosition> positions) {
    SealRow first = positions.get(0).seals().get(0);
    LocalDate origin = first.startDay();
    LocalDate entry = first.entryDay();
    LocalDate exit = first.endDay();
    List<LocalDate> events = new ArrayList<>();
    for (SealPosition position : positions) {
      for (SealRow seal : position.seals()) {
        exit = seal.endDay().isAfter(exit) ? seal.endDay() : exit;
        if (SealPosition.replaced(seal)) {
          events.add(seal.endDay());
        }
      }
    }
    int entryAge = SealPosition.days(origin, entry);
    int exitAge = SealPosition.days(origin, exit);
    int[] days =
        events.stream()
            .mapToInt(day -> SealPosition.days(origin, day))
            .filter(day -> day > entryAge)
            .sorted()
            .toArray();
    return exitAge > entryAge ? EventHistory.watched(entryAge, exitAge, days) : null;
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
