package sealspan.stats.degradation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import sealspan.stats.Confidence;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;

/**
 * The drift model of greatest likelihood, from the innovations of the Kalman filter. Of each run
 * the first reading tells the level and nothing else. Runs end with their first failure, which is
 * in: to leave failures out would leave out the steepest drifts.
 *
 * @param model the model
 * @param driftError standard error of the mean drift a day, the biases that gauges share over units
 *     included
 * @param shockError standard error of the log of the rate of shocks; infinite without a failure
 * @param logLikelihood its log-likelihood, with the constants of the normal distribution
 * @param runs runs of two readings or more
 * @param steps steps from one reading to the next in them
 * @param stepsUsed those that the likelihood was made from: of very many, evenly chosen runs
 * @param failures runs that ended with a failed reading
 */
public record DriftFit(
    DriftModel model,
    double driftError,
    double shockError,
    double logLikelihood,
    int runs,
    int steps,
    int stepsUsed,
    int failures) {

  /** Fewer steps than this do not tell drift from the error of the gauge. */
  public static final int FEWEST_STEPS = 20;

  /** More steps than this make the fit slower and the forecasts no better. */
  static final int MOST_STEPS = 20_000;

  /**
   * Fits the model.
   *
   * @param runs runs of one kind of component, in any order
   */
  public static Estimate<DriftFit> of(Collection<ReadingRun> runs) {
    List<ReadingRun> telling = new ArrayList<>();
    int steps = 0;
    int failures = 0;
    int unreadable = 0;
    for (ReadingRun run : runs) {
      if (run.readings().size() > 1) {
        telling.add(run);
        steps += run.readings().size() - 1;
        failures += run.failed() ? 1 : 0;
        unreadable += run.last().seen() == GaugedReading.Seen.AT_OR_BELOW ? 1 : 0;
      }
    }
    if (steps < FEWEST_STEPS) {
      return Estimate.notIdentified(
          "%d steps from one reading to the next; a drift needs at least %d"
              .formatted(steps, FEWEST_STEPS));
    }
    if (telling.stream().allMatch(run -> run.last().day() == run.readings().get(0).day())) {
      return Estimate.notIdentified("no two readings of one run lie days apart");
    }
    telling.sort(ReadingRun.ORDER);
    List<ReadingRun> used = evenly(telling, steps);
    double unreadableShare = (unreadable + 0.5) / (failures + 1);
    DriftSearch.Found found = DriftSearch.of(used, unreadableShare);
    return Estimate.of(
        new DriftFit(
            found.model(unreadableShare),
            found.driftError(),
            found.shockError(),
            found.logLikelihood(),
            telling.size(),
            steps,
            used.stream().mapToInt(run -> run.readings().size() - 1).sum(),
            failures));
  }

  private static List<ReadingRun> evenly(List<ReadingRun> sorted, int steps) {
    int every = (steps + MOST_STEPS - 1) / MOST_STEPS;
    if (every == 1) {
      return sorted;
    }
    List<ReadingRun> chosen = new ArrayList<>(sorted.size() / every + 1);
    for (int i = 0; i < sorted.size(); i += every) {
      chosen.add(sorted.get(i));
    }
    return chosen;
  }

  /** Interval of the mean drift a day, by the standard error. */
  public Interval driftInterval(double confidence) {
    double reach = Confidence.z(confidence) * driftError;
    return new Interval(model.driftPerDay() - reach, model.driftPerDay() + reach, confidence);
  }
}
