package sealspan.study;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.degradation.DriftFit;
import sealspan.stats.degradation.DriftModel;
import sealspan.stats.degradation.ReadingRun;
import sealspan.study.ReadingSeries.Numbered;
import sealspan.table.AssemblyRows;
import sealspan.table.DriftRow;
import sealspan.table.ReadingRow;

/** How the readings of each component of a type drift. */
final class Drifts {
  private static final double YEAR_DAYS = RatePriors.YEAR_DAYS;
  private static final double LEVEL = 0.95;

  private final Map<ReadingSeries, DriftModel> models = new TreeMap<>();

  private Drifts() {}

  /** The drifts of a stratum, by component. */
  static List<DriftRow> of(String stratum, Members members) {
    Map<ReadingSeries, List<ReadingRun>> runs = new TreeMap<>();
    Map<ReadingSeries, Integer> assemblies = new TreeMap<>();
    for (AssemblyRows rows : members) {
      ReadingSeries.of(rows.readings())
          .forEach(
              (series, numbered) -> {
                boolean tells = false;
                List<ReadingRun> own = runs.computeIfAbsent(series, s -> new ArrayList<>());
                for (Numbered each : numbered) {
                  // A single reading tells nothing of a drift.
                  if (each.rows().size() > 1) {
                    own.add(each.run());
                    tells = true;
                  }
                }
                assemblies.merge(series, tells ? 1 : 0, Integer::sum);
              });
    }
    List<DriftRow> rows = new ArrayList<>();
    runs.forEach((series, all) -> rows.add(row(stratum, series, assemblies.get(series), all)));
    return rows;
  }

  private static DriftRow row(
      String stratum, ReadingSeries series, int assemblies, List<ReadingRun> runs) {
    Estimate<DriftFit> estimate = DriftFit.of(runs);
    if (estimate instanceof Estimate.NotIdentified<DriftFit> not) {
      return new DriftRow(
          stratum,
          series.component(),
          series.measure(),
          assemblies,
          runs.size(),
          runs.stream().mapToInt(r -> r.readings().size() - 1).sum(),
          0,
          (int) runs.stream().filter(ReadingRun::failed).count(),
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          null,
          not.because());
    }
    DriftFit fit = estimate.orThrow();
    DriftModel model = fit.model();
    boolean bounded = Double.isFinite(fit.driftError());
    Interval drift = bounded ? fit.driftInterval(LEVEL) : null;
    return new DriftRow(
        stratum,
        series.component(),
        series.measure(),
        assemblies,
        fit.runs(),
        fit.steps(),
        fit.stepsUsed(),
        fit.failures(),
        model.driftPerDay() * YEAR_DAYS,
        bounded ? drift.lower() * YEAR_DAYS : null,
        bounded ? drift.upper() * YEAR_DAYS : null,
        model.driftSdPerDay() * YEAR_DAYS,
        model.volatilityPerRootDay() * Math.sqrt(YEAR_DAYS),
        model.shocksPerDay() * YEAR_DAYS,
        model.unreadableShare(),
        model.errorShare(),
        model.biasShare(),
        bounded ? null : "the readings do not bound the mean drift");
  }

  /** The models of a fit of one type, ready for use; not identified ones are left out. */
  static Drifts models(List<DriftRow> rows) {
    Drifts drifts = new Drifts();
    for (DriftRow row : rows) {
      if (row.driftPerYear() != null) {
        drifts.models.put(
            new ReadingSeries(row.component(), row.measure()),
            new DriftModel(
                row.driftPerYear() / YEAR_DAYS,
                driftSdPerYear(row) / YEAR_DAYS,
                row.wanderPsi() / Math.sqrt(YEAR_DAYS),
                row.suddenPerYear() / YEAR_DAYS,
                row.unreadableShare(),
                row.errorShare(),
                row.biasShare()));
      }
    }
    return drifts;
  }

  /**
   * How far the drift of a unit may lie from the mean that was found: units differ, and the mean
   * itself is not known exactly. Without the second a unit of a type whose units seem all alike
   * would get a drift without any interval.
   */
  private static double driftSdPerYear(DriftRow row) {
    if (row.driftLowerPerYear() == null || row.driftUpperPerYear() == null) {
      return row.driftSdPerYear();
    }
    double error = (row.driftUpperPerYear() - row.driftLowerPerYear()) / (2 * Confidence.z(LEVEL));
    return Math.hypot(row.driftSdPerYear(), error);
  }

  /** The model of a component; null where none is identified. */
  DriftModel model(ReadingSeries series) {
    return models.get(series);
  }

  /**
   * Event ids of the rounds in which nothing failed but readings that had drifted below their
   * limit. A reading counts as drifted where the drift explains it better than a shock does.
   */
  Set<String> gradualFailures(List<ReadingRow> readings) {
    Set<ReadingRow> drifted = new HashSet<>();
    ReadingSeries.of(readings)
        .forEach(
            (series, runs) -> {
              DriftModel model = models.get(series);
              for (Numbered each : runs) {
                if (model != null && each.run().failed() && model.gradualShare(each.run()) >= 0.5) {
                  drifted.add(each.last());
                }
              }
            });
    Set<String> gradual = new HashSet<>();
    drifted.forEach(row -> gradual.add(row.eventId()));
    for (ReadingRow row : readings) {
      if (row.result().equals("FAILED") && !drifted.contains(row)) {
        gradual.remove(row.eventId());
      }
    }
    return gradual;
  }
}
