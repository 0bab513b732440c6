package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.recurrence.EventTimes;
import sealspan.stats.recurrence.PowerLawProcess;
import sealspan.stats.recurrence.TrendTests;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.Regression;
import sealspan.stats.regression.RegressionFit;
import sealspan.table.AssemblyRows;
import sealspan.table.TrendRow;

/** Whether replacements and failures found at tests come ever oftener in a stratum. */
final class Trends {
  /** With more assemblies the regressions take an even part of them, and the row says so. */
  static final int MOST_ASSEMBLIES = 100_000;

  private static final String YEAR = "year";

  private Trends() {}

  /** All figures; at the positions of one component where one is named. */
  static List<TrendRow> of(String stratum, String component, Members members) {
    List<TrendRow> rows = new ArrayList<>(failures(stratum, component, members));
    rows.addAll(replacements(stratum, component, members));
    return rows;
  }

  private static List<TrendRow> failures(String stratum, String component, Members members) {
    int every = (members.size() + MOST_ASSEMBLIES - 1) / MOST_ASSEMBLIES;
    TestedExposures used = TestedExposures.of(component, members, Math.max(1, every));
    TrendFigures figures =
        new TrendFigures(stratum, "FAILURES_AT_TESTS", used.failures(), used.assemblies());
    if (figures.enough()) {
      String basis =
          "complementary log-log of the failures, log of the exposure as offset, variance by"
              + " assembly"
              + part(every);
      figures.ratio(
          "rate ratio, one calendar year later", ratio(used.by(YEAR, used.year())), basis);
      TestedExposures aged = used.ofKnownAge();
      figures.ratio(
          TrendFigures.SAME_AGE,
          ratio(aged.by(YEAR, aged.year(), "age", aged.age())),
          basis + "; assemblies of known age");
      figures.ratio(
          "rate ratio, one year of age more",
          ratio(aged.by(YEAR, aged.age())),
          basis + "; assemblies of known age");
      figures.ratio(
          "rate ratio, one test of the assembly later",
          ratio(used.by(YEAR, used.ordinal())),
          basis);
    }
    return figures.rows("failures found at tests");
  }

  private static List<TrendRow> replacements(String stratum, String component, Members members) {
    List<ReplacementDays> units = new ArrayList<>();
    long events = 0;
    for (AssemblyRows rows : members) {
      ReplacementDays unit = ReplacementDays.of(rows, component);
      if (unit != null) {
        units.add(unit);
        events += unit.days().length;
      }
    }
    TrendFigures figures = new TrendFigures(stratum, "REPLACEMENTS", events, units.size());
    if (figures.enough()) {
      int every = (units.size() + MOST_ASSEMBLIES - 1) / MOST_ASSEMBLIES;
      figures.ratio(
          "rate ratio, one calendar year later",
          ratio(perYear(units, Math.max(1, every))),
          "Poisson regression of days with replacements per assembly and year, variance by"
              + " assembly; each dated half way back to the visit before"
              + part(every));
      List<EventTimes> onCalendar = units.stream().map(ReplacementDays::onCalendar).toList();
      figures.test(
          "Laplace's test, variance by assembly",
          TrendTests.laplaceByUnit(onCalendar),
          "within assemblies; takes nothing but a constant mean rate");
      figures.test(
          "Laplace's test",
          TrendTests.laplace(onCalendar),
          "within assemblies; takes replacements of an assembly as a Poisson process");
      figures.test(
          "MIL-HDBK-189 test (small: rising)",
          TrendTests.handbook(onCalendar),
          "within assemblies; takes replacements of an assembly as a Poisson process");
      List<EventTimes> byAge =
          units.stream()
              .filter(u -> u.origin() != null)
              .map(ReplacementDays::byAge)
              // A record that begins before its unit was put in has no ages to tell.
              .filter(u -> u.start() >= 0)
              .toList();
      List<EventTimes> fromNew = byAge.stream().filter(u -> u.start() == 0).toList();
      figures.test(
          "Lewis and Robinson's test",
          TrendTests.lewisRobinson(fromNew),
          "assemblies watched from new; takes gaps as a renewal process");
      powerLaw(figures, byAge);
    }
    return figures.rows("days with seal replacements");
  }

