package sealspan.stats.forecast;

import java.util.Map;
import java.util.TreeMap;
import sealspan.stats.Estimate;

/**
 * The parts of the Brier score: reliability - resolution + uncertainty = score.
 *
 * @param reliability how far the probabilities lie from what came of them, 0 best
 * @param resolution how far what came of them differs between probabilities, the more the better
 * @param uncertainty variance of the outcome, which no forecast can change
 */
public record BrierParts(double reliability, double resolution, double uncertainty) {

  /**
   * Murphy's parts (1973): forecasts of the same probability belong together. They tell something
   * where probabilities are few; where every one differs see {@link #corp}.
   */
  public static Estimate<BrierParts> murphy(double[] probabilities, boolean[] outcomes) {
    ForecastScore.requirePairs(probabilities, outcomes);
    if (probabilities.length == 0) {
      return Estimate.notIdentified("no forecast has been followed by an outcome");
    }
    Map<Double, int[]> groups = new TreeMap<>();
    int happened = 0;
    for (int i = 0; i < probabilities.length; i++) {
      int[] group = groups.computeIfAbsent(probabilities[i] + 0.0, p -> new int[2]);
      group[0]++;
      group[1] += outcomes[i] ? 1 : 0;
      happened += outcomes[i] ? 1 : 0;
    }
    double n = probabilities.length;
    double base = happened / n;
    double reliability = 0;
    double resolution = 0;
    for (Map.Entry<Double, int[]> entry : groups.entrySet()) {
      double share = (double) entry.getValue()[1] / entry.getValue()[0];
      double weight = entry.getValue()[0] / n;
      reliability += weight * (entry.getKey() - share) * (entry.getKey() - share);
      resolution += weight * (share - base) * (share - base);
    }
    return Estimate.of(new BrierParts(reliability, resolution, base * (1 - base)));
  }

  /**
   * The parts by isotonic recalibration, which need no bins (CORP: Dimitriadis, Gneiting and Jordan
   * 2021; from memory): what recalibration would gain, and what the recalibrated forecasts gain on
   * the base rate.
   */
  public static Estimate<BrierParts> corp(double[] probabilities, boolean[] outcomes) {
    Estimate<Reliability> fitted = Reliability.of(probabilities, outcomes);
    if (fitted instanceof Estimate.NotIdentified<Reliability> not) {
      return Estimate.notIdentified(not.because());
    }
    double n = probabilities.length;
    double score = 0;
    int happened = 0;
    for (int i = 0; i < probabilities.length; i++) {
      double miss = probabilities[i] - (outcomes[i] ? 1 : 0);
      score += miss * miss / n;
      happened += outcomes[i] ? 1 : 0;
    }
    double base = happened / n;
    double recalibrated = 0;
    for (Reliability.Block block : fitted.orThrow().blocks()) {
      recalibrated += block.n() / n * block.share() * (1 - block.share());
    }
    double uncertainty = base * (1 - base);
    return Estimate.of(
        new BrierParts(
            Math.max(0, score - recalibrated),
            Math.max(0, uncertainty - recalibrated),
            uncertainty));
  }

  /** The score that they add up to. */
  public double brier() {
    return reliability - resolution + uncertainty;
  }
}
