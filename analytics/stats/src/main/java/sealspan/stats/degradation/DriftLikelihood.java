package sealspan.stats.degradation;

import java.util.List;

/** The log-likelihood of a drift model: the sum over the readings of all runs but the first. */
final class DriftLikelihood {
  private final GaugedReading[][] runs;
  private final double unreadableShare;
  private final LevelFilter filter = new LevelFilter();

  DriftLikelihood(List<ReadingRun> runs, double unreadableShare) {
    this.runs =
        runs.stream()
            .map(run -> run.readings().toArray(GaugedReading[]::new))
            .toArray(GaugedReading[][]::new);
    this.unreadableShare = unreadableShare;
  }

  /** Where the likelihood is looked at; variances, and rates a day. */
  record Place(
      double drift,
      double driftVariance,
      double volatilitySquared,
      double shocks,
      double errorShare) {
    Place moved(double by) {
      return new Place(drift + by, driftVariance, volatilitySquared, shocks, errorShare);
    }
  }

  double at(Place place) {
    double sum = 0;
    for (GaugedReading[] run : runs) {
      sum += of(run, place);
    }
    return sum;
  }

  /** The runs. */
  List<GaugedReading[]> runs() {
    return List.of(runs);
  }

  /** The log-likelihood of one run. */
  double of(GaugedReading[] run, Place place) {
    double sum = 0;
    filter.begin(place.drift, place.driftVariance);
    for (int i = 0; i < run.length; i++) {
      GaugedReading reading = run[i];
      int days = i == 0 ? 0 : reading.day() - run[i - 1].day();
      filter.advance(days, place.volatilitySquared);
      if (i == 0 || !run[i - 1].gaugePeriod().equals(reading.gaugePeriod())) {
        filter.newGauge(place.errorShare * reading.error().biasVariance());
      }
      double own = reading.ownVariance(place.errorShare);
      if (filter.known()) {
        sum +=
            Innovation.log(filter, reading, own, place.shocks * Math.max(1, days), unreadableShare);
      }
      if (i < run.length - 1) {
        filter.take(reading.value(), own);
      }
    }
    return sum;
  }
}
