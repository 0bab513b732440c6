package sealspan.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.survival.ExponentialFit;
import sealspan.stats.survival.LifeFit;
import sealspan.stats.survival.Lifetime;
import sealspan.stats.survival.LognormalFit;
import sealspan.stats.survival.Turnbull;
import sealspan.stats.survival.TurnbullBand;
import sealspan.stats.survival.WeibullFit;
import sealspan.table.CurveRow;
import sealspan.table.SealLifeRow;

/**
 * How long seals last until they fail. A failure is found at a test: it came after the last day on
 * which the seal held and not after the day on which it was found failed. The curve without a shape
 * shows what the data say; curves with a shape are judged by their distance from it.
 *
 * @param figures the figures
 * @param curves the curve without a shape
 */
record SealFailures(List<SealLifeRow> figures, List<CurveRow> curves) {
  private static final String QUESTION = "SEAL_FAILED";
  private static final String WITHOUT_SHAPE = "TURNBULL";
  private static final String WEIBULL = "WEIBULL_INTERVAL_CENSORED";
  private static final String LOGNORMAL = "LOGNORMAL_INTERVAL_CENSORED";
  private static final String EXPONENTIAL = "EXPONENTIAL_INTERVAL_CENSORED";
  private static final double LEVEL = 0.95;
  private static final int FIVE_YEARS = (int) Math.round(5 * RatePriors.YEAR_DAYS);
  private static final String SHARE_QUANTITY = "share not failed after 5 years";
  private static final String MEDIAN_QUANTITY = "median years until failed";

  /** Fewer failures than this say nothing of a shape, and the mean hangs on the shape. */
  private static final int FEWEST_FAILURES = 5;

  /** The figures and the curve of first seals in a stratum. */
  static SealFailures of(String stratum, FirstSeals seals) {
    List<Lifetime> lives = new ArrayList<>();
    int failed = 0;
    for (FirstSeal first : seals.seals()) {
      Lifetime life = first.untilFailed();
      if (life != null) {
        lives.add(life);
        failed += life.open() ? 0 : 1;
      }
    }
    SealFigures weibull =
        new SealFigures(
            stratum, QUESTION, WEIBULL, lives.size(), lives.size(), failed, seals.leftOut());
    if (failed < FEWEST_FAILURES) {
      String because =
          failed
              + " of "
              + lives.size()
              + " first seals failed; a curve needs at least "
              + FEWEST_FAILURES
              + " failures";
      return new SealFailures(List.of(weibull.missing("years until failed", because)), List.of());
    }
    String basis = seals.basis() + "; failures lie between two tests";
    Turnbull curve = Turnbull.of(lives).orThrow();
    List<SealLifeRow> figures = new ArrayList<>();
    figures.addAll(weibull(weibull, lives, curve, basis));
    figures.addAll(lognormal(weibull.by(LOGNORMAL), lives, curve, basis));
    figures.addAll(exponential(weibull.by(EXPONENTIAL), lives, curve, basis));
    Shapeless shapeless = new Shapeless(weibull.by(WITHOUT_SHAPE), lives, curve, basis);
    figures.addAll(shapeless.figures());
    return new SealFailures(List.copyOf(figures), shapeless.points());
  }

  private static List<SealLifeRow> weibull(
      SealFigures figures, List<Lifetime> lives, Turnbull curve, String basis) {
    if (!(WeibullFit.of(lives) instanceof Estimate.Identified<WeibullFit> identified)) {
      return List.of(figures.missing("years until failed", because(WeibullFit.of(lives))));
    }
    WeibullFit fit = identified.value();
    double longest = fit.longestDay() / RatePriors.YEAR_DAYS;
    String profile = basis + "; profile interval";
    PointEstimate shape = fit.shape(LEVEL);
    List<SealLifeRow> rows = new ArrayList<>();
    rows.add(
        figures.row(
            "shape (above 1: they wear)", shape.value(), shape.interval(), longest, null, profile));
    rows.add(
        figures.of(
            "scale, years (age that 37 % reach)",
            Estimate.of(fit.scaleDays(LEVEL)), RatePriors.YEAR_DAYS, longest, profile));
    rows.add(
        figures.of(
            SHARE_QUANTITY, Estimate.of(fit.survival(FIVE_YEARS, LEVEL)), 1, longest, profile));
    rows.add(
        mean(figures, fit.meanDays(LEVEL), fit.shareOfMeanBeyondLongestDay(), longest, profile));
    rows.addAll(goodness(figures, fit, curve, longest));
    return rows;
  }

