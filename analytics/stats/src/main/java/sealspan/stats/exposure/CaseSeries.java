package sealspan.stats.exposure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.regression.Design;
import sealspan.stats.regression.Family;
import sealspan.stats.regression.Observations;
import sealspan.stats.regression.StratifiedFit;
import sealspan.stats.regression.StratifiedRegression;

/**
 * Self-controlled case series: within each unit, outcomes in windows around its exposures are held
 * against those on its other days, so that whatever does not change in a unit cancels (Whitaker,
 * Farrington, Spiessens and Musonda 2006, Statistics in Medicine 25:1768). The total of a unit is
 * taken as given; only units with an outcome tell anything.
 *
 * <p>It takes an outcome as not changing later exposures. Where one does, as where a complaint
 * brings on a flushing, a window before the exposure takes these days out of the comparison.
 *
 * @param windows one ratio for each window, in their order
 * @param outcomes outcomes of units that tell something
 * @param days their watched days
 * @param outside of these outcomes, those outside of all windows
 * @param units units that tell something: with an outcome, and days both in and outside of windows
 */
public record CaseSeries(
    List<WindowRatio> windows, int outcomes, long days, int outside, int units) {

  /** Exact limits need a convolution over outcomes; with more, the profile is as good. */
  private static final int MOST_EXACT = 2000;

  /** Without bands. */
  public static Estimate<CaseSeries> of(
      List<WatchedSpan> units, List<RiskWindow> windows, double level) {
    return of(units, windows, day -> 0, level);
  }

  /**
   * The ratios.
   *
   * @param units the units
   * @param windows windows around each exposure, which must not overlap one another
   * @param band of each day, such as its season, with an effect common to all units; days of a band
   *     without any outcome are left out
   * @param level two-sided level
   */
  public static Estimate<CaseSeries> of(
      List<WatchedSpan> units, List<RiskWindow> windows, IntUnaryOperator band, double level) {
    requireApart(windows);
    SeriesCells cells = SeriesCells.of(units, windows, band).withoutEmptyBands();
    if (cells.outcomes() == 0) {
      return Estimate.notIdentified(
          "no unit has an outcome and days both in and outside of the windows");
    }
    boolean exact =
        windows.size() == 1 && cells.bands().size() == 1 && cells.outcomes() <= MOST_EXACT;
    int outside = cells.outcomesIn(0);
    if (outside == 0 && !exact) {
      return Estimate.notIdentified("every outcome lies in a window, so there is no comparison");
    }
    List<WindowRatio> ratios = new ArrayList<>();
    StratifiedFit fit = null;
    if (outside > 0 && outside < cells.outcomes()) {
      Estimate<StratifiedFit> fitted = fit(cells.withoutEmptyWindows(), windows);
      if (fitted instanceof Estimate.NotIdentified<StratifiedFit> not) {
        return Estimate.notIdentified(not.because());
      }
      fit = fitted.orThrow();
    }
    for (int w = 1; w <= windows.size(); w++) {
      String name = windows.get(w - 1).name();
      int inside = cells.outcomesIn(w);
      double ratio =
          inside == 0
              ? 0
              : outside == 0 ? Double.POSITIVE_INFINITY : StrictMath.exp(fit.coefficient(name));
      Interval interval =
          exact ? ExactWindow.limits(cells, level) : profile(cells, windows, w, level);
      ratios.add(new WindowRatio(name, inside, cells.daysIn(w), ratio, interval));
    }
    return Estimate.of(
        new CaseSeries(ratios, cells.outcomes(), cells.days(), outside, cells.units()));
  }

  private static void requireApart(List<RiskWindow> windows) {
    for (RiskWindow a : windows) {
      for (RiskWindow b : windows) {
        if (a != b && a.firstDay() <= b.lastDay() && b.firstDay() <= a.lastDay()) {
          throw new IllegalArgumentException(
              "the windows " + a.name() + " and " + b.name() + " overlap");
        }
      }
    }
    if (windows.isEmpty()) {
      throw new IllegalArgumentException("there is no window");
    }
  }

  private static Estimate<StratifiedFit> fit(SeriesCells cells, List<RiskWindow> windows) {
    return StratifiedRegression.fit(
        Family.POISSON, observations(cells, windows), cells.unitNumbers());
  }

  private static Interval profile(
      SeriesCells cells, List<RiskWindow> windows, int window, double level) {
    if (cells.daysIn(window) == 0) {
      return new Interval(0, Double.POSITIVE_INFINITY, level);
    }
    Interval log =
        StratifiedRegression.profile(
            Family.POISSON,
            observations(cells, windows),
            cells.unitNumbers(),
            windows.get(window - 1).name(),
            level);
    return new Interval(StrictMath.exp(log.lower()), StrictMath.exp(log.upper()), level);
  }

  private static Observations observations(SeriesCells cells, List<RiskWindow> windows) {
    Design design = Design.ofRows(cells.list().size());
    for (int w = 1; w <= windows.size(); w++) {
      if (cells.daysIn(w) > 0) {
        int number = w;
        design = design.column(windows.get(w - 1).name(), cells.flags(c -> c.window() == number));
      }
    }
    List<Integer> bands = cells.bands();
    for (int band : bands.subList(1, bands.size())) {
      design = design.column("band " + band, cells.flags(c -> c.band() == band));
    }
    return Observations.of(design, cells.numbers(SeriesCells.Cell::outcomes))
        .offset(cells.numbers(c -> StrictMath.log(c.days())));
  }
}
