package sealspan.bench.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sealspan.stats.ageing.RepairedLife;
import sealspan.stats.ageing.VirtualAge;
import sealspan.stats.recurrence.EventHistory;
import sealspan.stats.recurrence.EventTimes;

/** Invented units with events and repairs, whose true values are known. */
public final class RecurrenceFleet {
  private RecurrenceFleet() {}

  /**
   * Units whose events follow a Poisson process; a unit's rate is exponential with the given mean a
   * day. They enter within the first 500 days, the first unit at once, and are watched to the end.
   */
  public static List<EventHistory> counted(Random random, int units, double perDay, int until) {
    List<EventHistory> histories = new ArrayList<>(units);
    for (int i = 0; i < units; i++) {
      double rate = perDay * exponential(random);
      int entry = i == 0 ? 0 : random.nextInt(500);
      int[] days = new int[16];
      int events = 0;
      for (double t = exponential(random) / rate; t <= until; t += exponential(random) / rate) {
        if (events == days.length) {
          days = java.util.Arrays.copyOf(days, 2 * events);
        }
        days[events++] = (int) Math.ceil(t);
      }
      histories.add(EventHistory.watched(entry, until, java.util.Arrays.copyOf(days, events)));
    }
    return histories;
  }

  /**
   * Systems whose rate follows a power of time, with expected number .2 t^shape; windows begin
   * within the first two units of time and last one to six.
   *
   * @param spread 0: all alike; 1: a system's rate carries an exponential factor
   */
  public static List<EventTimes> power(Random random, int systems, double shape, int spread) {
    List<EventTimes> times = new ArrayList<>(systems);
    for (int i = 0; i < systems; i++) {
      double start = i % 3 == 0 ? 0 : 2 * random.nextDouble();
      double end = start + 1 + 5 * random.nextDouble();
      double level = .2 * (spread == 0 ? 1 : exponential(random));
      List<Double> own = new ArrayList<>();
      double sum = level * Math.pow(start, shape);
      while (true) {
        sum += exponential(random);
        double t = Math.pow(sum / level, 1 / shape);
        if (t > end) {
          break;
        }
        own.add(t);
      }
      times.add(
          EventTimes.watched(start, end, own.stream().mapToDouble(Double::doubleValue).toArray()));
    }
    return times;
  }

  /**
   * The truth behind units that are tested about once a year and repaired when they fail.
   *
   * @param model how repairs act on the age
   * @param shape Weibull shape
   * @param scaleYears Weibull scale
   * @param keptSeal share of the age left by cleaning
   * @param newSeal share of the age left by a new seal, chosen more often with age
   * @param deviation standard deviation of the log frailty
   */
  public record Ageing(
      VirtualAge model,
      double shape,
      double scaleYears,
      double keptSeal,
      double newSeal,
      double deviation) {

    /** The lives of some units over some tests. */
    public List<RepairedLife> lives(Random random, int units, int tests) {
      List<RepairedLife> lives = new ArrayList<>(units);
      for (int i = 0; i < units; i++) {
        double factor = Math.exp(deviation * random.nextGaussian() - deviation * deviation / 2);
        lives.add(life(random, tests, factor));
      }
      return lives;
    }

    private RepairedLife life(Random random, int tests, double factor) {
      RepairedLife.Builder life = RepairedLife.sinceNew();
      double age = 0;
      double atRepair = 0;
      for (int t = 0; t < tests; t++) {
        double time = .8 + .4 * random.nextDouble();
        double before = Math.pow(age / scaleYears, shape);
        age += time;
        double gained = factor * (Math.pow(age / scaleYears, shape) - before);
        if (exponential(random) > gained) {
          life.passed(time);
          continue;
        }
        int kind = random.nextDouble() < .25 + .5 * Math.min(1, age / 10) ? 1 : 0;
        life.failed(time).repaired(kind);
        double left = kind == 0 ? keptSeal : newSeal;
        age = model == VirtualAge.KIJIMA_II ? left * age : atRepair + left * (age - atRepair);
        atRepair = age;
      }
      return life.build();
    }
  }

  private static double exponential(Random random) {
    return -Math.log(1 - random.nextDouble());
  }
}
