package sealspan.stats.degradation;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Runs made by a known model: levels, shocks, gauges that are calibrated between years. */
final class InventedRuns {
  static final GaugeError ERROR = new GaugeError(0.004, 0.003);
  private static final double LIMIT = 1;

  private InventedRuns() {}

  static GaugedReading reading(int day, double value, int gaugePeriod) {
    return reading(day, value, "G" + gaugePeriod);
  }

  private static GaugedReading reading(int day, double value, String gaugePeriod) {
    return new GaugedReading(day, value, GaugedReading.Seen.MEASURED, LIMIT, ERROR, 0, gaugePeriod);
  }

  static List<ReadingRun> of(DriftModel model, Random random, int runs, int readings) {
    List<ReadingRun> made = new ArrayList<>();
    while (made.size() < runs) {
      made.add(run(model, random, readings));
    }
    return made;
  }

  static ReadingRun run(DriftModel model, Random random, int readings) {
    double level = 1.9 + 0.2 * random.nextGaussian();
    double drift = model.driftPerDay() + model.driftSdPerDay() * random.nextGaussian();
    double bias = 0;
    int day = 0;
    int period = 0;
    long gauge = random.nextLong();
    List<GaugedReading> run = new ArrayList<>();
    for (int i = 0; i < readings; i++) {
      int days = i == 0 ? 0 : 200 + random.nextInt(300);
      day += days;
      level +=
          drift * days + model.volatilityPerRootDay() * Math.sqrt(days) * random.nextGaussian();
      if (i == 0 || random.nextInt(4) > 0) {
        period++;
        bias = Math.sqrt(ERROR.biasVariance()) * random.nextGaussian();
      }
      boolean shocked = i > 0 && random.nextDouble() < -Math.expm1(-model.shocksPerDay() * days);
      double value = level + bias + Math.sqrt(ERROR.ownVariance()) * random.nextGaussian();
      GaugedReading reading = reading(day, value, gauge + " " + period);
      if (shocked) {
        boolean read = random.nextDouble() >= model.unreadableShare();
        reading =
            read
                ? reading(day, LIMIT * random.nextDouble(), gauge + " " + period)
                : new GaugedReading(
                    day, 0, GaugedReading.Seen.AT_OR_BELOW, LIMIT, ERROR, 0, gauge + " " + period);
      }
      run.add(reading);
      if (reading.fails()) {
        break;
      }
    }
    return new ReadingRun(run);
  }
}
