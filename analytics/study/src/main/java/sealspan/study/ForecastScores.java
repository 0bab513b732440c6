package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;
import sealspan.stats.PointEstimate;
import sealspan.stats.forecast.BrierParts;
import sealspan.stats.forecast.BrierSkill;
import sealspan.stats.forecast.CalibrationMonitor;
import sealspan.stats.forecast.ForecastScore;

/**
 * How good the forecasts of a group were.
 *
 * @param group the group; {@code all} for all together
 * @param n forecasts with an outcome
 * @param failed tests that failed
 * @param expected sum of the probabilities
 * @param brier Brier score; null, like all that follows, where there are too few
 * @param reliability its part that recalibration would take away, 0 best
 * @param resolution its part that the forecasts gain, the more the better
 * @param uncertainty variance of the outcome
 * @param skill gain on the base rate of the type, 1 perfect, 0 none
 * @param skillLower lower end of its 95 % interval
 * @param skillUpper upper end of its 95 % interval
 * @param logScore mean log score; null also where what happened had been called impossible
 * @param calibrationP p-value of the probabilities being right (Spiegelhalter)
 * @param monitor bound on the chance of such a run of outcomes if they are right
 * @param verdict in words
 */
public record ForecastScores(
    String group,
    int n,
    int failed,
    double expected,
    Double brier,
    Double reliability,
    Double resolution,
    Double uncertainty,
    Double skill,
    Double skillLower,
    Double skillUpper,
    Double logScore,
    Double calibrationP,
    Double monitor,
    String verdict) {

  /** Fewer forecasts say nothing of a Brier score. */
  private static final int FEWEST_FORECASTS = 30;

  /** Fewer failures neither. */
  private static final int FEWEST_FAILURES = 5;

  private static final double LEVEL = 0.95;
  private static final double DOUBTFUL = 0.05;

  /**
   * The scores of all forecasts, and of each group where there is more than one.
   *
   * @param forecasts in the order in which their outcomes became known
   */
  public static List<ForecastScores> of(List<ScoredForecast> forecasts) {
    Map<String, List<ScoredForecast>> groups = new TreeMap<>();
    for (ScoredForecast forecast : forecasts) {
      groups.computeIfAbsent(forecast.group(), g -> new ArrayList<>()).add(forecast);
    }
    List<ForecastScores> scores = new ArrayList<>();
    scores.add(of("all", forecasts));
    if (groups.size() > 1) {
      groups.forEach((group, members) -> scores.add(of(group, members)));
    }
    return scores;
  }

  private static ForecastScores of(String group, List<ScoredForecast> forecasts) {
    int n = forecasts.size();
    double[] said = forecasts.stream().mapToDouble(ScoredForecast::probability).toArray();
    double[] base = forecasts.stream().mapToDouble(ScoredForecast::base).toArray();
    boolean[] failed = new boolean[n];
    int failures = 0;
    double expected = 0;
    for (int i = 0; i < n; i++) {
      failed[i] = forecasts.get(i).failed();
      failures += failed[i] ? 1 : 0;
      expected += said[i];
    }
    if (n < FEWEST_FORECASTS || failures < FEWEST_FAILURES) {
      String few =
          "too few to judge: %d forecasts with an outcome, %d failed; it takes at least %d and %d"
              .formatted(n, failures, FEWEST_FORECASTS, FEWEST_FAILURES);
      return new ForecastScores(
          group, n, failures, expected, null, null, null, null, null, null, null, null, null, null,
          few);
    }
    ForecastScore score = ForecastScore.of(said, failed).orThrow();
    BrierParts parts = BrierParts.corp(said, failed).orThrow();
    Estimate<PointEstimate> skill = BrierSkill.of(said, base, failed, LEVEL);
    PointEstimate gain =
        skill instanceof Estimate.Identified<PointEstimate> known ? known.value() : null;
    double monitor = CalibrationMonitor.follow(said, failed).chanceAtMost();
    return new ForecastScores(
        group,
        n,
        failures,
        expected,
        score.brier(),
        parts.reliability(),
        parts.resolution(),
        parts.uncertainty(),
        gain == null ? null : gain.value(),
        gain == null ? null : gain.interval().lower(),
        gain == null ? null : gain.interval().upper(),
        Double.isFinite(score.logScore()) ? score.logScore() : null,
        score.calibrationPValue(),
        monitor,
        verdict(gain, monitor));
  }

  private static String verdict(PointEstimate skill, double monitor) {
    String gain =
        skill == null || skill.interval().contains(0)
            ? "cannot be told from the base rate of the type"
            : skill.value() > 0
                ? "better than the base rate of the type"
                : "worse than the base rate of the type";
    return gain
        + (monitor <= DOUBTFUL
            ? "; the probabilities are off"
            : "; nothing speaks against the probabilities");
  }
}
