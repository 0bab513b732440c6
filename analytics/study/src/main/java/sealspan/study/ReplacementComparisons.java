package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.EventHistory;
import sealspan.stats.recurrence.MeanComparison;
import sealspan.stats.recurrence.MeanCumulativeFunction;
import sealspan.stats.recurrence.MeanCumulativeFunction.Mark;
import sealspan.table.ReplacementComparisonRow;

/** Seal replacements of each assembly type against those of all other types, by age. */
final class ReplacementComparisons {
  private static final double LEVEL = 0.95;

  /** A mean is quoted up to the last age at which so many of both groups are watched. */
  private static final int FEWEST_WATCHED = 5;

  private ReplacementComparisons() {}

  /** One row for each type; none where all assemblies are of one type. */
  static List<ReplacementComparisonRow> of(String stratum, ReplacementHistories all) {
    Map<String, List<EventHistory>> byType = new TreeMap<>();
    for (int i = 0; i < all.histories().size(); i++) {
      String type = all.types().get(i);
      if (type != null) {
        byType.computeIfAbsent(type, t -> new ArrayList<>()).add(all.histories().get(i));
      }
    }
    List<ReplacementComparisonRow> rows = new ArrayList<>();
    if (byType.size() > 1) {
      byType.forEach((type, own) -> rows.add(row(stratum, type, own, byType)));
    }
    return rows;
  }

  private static ReplacementComparisonRow row(
      String stratum, String type, List<EventHistory> own, Map<String, List<EventHistory>> all) {
    List<EventHistory> others = new ArrayList<>();
    all.forEach((name, units) -> others.addAll(name.equals(type) ? List.of() : units));
    if (own.size() < FEWEST_WATCHED || others.size() < FEWEST_WATCHED) {
      return missing(
          stratum,
          type,
          own,
          others,
          "a group has fewer than " + FEWEST_WATCHED + " assemblies of known origin");
    }
    Estimate<MeanComparison> compared = MeanComparison.of(own, others, Mark.COUNT);
    if (!(compared instanceof Estimate.Identified<MeanComparison> identified)) {
      return missing(
          stratum,
          type,
          own,
          others,
          ((Estimate.NotIdentified<MeanComparison>) compared).because());
    }
    MeanComparison comparison = identified.value();
    int day = Math.min(comparison.toDay(), Math.min(watchedUntil(own), watchedUntil(others)));
    if (day <= comparison.fromDay()) {
      return missing(stratum, type, own, others, "the groups are watched at different ages");
    }
    return row(stratum, type, own.size(), others.size(), comparison, day);
  }

  private static ReplacementComparisonRow row(
      String stratum, String type, int own, int others, MeanComparison comparison, int day) {
    PointEstimate first = comparison.first().at(day, LEVEL).orThrow();
    PointEstimate second = comparison.second().at(day, LEVEL).orThrow();
    Estimate<PointEstimate> difference = comparison.differenceAt(day, LEVEL);
    PointEstimate found =
        difference instanceof Estimate.Identified<PointEstimate> d ? d.value() : null;
    Double p =
        comparison.equality() instanceof Estimate.Identified<MeanComparison.Equality> e
            ? e.value().twoSidedP()
            : null;
    return new ReplacementComparisonRow(
        stratum,
        "type=" + type,
        day / RatePriors.YEAR_DAYS,
        own,
        events(comparison.first(), day),
        first.value(),
        first.interval().lower(),
        SealFigures.finite(first.interval().upper()),
        others,
        second.value(),
        found == null ? null : found.value(),
        found == null ? null : found.interval().lower(),
        found == null ? null : found.interval().upper(),
        p,
        found == null
            ? "no difference: " + ((Estimate.NotIdentified<PointEstimate>) difference).because()
            : "mean cumulative functions from age "
                + SealFigures.text(comparison.fromDay() / RatePriors.YEAR_DAYS)
                + " on, robust variance; assemblies of known origin");
  }

  private static long events(MeanCumulativeFunction curve, int day) {
    long sum = 0;
    int[] days = curve.days();
    long[] events = curve.events();
    for (int i = 0; i < days.length && days[i] <= day; i++) {
      sum += events[i];
    }
    return sum;
  }

  /** The last day on which at least so many units are watched. */
  private static int watchedUntil(List<EventHistory> units) {
    int[] exits =
        units.stream().mapToInt(u -> u.exitDays()[u.exitDays().length - 1]).sorted().toArray();
    return exits[exits.length - FEWEST_WATCHED];
  }

  private static ReplacementComparisonRow missing(
      String stratum,
      String type,
      List<EventHistory> own,
      List<EventHistory> others,
      String because) {
    long events = own.stream().mapToLong(u -> u.eventDays().length).sum();
    return new ReplacementComparisonRow(
        stratum,
        "type=" + type,
        null,
        own.size(),
        events,
        null,
        null,
        null,
        others.size(),
        null,
        null,
        null,
        null,
        null,
        "not identified: " + because);
  }
}
