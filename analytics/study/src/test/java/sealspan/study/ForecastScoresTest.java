package sealspan.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ForecastScoresTest {
  private static List<ScoredForecast> forecasts(int n, double off) {
    Random random = new Random(6);
    List<ScoredForecast> forecasts = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double truth = i % 4 == 0 ? 0.5 : 0.05;
      forecasts.add(
          new ScoredForecast(
              i % 2 == 0 ? "DC" : "RP",
              Math.min(1, truth * off),
              0.16,
              random.nextDouble() < truth));
    }
    return forecasts;
  }

  @Test
  void tooFewAreNotJudged() {
    ForecastScores few = ForecastScores.of(forecasts(29, 1)).get(0);
    assertNull(few.brier());
    assertTrue(few.verdict().startsWith("too few to judge: 29"), few.verdict());
    assertEquals(0, ForecastScores.of(List.of()).get(0).n());
    assertEquals(List.of(), ForecastReliability.of(List.of()));
  }

  @Test
  void goodForecastsAreToldFromWrongOnes() {
    List<ForecastScores> good = ForecastScores.of(forecasts(1_000, 1));
    assertEquals(List.of("all", "DC", "RP"), good.stream().map(ForecastScores::group).toList());
    assertEquals(1_000, good.get(0).n());
    assertEquals(
        good.get(0).brier(),
        good.get(0).reliability() - good.get(0).resolution() + good.get(0).uncertainty(),
        1e-12);
    assertEquals(
        "better than the base rate of the type; nothing speaks against the probabilities",
        good.get(0).verdict());
    ForecastScores wrong = ForecastScores.of(forecasts(1_000, 2)).get(0);
    assertTrue(wrong.verdict().endsWith("the probabilities are off"), wrong.verdict());
    assertTrue(wrong.monitor() < 0.05 && wrong.calibrationP() < 0.05, wrong.toString());
  }
}
