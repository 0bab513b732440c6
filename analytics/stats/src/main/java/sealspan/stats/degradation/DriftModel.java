package sealspan.stats.degradation;

/**
 * How the levels of the components of one kind drift, and how often they fail at once. The level of
 * a unit moves by its own drift, drawn for every run from a normal distribution, and wanders about
 * it. A shock (debris, damage) makes it fail at once, whatever its level.
 *
 * @param driftPerDay mean drift, a day
 * @param driftSdPerDay standard deviation of the drift between runs, a day, at least 0
 * @param volatilityPerRootDay standard deviation of the wander after a day, at least 0
 * @param shocksPerDay rate of shocks, a day, at least 0
 * @param unreadableShare of the shocks, those that leave nothing to read, between 0 and 1
 * @param errorShare share of the variance of the gauges' error that the readings show, above 0 and
 *     at most 1: a gauge may be better than its limit
 * @param biasShare the same of the error that a gauge has between two calibrations; 1 where too few
 *     gauges and calibrations tell of it
 */
public record DriftModel(
    double driftPerDay,
    double driftSdPerDay,
    double volatilityPerRootDay,
    double shocksPerDay,
    double unreadableShare,
    double errorShare,
    double biasShare) {

  /** A model with gauges that are just as good as their error says. */
  public DriftModel(
      double driftPerDay,
      double driftSdPerDay,
      double volatilityPerRootDay,
      double shocksPerDay,
      double unreadableShare) {
    this(driftPerDay, driftSdPerDay, volatilityPerRootDay, shocksPerDay, unreadableShare, 1, 1);
  }

  public DriftModel {
    boolean finite =
        Double.isFinite(driftPerDay + driftSdPerDay + volatilityPerRootDay + shocksPerDay);
    if (!finite
        || !(driftSdPerDay >= 0 && volatilityPerRootDay >= 0 && shocksPerDay >= 0)
        || !(unreadableShare > 0 && unreadableShare < 1)
        || !(errorShare > 0 && errorShare <= 1)
        || !(biasShare > 0 && biasShare <= 1)) {
      throw new IllegalArgumentException(
          "no model of a drift: "
              + driftPerDay
              + ", "
              + driftSdPerDay
              + ", "
              + volatilityPerRootDay
              + ", "
              + shocksPerDay
              + ", "
              + unreadableShare
              + ", "
              + errorShare
              + ", "
              + biasShare);
    }
  }

  /**
   * What the readings of a run tell of its level and drift on the day of the last one. Null where
   * no number was read, so that nothing is known of the level. A failed reading counts as one of
   * the drift; see {@link #gradualShare} for whether it was.
   */
  public LevelState follow(ReadingRun run) {
    LevelFilter filter = new LevelFilter();
    filter.begin(driftPerDay, driftSdPerDay * driftSdPerDay);
    GaugedReading before = null;
    for (GaugedReading reading : run.readings()) {
      step(filter, before, reading);
      if (reading.seen() == GaugedReading.Seen.MEASURED) {
        filter.take(reading.value(), reading.ownVariance(errorShare));
      } else {
        filter.takeAtMost(reading.value(), reading.ownVariance(errorShare));
      }
      before = reading;
    }
    return filter.known() ? filter.state(run.last().day()) : null;
  }

  private void step(LevelFilter filter, GaugedReading before, GaugedReading reading) {
    if (before != null) {
      filter.advance(reading.day() - before.day(), volatilityPerRootDay * volatilityPerRootDay);
    }
    if (before == null || !before.gaugePeriod().equals(reading.gaugePeriod())) {
      filter.newGauge(biasShare * reading.error().biasVariance());
    }
  }

  /**
   * Probability that the failed reading that ends a run came about by drift rather than by a shock;
   * 0 where the run has no number before it.
   *
   * @param run a run that failed
   */
  public double gradualShare(ReadingRun run) {
    if (!run.failed()) {
      throw new IllegalArgumentException("the run did not fail");
    }
    int size = run.readings().size();
    if (size < 2) {
      return 0;
    }
    LevelFilter filter = new LevelFilter();
    filter.begin(driftPerDay, driftSdPerDay * driftSdPerDay);
    for (int i = 0; i < size - 1; i++) {
      step(filter, i == 0 ? null : run.readings().get(i - 1), run.readings().get(i));
      filter.take(run.readings().get(i).value(), run.readings().get(i).ownVariance(errorShare));
    }
    GaugedReading before = run.readings().get(size - 2);
    step(filter, before, run.last());
    int days = Math.max(1, run.last().day() - before.day());
    return Innovation.gradualShare(
        filter,
        run.last(),
        run.last().ownVariance(errorShare),
        shocksPerDay * days,
        unreadableShare);
  }
}