  private static List<SealLifeRow> lognormal(
      SealFigures figures, List<Lifetime> lives, Turnbull curve, String basis) {
    if (!(LognormalFit.of(lives) instanceof Estimate.Identified<LognormalFit> identified)) {
      return List.of(figures.missing(MEDIAN_QUANTITY, because(LognormalFit.of(lives))));
    }
    LognormalFit fit = identified.value();
    double longest = fit.longestDay() / RatePriors.YEAR_DAYS;
    String profile = basis + "; profile interval";
    List<SealLifeRow> rows = new ArrayList<>();
    rows.add(
        figures.of(
            MEDIAN_QUANTITY,
            Estimate.of(fit.medianDays(LEVEL)),
            RatePriors.YEAR_DAYS,
            longest,
            profile));
    rows.add(
        figures.of(
            SHARE_QUANTITY, Estimate.of(fit.survival(FIVE_YEARS, LEVEL)), 1, longest, profile));
    rows.add(
        mean(figures, fit.meanDays(LEVEL), fit.shareOfMeanBeyondLongestDay(), longest, profile));
    rows.addAll(goodness(figures, fit, curve, longest));
    return rows;
  }

  private static List<SealLifeRow> exponential(
      SealFigures figures, List<Lifetime> lives, Turnbull curve, String basis) {
    if (!(ExponentialFit.of(lives) instanceof Estimate.Identified<ExponentialFit> identified)) {
      return List.of(figures.missing("mean years until failed", because(ExponentialFit.of(lives))));
    }
    ExponentialFit fit = identified.value();
    double longest = curve.toDay() / RatePriors.YEAR_DAYS;
    List<SealLifeRow> rows = new ArrayList<>();
    rows.add(mean(figures, fit.meanDays(LEVEL), fit.shareBeyond(curve.toDay()), longest, basis));
    rows.addAll(goodness(figures, fit, curve, longest));
    return rows;
  }

  private static SealLifeRow mean(
      SealFigures figures, PointEstimate days, double beyond, double longest, String basis) {
    Interval years =
        new Interval(
            days.interval().lower() / RatePriors.YEAR_DAYS,
            days.interval().upper() / RatePriors.YEAR_DAYS,
            LEVEL);
    return figures.row(
        "mean years until failed",
        days.value() / RatePriors.YEAR_DAYS,
        years,
        longest,
        beyond,
        basis + "; " + Math.round(100 * beyond) + " % of the mean is extrapolated");
  }

  /** How well a curve with a shape fits. */
  private static List<SealLifeRow> goodness(
      SealFigures figures, LifeFit fit, Turnbull curve, double longest) {
    List<SealLifeRow> rows = new ArrayList<>();
    rows.add(
        figures.row(
            "Akaike criterion",
            fit.aic(),
            null,
            longest,
            null,
            "for the same seals the smaller is better; differences below 2 say little"));
    if (curve.distance(fit::shareBeyond) instanceof Estimate.Identified<Turnbull.Distance> d) {
      rows.add(
          figures.row(
              "largest distance from the curve without a shape",
              d.value().share(),
              null,
              longest,
              null,
              "at " + years(d.value().day()) + " years"));
    }
    return rows;
  }

  private static String because(Estimate<?> estimate) {
    return ((Estimate.NotIdentified<?>) estimate).because();
  }

  private static String years(int days) {
    return SealFigures.text(days / RatePriors.YEAR_DAYS);
  }

  /** The curve without a shape, with intervals by drawing seals anew. */
  private static final class Shapeless {
    private final SealFigures figures;
    private final List<Lifetime> lives;
    private final Turnbull curve;
    private final String basis;
    private final int[] days;
    private final TurnbullBand band;

