package sealspan.study;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.DriftRow;
import sealspan.table.FitRows;
import sealspan.table.RatePriorRow;
import sealspan.table.SuddenFailureRow;

/**
 * What the last fit found, made ready for scoring single assemblies: prepared once, read for each
 * assembly. Not safe for several threads.
 */
public final class LatestFits {
  private final Map<String, Drifts> drifts = new TreeMap<>();
  private final Map<String, List<DriftRow>> driftRows = new TreeMap<>();
  private final Map<String, SuddenFailureRow> suddenFailures = new TreeMap<>();
  private final Map<String, RatePriorRow> ratePriors = new TreeMap<>();
  private String cutId;
  private RateModel rateModel;

  private LatestFits() {}

  /** Before the first fit. */
  public static LatestFits none() {
    return new LatestFits();
  }

  /** The fits of one cut, one per stratum, in any order; curves are not needed. */
  public static LatestFits of(Collection<FitRows> fits) {
    LatestFits latest = new LatestFits();
    for (FitRows fit : fits) {
      if (fit.stratum().equals("all") && fit.ratePrior() != null) {
        latest.rateModel = RateModel.read(fit);
      }
      if (fit.ratePrior() != null) {
        latest.ratePriors.put(fit.stratum(), fit.ratePrior());
      }
      if (!fit.drifts().isEmpty()) {
        latest.drifts.put(fit.stratum(), Drifts.models(fit.drifts()));
        latest.driftRows.put(fit.stratum(), fit.drifts());
      }
      if (fit.suddenFailure() != null) {
        latest.suddenFailures.put(fit.stratum(), fit.suddenFailure());
      }
      if (fit.fit() != null) {
        latest.cutId = fit.fit().cutId();
      }
    }
    return latest;
  }

  /** The rates of each stratum of whole assemblies. */
  Map<String, RatePriorRow> ratePriors() {
    return ratePriors;
  }

  /** What the fit says of rates; null before the first fit. */
  RateModel rateModel() {
    return rateModel;
  }

  /** How exposures count; before the first fit, as they are. */
  ExposureScale exposureScale() {
    return rateModel == null ? ExposureScale.read(List.of()) : rateModel.scale();
  }

  /** The drift models of a stratum; without any where it has none. */
  Drifts drifts(String stratum) {
    return drifts.getOrDefault(stratum, Drifts.models(List.of()));
  }

  /** Why a component of a stratum has no drift model; null where it has one or was not fitted. */
  String whyNoDrift(String stratum, ReadingSeries series) {
    for (DriftRow row : driftRows.getOrDefault(stratum, List.of())) {
      if (row.component().equals(series.component()) && row.measure().equals(series.measure())) {
        return row.driftPerYear() == null ? row.note() : null;
      }
    }
    return null;
  }

  /** Sudden failures of a stratum; null where not fitted. */
  SuddenFailureRow suddenFailure(String stratum) {
    return suddenFailures.get(stratum);
  }

  /** Id of the cut; null before the first fit. */
  String cutId() {
    return cutId;
  }
}
