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

  double at(double drift, double driftVariance, double volatilitySquared, double shocks) {
    double sum = 0;
    for (GaugedReading[] run : runs) {
      sum += of(run, drift, driftVariance, volatilitySquared, shocks);
    }
    return sum;
  }

  /** The runs. */
  List<GaugedReading[]> runs() {
    return List.of(runs);
  }

  /** The log-likelihood of one run. */
  double of(
      GaugedReading[] run,
      double drift,
      double driftVariance,
      double volatilitySquared,
      double shocks) {
    double sum = 0;
    filter.begin(drift, driftVariance);
    for (int i = 0; i < run.length; i++) {
      GaugedReading reading = run[i];
      int days = i == 0 ? 0 : reading.day() - run[i - 1].day();
      filter.advance(days, volatilitySquared);
      if (i == 0 || !run[i - 1].gaugePeriod().equals(reading.gaugePeriod())) {
        filter.newGauge(reading.error().biasVariance());
      }
      if (filter.known()) {
        sum += Innovation.log(filter, reading, shocks * Math.max(1, days), unreadableShare);
      }
      if (i < run.length - 1) {
        filter.take(reading.value(), reading.ownVariance());
      }
    }
    return sum;
  }
}
