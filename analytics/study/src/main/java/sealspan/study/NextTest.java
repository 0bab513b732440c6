package sealspan.study;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.OpenExposure;
import sealspan.assembly.ReadingRuns;
import sealspan.assembly.Result;
import sealspan.assembly.TestRound;
import sealspan.stats.rates.HiddenFailures;
import sealspan.table.ExposureRow;
import sealspan.table.ForecastRow;
import sealspan.table.LevelRow;
import sealspan.table.RatePriorRow;
import sealspan.table.ReadingRow;
import sealspan.table.SuddenFailureRow;

/**
 * The forecast of the next test of one assembly: it fails where a reading has drifted below its
 * limit, or by a sudden failure; the two are taken to be independent.
 *
 * @param levels levels of its components
 * @param forecast the forecast; null once it was removed
 */
record NextTest(List<LevelRow> levels, ForecastRow forecast) {
  private static final String SUDDEN = "sudden failure";

  /** The forecast of an assembly. */
  static NextTest of(
      AssemblyHistory history,
      ReadingRuns runs,
      List<ReadingRow> readings,
      List<ExposureRow> exposures,
      LatestFits fits) {
    if (history.service().removedOn() != null) {
      return new NextTest(List.of(), null);
    }
    String stratum = "type=" + history.type();
    Levels levels = new Levels(stratum, readings, runs, fits);
    TestRound basis = OpenExposure.begunBy(history);
    LocalDate dueOn = basis == null ? null : basis.test().when().day().plusYears(1);
    HiddenFailures unit =
        SuddenFailures.unit(exposures, fits.drifts(stratum).gradualFailures(readings));
    SuddenFailureRow sudden = sudden(stratum, fits);
    ForecastRow forecast =
        basis == null || sudden == null
            ? without(history, basis, levels, unit, fits)
            : forecast(history.assemblyId(), basis, dueOn, levels, unit, sudden, fits, stratum);
    return new NextTest(levels.rows(dueOn), forecast);
  }

  private static SuddenFailureRow sudden(String stratum, LatestFits fits) {
    SuddenFailureRow own = fits.suddenFailure(stratum);
    SuddenFailureRow all = fits.suddenFailure("all");
    SuddenFailureRow best = own != null && own.tests() >= Fits.FEWEST_TESTS_OF_A_TYPE ? own : all;
    return best == null || best.meanPerYear() == null ? null : best;
  }

  private static ForecastRow forecast(
      String assemblyId,
      TestRound basis,
      LocalDate dueOn,
      Levels levels,
      HiddenFailures unit,
      SuddenFailureRow sudden,
      LatestFits fits,
      String stratum) {
    LocalDate day = basis.test().when().day();
    DoubleUnaryOperator suddenly = SuddenFailures.probability(sudden, unit);
    double bySudden = suddenly.applyAsDouble(ChronoUnit.DAYS.between(day, dueOn));
    Map<String, Double> byComponent = levels.readingsBelow(dueOn);
    String drivenBy = SUDDEN;
    double most = bySudden;
    for (Map.Entry<String, Double> component : byComponent.entrySet()) {
      if (component.getValue() > most) {
        most = component.getValue();
        drivenBy = component.getKey();
      }
    }
    double byDrift = any(byComponent.values());
    return new ForecastRow(
        assemblyId,
        sudden.stratum(),
        fits.cutId(),
        basis.source().id(),
        day,
        dueOn,
        any(List.of(byDrift, bySudden)),
        byDrift,
        bySudden,
        drivenBy,
        levels.readings(),
        unit.tests(),
        unit.failures(),
        fails(levels, suddenly, day, 0),
        fails(levels, suddenly, day, 6),
        fails(levels, suddenly, day, 24),
        base(stratum, fits, ChronoUnit.DAYS.between(day, dueOn)),
        note(levels, sudden, stratum));
  }

  private static double fails(
      Levels levels, DoubleUnaryOperator suddenly, LocalDate basis, int months) {
    LocalDate day = basis.plusMonths(months);
    double sudden = suddenly.applyAsDouble(ChronoUnit.DAYS.between(basis, day));
    return any(List.of(any(levels.readingsBelow(day).values()), sudden));
  }

  private static double any(Iterable<Double> probabilities) {
    double none = 1;
    for (double p : probabilities) {
      none *= 1 - p;
    }
    return 1 - none;
  }

  /** Probability for any assembly of the type; null where no rate is known. */
  private static Double base(String stratum, LatestFits fits, long days) {
    RatePriorRow own = fits.ratePriors().get(stratum);
    RatePriorRow row =
        own != null && own.tests() >= Fits.FEWEST_TESTS_OF_A_TYPE
            ? own
            : fits.ratePriors().get("all");
    if (row == null || row.commonPerYear() == null) {
      return null;
    }
    double years = days / RatePriors.YEAR_DAYS;
    return row.shape() == null
        ? -StrictMath.expm1(-row.commonPerYear() * years)
        : -StrictMath.expm1(-row.shape() * StrictMath.log1p(years / row.rateYears()));
  }

  private static String note(Levels levels, SuddenFailureRow sudden, String stratum) {
    List<String> notes = new ArrayList<>();
    if (levels.none()) {
      notes.add(
          levels.someWithoutDrift()
              ? "too few readings of its type to tell a drift: sudden failures alone"
              : "no reading since the last action that is held against a least number: sudden"
                  + " failures alone");
    } else if (levels.someWithoutDrift()) {
      notes.add("some of its components have too few readings to tell a drift");
    }
    if (!sudden.stratum().equals(stratum)) {
      notes.add("too few tests of its type: sudden failures of all types");
    }
    return notes.isEmpty() ? null : String.join("; ", notes);
  }

  private static ForecastRow without(
      AssemblyHistory history,
      TestRound basis,
      Levels levels,
      HiddenFailures unit,
      LatestFits fits) {
    LocalDate failedOn = null;
    for (TestRound round : history.rounds()) {
      if (round.result(AssemblyHistory.WHOLE) == Result.FAILED) {
        failedOn = round.test().when().day();
      }
    }
    String why =
        fits.cutId() == null
            ? "nothing has been fitted yet"
            : basis != null
                ? "no rate of sudden failures is known"
                : failedOn != null
                    ? "it has not passed a test since it failed on "
                        + failedOn
                        + " or was worked on after"
                    : "no pass is on record since it was put in";
    return new ForecastRow(
        history.assemblyId(),
        null,
        fits.cutId(),
        basis == null ? null : basis.source().id(),
        basis == null ? null : basis.test().when().day(),
        basis == null ? null : basis.test().when().day().plusYears(1),
        null,
        null,
        null,
        null,
        levels.readings(),
        unit.tests(),
        unit.failures(),
        null,
        null,
        null,
        null,
        why);
  }
}
