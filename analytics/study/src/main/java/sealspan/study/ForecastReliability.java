package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.forecast.Reliability;

/**
 * How often forecasts of about the same probability came true: one step of the rising curve that
 * lies closest to the outcomes.
 *
 * @param said mean probability of the step
 * @param failedShare share of its tests that failed
 * @param n its forecasts
 * @param lowest its smallest probability
 * @param highest its greatest probability
 * @param bandLower lower end of where the share would lie, 95 times in 100, were they right
 * @param bandUpper upper end
 */
public record ForecastReliability(
    double said,
    double failedShare,
    int n,
    double lowest,
    double highest,
    double bandLower,
    double bandUpper) {
  private static final int DRAWS = 200;
  private static final double LEVEL = 0.95;

  /** The steps by rising probability; none without forecasts. */
  public static List<ForecastReliability> of(List<ScoredForecast> forecasts) {
    double[] said = forecasts.stream().mapToDouble(ScoredForecast::probability).toArray();
    boolean[] failed = new boolean[said.length];
    for (int i = 0; i < failed.length; i++) {
      failed[i] = forecasts.get(i).failed();
    }
    if (!(Reliability.of(said, failed) instanceof Estimate.Identified<Reliability> fitted)) {
      return List.of();
    }
    List<Interval> bands = fitted.value().bands(said, DRAWS, LEVEL);
    List<ForecastReliability> steps = new ArrayList<>(bands.size());
    for (int i = 0; i < bands.size(); i++) {
      Reliability.Block block = fitted.value().blocks().get(i);
      steps.add(
          new ForecastReliability(
              block.mean(),
              block.share(),
              block.n(),
              block.lowest(),
              block.highest(),
              bands.get(i).lower(),
              bands.get(i).upper()));
    }
    return steps;
  }
}