  private static void powerLaw(TrendFigures figures, List<EventTimes> byAge) {
    String quantity = "power of age that replacements follow (above 1: oftener with age)";
    Estimate<PowerLawProcess> fit = PowerLawProcess.of(byAge);
    if (fit instanceof Estimate.Identified<PowerLawProcess> identified) {
      boolean byUnit = byAge.size() >= 10;
      figures.ratio(
          quantity,
          byUnit
              ? identified.value().shapeByUnit(TrendFigures.LEVEL)
              : Estimate.of(identified.value().shape(TrendFigures.LEVEL)),
          byUnit
              ? "assemblies of known origin; variance by assembly"
              : "assemblies of known origin; takes replacements as a Poisson process");
    } else {
      figures.missing(quantity, ((Estimate.NotIdentified<PowerLawProcess>) fit).because());
    }
  }

  private static String part(int every) {
    return every <= 1 ? "" : "; for speed fitted on every assembly in " + every + " by id";
  }

  /** Replacement days of every assembly and calendar year, as a Poisson regression on the year. */
  private static Estimate<RegressionFit> perYear(List<ReplacementDays> units, int every) {
    GrowingColumns cells = new GrowingColumns(4);
    for (int u = every / 2; u < units.size(); u += every) {
      ReplacementDays unit = units.get(u);
      int last = LocalDate.ofEpochDay(unit.exit()).getYear();
      for (int year = LocalDate.ofEpochDay(unit.entry()).getYear(); year <= last; year++) {
        double from = Math.max(unit.entry(), LocalDate.of(year, 1, 1).toEpochDay());
        double to = Math.min(unit.exit(), LocalDate.of(year + 1, 1, 1).toEpochDay());
        if (to > from) {
          int count = 0;
          for (double day : unit.dated()) {
            count += day > from && day <= to ? 1 : 0;
          }
          double years = (to - from) / RatePriors.YEAR_DAYS;
          cells.add(year - TestedExposures.YEAR_ZERO, count, StrictMath.log(years), u);
        }
      }
    }
    double[] cluster = cells.column(3);
    int[] clusters = new int[cluster.length];
    for (int i = 0; i < clusters.length; i++) {
      clusters[i] = (int) cluster[i];
    }
    Design design = Design.ofRows(cells.rows()).constant().column(YEAR, cells.column(0));
    return Regression.fit(
        Family.POISSON,
        Observations.of(design, cells.column(1)).offset(cells.column(2)).cluster(clusters));
  }

  /** The ratio by which the rate changes for one more of the column {@link #YEAR}. */
  private static Estimate<PointEstimate> ratio(Estimate<RegressionFit> fit) {
    if (!(fit instanceof Estimate.Identified<RegressionFit> identified)) {
      return Estimate.notIdentified(((Estimate.NotIdentified<RegressionFit>) fit).because());
    }
    Estimate<PointEstimate> slope = identified.value().clustered(YEAR, TrendFigures.LEVEL);
    if (!(slope instanceof Estimate.Identified<PointEstimate> found)) {
      return slope;
    }
    PointEstimate point = found.value();
    double ratio = StrictMath.exp(point.value());
    Interval limits = point.interval();
    return limits.lower() < limits.upper()
        ? Estimate.of(
            new PointEstimate(
                ratio,
                ratio * point.standardError(),
                new Interval(
                    StrictMath.exp(limits.lower()),
                    StrictMath.exp(limits.upper()),
                    limits.level())))
        : Estimate.notIdentified("all assemblies went alike, so how they differ was not seen");
  }
}
