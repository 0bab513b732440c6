package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.TrendTest;
import sealspan.table.TrendRow;

/** Collects the figures of one question of trend, in order; the first is the verdict. */
final class TrendFigures {
  static final double LEVEL = 0.95;

  /** Fewer events than this say nothing of a trend. */
  static final int FEWEST_EVENTS = 5;

  /** The figure that takes the ageing of the fleet out of a trend. */
  static final String SAME_AGE = "rate ratio, one calendar year later at the same age";

  private final String stratum;
  private final String subject;
  private final long events;
  private final int assemblies;
  private final List<TrendRow> rows = new ArrayList<>();

  TrendFigures(String stratum, String subject, long events, int assemblies) {
    this.stratum = stratum;
    this.subject = subject;
    this.events = events;
    this.assemblies = assemblies;
  }

  /** Whether there are enough events to speak of a trend. */
  boolean enough() {
    return events >= FEWEST_EVENTS;
  }

  /** A figure without a test. */
  void add(
      String quantity, Double figure, Interval interval, Double p, String verdict, String note) {
    rows.add(
        new TrendRow(
            stratum,
            subject,
            rows.size(),
            quantity,
            figure,
            interval == null ? null : SealFigures.finite(interval.lower()),
            interval == null ? null : SealFigures.finite(interval.upper()),
            p,
            verdict,
            events,
            assemblies,
            note));
  }

  void missing(String quantity, String because) {
    add(quantity, null, null, null, "NOT_IDENTIFIED", "not identified: " + because);
  }

  /** A ratio: above 1 it rises. */
  void ratio(String quantity, Estimate<PointEstimate> estimate, String note) {
    if (estimate instanceof Estimate.Identified<PointEstimate> identified) {
      PointEstimate point = identified.value();
      add(quantity, point.value(), point.interval(), null, verdict(point.interval()), note);
    } else {
      missing(quantity, ((Estimate.NotIdentified<PointEstimate>) estimate).because());
    }
  }

  /** A test of a constant rate. */
  void test(String quantity, Estimate<TrendTest> estimate, String note) {
    if (estimate instanceof Estimate.Identified<TrendTest> identified) {
      TrendTest test = identified.value();
      boolean rises = test.risingP() < test.fallingP();
      boolean seen = test.twoSidedP() < 1 - LEVEL;
      add(
          quantity,
          test.statistic(),
          null,
          test.twoSidedP(),
          !seen ? "NO_TREND_SEEN" : rises ? "RISING" : "FALLING",
          note);
    } else {
      missing(quantity, ((Estimate.NotIdentified<TrendTest>) estimate).because());
    }
  }

  static String verdict(Interval ratio) {
    return ratio.lower() > 1 ? "RISING" : ratio.upper() < 1 ? "FALLING" : "NO_TREND_SEEN";
  }

  /** The rows, with the verdict in words before them, taken from the first figure. */
  List<TrendRow> rows(String what) {
    String words;
    String verdict = "NOT_IDENTIFIED";
    if (!enough()) {
      words =
          "Cannot be told: "
              + what
              + " were "
              + events
              + ", and fewer than "
              + FEWEST_EVENTS
              + " say nothing of a trend.";
    } else if (rows.isEmpty() || rows.get(0).figure() == null) {
      words = "Cannot be told: " + (rows.isEmpty() ? "no figure" : rows.get(0).note()) + ".";
    } else {
      TrendRow first = rows.get(0);
      verdict = first.verdict();
      words = words(what, first) + atSameAge();
    }
    List<TrendRow> all = new ArrayList<>();
    all.add(
        new TrendRow(
            stratum,
            subject,
            0,
            "in words",
            null,
            null,
            null,
            null,
            verdict,
            events,
            assemblies,
            words));
    for (TrendRow row : rows) {
      all.add(
          new TrendRow(
              stratum,
              subject,
              row.place() + 1,
              row.quantity(),
              row.figure(),
              row.lower(),
              row.upper(),
              row.p(),
              row.verdict(),
              events,
              assemblies,
              row.note()));
    }
    return all;
  }

  private static String words(String what, TrendRow first) {
    String change =
        percent(first.figure())
            + " a year (95 % interval "
            + percent(first.lower())
            + " to "
            + percent(first.upper())
            + ")";
    return switch (first.verdict()) {
      case "RISING" -> "Getting worse: " + what + " rise by " + change + ".";
      case "FALLING" -> "Getting better: " + what + " change by " + change + ".";
      default -> "Flat as far as can be told: " + what + " change by " + change + ".";
    };
  }

  /** A fleet that grows older gets worse without anything having changed, so that is said too. */
  private String atSameAge() {
    for (TrendRow row : rows) {
      if (row.quantity().equals(SAME_AGE) && row.figure() != null) {
        return " At the same age: "
            + percent(row.figure())
            + " a year ("
            + percent(row.lower())
            + " to "
            + percent(row.upper())
            + ").";
      }
    }
    return "";
  }

  /** A ratio as a change in per cent, such as +4 %; no limit in words. */
  private static String percent(Double ratio) {
    return ratio == null ? "no limit" : String.format(Locale.ROOT, "%+.1f %%", 100 * (ratio - 1));
  }
}
