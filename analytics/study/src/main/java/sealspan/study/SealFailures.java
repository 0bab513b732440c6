package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.survival.Lifetime;
import sealspan.stats.survival.WeibullFit;
import sealspan.table.AssemblyRows;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

/**
 * How long seals last until they fail. A failure is found at a test: it came after the last day on
 * which the seal held and not after the day on which it was found failed. Only first seals of known
 * origin are used, because later seals of the same position are not independent of them.
 */
final class SealFailures {
  private static final String QUESTION = "SEAL_FAILED";
  private static final String ESTIMATOR = "WEIBULL_INTERVAL_CENSORED";
  private static final double LEVEL = 0.95;

  /** Fewer failures than this say nothing of a shape, and the mean hangs on the shape. */
  private static final int FEWEST_FAILURES = 5;

  private SealFailures() {}

  /** The figures of a component in a stratum. */
  static List<SealLifeRow> of(String stratum, String component, List<AssemblyRows> members) {
    List<Lifetime> lives = new ArrayList<>();
    int leftOut = 0;
    int failed = 0;
    for (AssemblyRows rows : members) {
      for (SealPosition position : SealPosition.of(rows, component)) {
        SealRow first = position.seals().get(0);
        if (!first.originKnown()) {
          leftOut++;
          continue;
        }
        Lifetime life = lifetime(first);
        if (life != null) {
          lives.add(life);
          failed += life.open() ? 0 : 1;
        }
      }
    }
    SealFigures figures =
        new SealFigures(stratum, QUESTION, ESTIMATOR, lives.size(), lives.size(), failed, leftOut);
    if (failed < FEWEST_FAILURES) {
      return List.of(
          figures.missing(
              "years until failed",
              failed
                  + " of "
                  + lives.size()
                  + " first seals failed; a curve needs at least "
                  + FEWEST_FAILURES
                  + " failures"));
    }
    Estimate<WeibullFit> estimate = WeibullFit.of(lives);
    return estimate instanceof Estimate.Identified<WeibullFit> identified
        ? figures(identified.value(), figures)
        : List.of(
            figures.missing(
                "years until failed", ((Estimate.NotIdentified<WeibullFit>) estimate).because()));
  }

  /** What is known of the life of a first seal; null where it was never seen to hold or to fail. */
  private static Lifetime lifetime(SealRow seal) {
    int entry = Math.max(0, SealPosition.days(seal.startDay(), seal.entryDay()));
    int held =
        seal.lastHeldOn() == null
            ? entry
            : Math.max(entry, SealPosition.days(seal.startDay(), seal.lastHeldOn()));
    if (seal.foundFailedOn() == null) {
      return held > entry ? Lifetime.goingOn(entry, held) : null;
    }
    int found = SealPosition.days(seal.startDay(), seal.foundFailedOn());
    return found > held ? Lifetime.endedWithin(entry, held, found) : null;
  }

  private static List<SealLifeRow> figures(WeibullFit fit, SealFigures figures) {
    double longest = fit.longestDay() / RatePriors.YEAR_DAYS;
    double beyond = fit.shareOfMeanBeyondLongestDay();
    String basis = "first seals of known origin; failures lie between two tests; profile interval";
    PointEstimate shape = fit.shape(LEVEL);
    PointEstimate mean = fit.meanDays(LEVEL);
    List<SealLifeRow> rows = new ArrayList<>();
    rows.add(
        figures.row(
            "shape (above 1: they wear)", shape.value(), shape.interval(), longest, null, basis));
    rows.add(
        figures.of(
            "scale, years (age that 37 % reach)",
            Estimate.of(fit.scaleDays(LEVEL)), RatePriors.YEAR_DAYS, longest, basis));
    int fiveYears = (int) Math.round(5 * RatePriors.YEAR_DAYS);
    rows.add(
        figures.of(
            "share not failed after 5 years",
            Estimate.of(fit.survival(fiveYears, LEVEL)),
            1,
            longest,
            basis));
    Interval years =
        new Interval(
            mean.interval().lower() / RatePriors.YEAR_DAYS,
            mean.interval().upper() / RatePriors.YEAR_DAYS,
            LEVEL);
    rows.add(
        figures.row(
            "mean years until failed",
            mean.value() / RatePriors.YEAR_DAYS,
            years,
            longest,
            beyond,
            basis + "; " + Math.round(100 * beyond) + " % of the mean is extrapolated"));
    return rows;
  }
}
