package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sealspan.assembly.ReadingRuns;
import sealspan.stats.Interval;
import sealspan.stats.degradation.DriftModel;
import sealspan.stats.degradation.GaugeError;
import sealspan.stats.degradation.LevelForecast;
import sealspan.stats.degradation.LevelState;
import sealspan.study.ReadingSeries.Numbered;
import sealspan.table.LevelRow;
import sealspan.table.ReadingRow;

/** The levels of the components of one assembly now, as far as their readings still count. */
final class Levels {
  private static final double YEAR_DAYS = RatePriors.YEAR_DAYS;
  private static final double LEVEL = 0.95;

  private final String stratum;
  private final LatestFits fits;
  private final Map<ReadingSeries, Numbered> open = new LinkedHashMap<>();
  private final Map<ReadingSeries, LevelState> states = new LinkedHashMap<>();

  /** The levels of an assembly of a stratum, by its readings. */
  Levels(String stratum, List<ReadingRow> readings, ReadingRuns runs, LatestFits fits) {
    this.stratum = stratum;
    this.fits = fits;
    ReadingSeries.of(readings)
        .forEach(
            (series, numbered) -> {
              Numbered last = numbered.get(numbered.size() - 1);
              Integer going = runs.openRun(series.component(), series.measure());
              if (going != null && going == last.number()) {
                open.put(series, last);
                DriftModel model = fits.drifts(stratum).model(series);
                if (model != null) {
                  states.put(series, model.follow(last.run()));
                }
              }
            });
  }

  /** Readings that they rest on. */
  int readings() {
    return open.values().stream().mapToInt(run -> run.rows().size()).sum();
  }

  /** Components of which readings count, but no drift is known. */
  boolean someWithoutDrift() {
    return states.size() < open.size();
  }

  /** Whether no component has a level that can be carried forward. */
  boolean none() {
    return states.isEmpty();
  }

  /** Probability of each component that its reading is below the limit on a day. */
  Map<String, Double> readingsBelow(LocalDate day) {
    Map<String, Double> below = new LinkedHashMap<>();
    states.forEach(
        (series, state) -> {
          ReadingRow last = open.get(series).last();
          double p =
              ahead(series, state, day)
                  .probabilityReadingBelow(last.limitPsi(), error(series, last), last.stepPsi());
          below.merge(series.component(), p, (a, b) -> 1 - (1 - a) * (1 - b));
        });
    return below;
  }

  private GaugeError error(ReadingSeries series, ReadingRow last) {
    DriftModel model = fits.drifts(stratum).model(series);
    return ReadingSeries.error(last).times(model.errorShare(), model.biasShare());
  }

  private LevelForecast ahead(ReadingSeries series, LevelState state, LocalDate day) {
    int days = (int) Math.max(0, day.toEpochDay() - state.day());
    return state.ahead(days, fits.drifts(stratum).model(series));
  }

  /**
   * The rows.
   *
   * @param dueOn day for which the probabilities are given; null for none
   */
  List<LevelRow> rows(LocalDate dueOn) {
    List<LevelRow> rows = new ArrayList<>(open.size());
    open.forEach(
        (series, run) ->
            rows.add(
                states.containsKey(series)
                    ? row(series, run, states.get(series), dueOn)
                    : withoutDrift(series, run)));
    return rows;
  }

  private LevelRow row(ReadingSeries series, Numbered run, LevelState state, LocalDate dueOn) {
    ReadingRow last = run.last();
    Interval level = state.levelInterval(LEVEL);
    Interval drift = state.driftInterval(LEVEL);
    LevelForecast then = dueOn == null ? null : ahead(series, state, dueOn);
    return new LevelRow(
        last.assemblyId(),
        series.component(),
        series.measure(),
        last.day(),
        run.rows().size(),
        last.psi(),
        last.limitPsi(),
        state.level(),
        level.lower(),
        level.upper(),
        state.driftPerDay() * YEAR_DAYS,
        drift.lower() * YEAR_DAYS,
        drift.upper() * YEAR_DAYS,
        then == null
            ? null
            : then.probabilityReadingBelow(last.limitPsi(), error(series, last), last.stepPsi()),
        then == null ? null : then.probabilityBelow(last.limitPsi()),
        stratum,
        run.rows().size() == 1
            ? "one reading since the last action: its drift is that of its type"
            : null);
  }

  private LevelRow withoutDrift(ReadingSeries series, Numbered run) {
    ReadingRow last = run.last();
    String why = fits.whyNoDrift(stratum, series);
    return new LevelRow(
        last.assemblyId(),
        series.component(),
        series.measure(),
        last.day(),
        run.rows().size(),
        last.psi(),
        last.limitPsi(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        why == null ? "no drift of its type is fitted yet" : "no drift of its type: " + why);
  }
}