    Shapeless(SealFigures figures, List<Lifetime> lives, Turnbull curve, String basis) {
      this.figures = figures;
      this.lives = lives;
      this.curve = curve;
      String caution = curve.caution();
      this.basis =
          basis
              + "; no shape taken for granted; interval by drawing seals anew"
              + (caution.isEmpty() ? "" : "; " + caution);
      TreeSet<Integer> edges = new TreeSet<>();
      edges.add(curve.fromDay());
      for (Turnbull.Box box : curve.boxes()) {
        edges.add(box.exact() ? box.afterDay() : box.afterDay() + 1);
        edges.add(box.open() ? box.afterDay() : box.notAfterDay());
      }
      edges.removeIf(day -> day > curve.toDay());
      if (FIVE_YEARS >= curve.fromDay() && FIVE_YEARS <= curve.toDay()) {
        edges.add(FIVE_YEARS);
      }
      days = edges.stream().mapToInt(Integer::intValue).toArray();
      band = TurnbullBand.of(lives, days, LEVEL).orThrow();
    }

    /** How many of the ascending days lie before one. */
    private static long below(int[] ascending, int day) {
      int at = Arrays.binarySearch(ascending, day);
      while (at > 0 && ascending[at - 1] == day) {
        at--;
      }
      return at >= 0 ? at : -at - 1;
    }

    List<CurveRow> points() {
      int[] entries = lives.stream().mapToInt(Lifetime::entryDay).sorted().toArray();
      int[] lasts = lives.stream().mapToInt(Lifetime::lowerDay).sorted().toArray();
      int[] founds = lives.stream().mapToInt(Lifetime::upperDay).sorted().toArray();
      List<CurveRow> points = new ArrayList<>();
      for (int i = 0; i < days.length; i++) {
        int day = days[i];
        Turnbull.Known known = curve.at(day).orThrow();
        points.add(
            new CurveRow(
                figures.stratum(),
                figures.question(),
                figures.estimator(),
                null,
                day,
                known.atMost(),
                known.atLeast(),
                band.at(i).lower(),
                band.at(i).upper(),
                below(entries, day) - below(lasts, day),
                below(founds, day + 1) - below(founds, day)));
      }
      return points;
    }

    List<SealLifeRow> figures() {
      return List.of(median(), share());
    }

    private SealLifeRow share() {
      int index = Arrays.binarySearch(days, FIVE_YEARS);
      double longest = curve.toDay() / RatePriors.YEAR_DAYS;
      if (index < 0) {
        return figures.missing(
            SHARE_QUANTITY,
            "the curve is known from "
                + years(curve.fromDay())
                + " to "
                + years(curve.toDay())
                + " years");
      }
      Turnbull.Known known = curve.at(FIVE_YEARS).orThrow();
      boolean fixed = known.atMost() - known.atLeast() < 1e-9;
      return figures.between(
          SHARE_QUANTITY,
          fixed ? known.atMost() : null,
          band.at(index),
          longest,
          fixed
              ? basis
              : basis
                  + String.format(
                      Locale.ROOT,
                      "; the data leave it open between %.3f and %.3f",
                      known.atLeast(),
                      known.atMost()));
    }

    private SealLifeRow median() {
      Turnbull.Box half = curve.median();
      if (half.open()) {
        return figures.missing(
            MEDIAN_QUANTITY, "more than half last beyond " + years(curve.toDay()) + " years");
      }
      double lower = Double.NaN;
      double upper = Double.POSITIVE_INFINITY;
      for (int i = days.length - 1; i >= 0; i--) {
        lower = band.at(i).lower() <= 0.5 ? days[i] / RatePriors.YEAR_DAYS : lower;
        upper = band.at(i).upper() <= 0.5 ? days[i] / RatePriors.YEAR_DAYS : upper;
      }
      return figures.between(
          MEDIAN_QUANTITY,
          half.exact() ? half.afterDay() / RatePriors.YEAR_DAYS : null,
          new Interval(lower, upper, LEVEL),
          curve.toDay() / RatePriors.YEAR_DAYS,
          basis
              + "; half had failed after "
              + years(half.afterDay())
              + " and not after "
              + years(half.notAfterDay())
              + " years");
    }
  }
}
