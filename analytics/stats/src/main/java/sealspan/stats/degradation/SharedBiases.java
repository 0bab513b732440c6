package sealspan.stats.degradation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleBiFunction;
import sealspan.stats.PositiveSystem;

/**
 * What few gauges and calibrations do to many units at once. To runs that count as independent the
 * bias of one gauge, which moves all of them alike, would look as if readings hardly wandered. So
 * the biases are found from the steps of passing readings that go from one calibration to another,
 * by least squares with their own variance as a ridge and a drift beside them, and taken out of the
 * readings. A trend in the biases cannot be told from a drift: it is left in, and belongs to the
 * error of the mean drift.
 */
final class SharedBiases {
  /** Gauges and calibrations of at least this number are drawn often enough to count apart. */
  static final int FEWEST_APART = 30;

  /** Guards against exact gauges and levels that stand still. */
  private static final double LEAST_VARIANCE = 1e-12;

  private static final double YEAR_DAYS = 365.25;

  private final Map<String, Integer> numbers = new TreeMap<>();
  private final Map<String, Double> variances = new TreeMap<>();

  private SharedBiases() {}

  /** The gauges and calibrations of some runs. */
  static SharedBiases of(List<ReadingRun> runs) {
    SharedBiases biases = new SharedBiases();
    for (ReadingRun run : runs) {
      for (GaugedReading reading : run.readings()) {
        biases.variances.merge(reading.gaugePeriod(), reading.error().biasVariance(), Math::max);
      }
    }
    for (String period : biases.variances.keySet()) {
      biases.numbers.put(period, biases.numbers.size());
    }
    return biases;
  }

  /** Whether there are so few that they have to be taken out. */
  boolean areFew() {
    return variances.size() < FEWEST_APART;
  }

  /** Variance of the bias of a gauge between two calibrations. */
  double variance(String period) {
    return variances.get(period);
  }

  /**
   * The runs without the biases.
   *
   * @param varianceOfStep variance of the step from one reading to the next, biases left out
   */
  List<ReadingRun> takenOut(
      List<ReadingRun> runs, ToDoubleBiFunction<GaugedReading, GaugedReading> varianceOfStep) {
    double[] found = solve(runs, varianceOfStep);
    List<ReadingRun> without = new ArrayList<>(runs.size());
    for (ReadingRun run : runs) {
      without.add(
          new ReadingRun(
              run.readings().stream()
                  .map(r -> r.withoutBias(found[numbers.get(r.gaugePeriod())]))
                  .toList()));
    }
    return without;
  }

  /** The biases, and last the drift a year; the lower half of the normal equations is filled. */
  private double[] solve(
      List<ReadingRun> runs, ToDoubleBiFunction<GaugedReading, GaugedReading> varianceOfStep) {
    int drift = numbers.size();
    double[][] matrix = new double[drift + 1][drift + 1];
    double[] right = new double[drift + 1];
    for (ReadingRun run : runs) {
      for (int i = 1; i < run.readings().size(); i++) {
        GaugedReading from = run.readings().get(i - 1);
        GaugedReading to = run.readings().get(i);
        int p = numbers.get(from.gaugePeriod());
        int q = numbers.get(to.gaugePeriod());
        if (p == q || to.fails()) {
          continue;
        }
        double years = (to.day() - from.day()) / YEAR_DAYS;
        double weight = 1 / Math.max(LEAST_VARIANCE, varianceOfStep.applyAsDouble(from, to));
        double moved = weight * (to.value() - from.value());
        matrix[p][p] += weight;
        matrix[q][q] += weight;
        matrix[Math.max(p, q)][Math.min(p, q)] -= weight;
        matrix[drift][p] -= weight * years;
        matrix[drift][q] += weight * years;
        matrix[drift][drift] += weight * years * years;
        right[p] -= moved;
        right[q] += moved;
        right[drift] += moved * years;
      }
    }
    if (matrix[drift][drift] == 0) {
      return new double[drift + 1];
    }
    variances.forEach(
        (period, variance) -> {
          int i = numbers.get(period);
          matrix[i][i] += 1 / Math.max(LEAST_VARIANCE, variance);
        });
    return PositiveSystem.of(matrix).solve(right);
  }
}
