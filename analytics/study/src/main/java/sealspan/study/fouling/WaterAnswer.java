package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import sealspan.stats.Estimate;

/**
 * What the tests tell of one exposure and one lag.
 *
 * @param exposure the exposure
 * @param lag the lag
 * @param tests tests looked at
 * @param fouled of these, fouled
 * @param exposed of the tests, those with the event; 0 for a quality
 * @param exposedFouled of these, fouled
 * @param events different events that the tests met; for a quality, days of samples
 * @param zones zones of the tests
 * @param effect the effect
 * @param future control: the same after the test, given what came before it
 * @param otherZone control: the same in another zone, given what came in their own
 * @param leftOut tests left out, by the reason in words
 */
record WaterAnswer(
    WaterExposure exposure,
    WaterLag lag,
    int tests,
    int fouled,
    int exposed,
    int exposedFouled,
    int events,
    int zones,
    Estimate<WaterEffectFit> effect,
    Estimate<WaterEffectFit> future,
    Estimate<WaterEffectFit> otherZone,
    Map<String, Integer> leftOut) {

  static WaterAnswer of(WaterExposure exposure, WaterLag lag, WaterTests all, WaterRecord water) {
    Seen seen = Seen.of(all.tests(), exposure, test -> test.zoneId(), lag, false);
    int unknown = all.tests().size() - seen.tests.size();
    Map<String, Integer> leftOut = new LinkedHashMap<>();
    if (unknown > 0) {
      leftOut.put("tests without a result since the last pass", unknown);
    }
    Function<WaterTest, String> shared = test -> exposure.shared(test.zoneId(), test.day());
    String obstacle = seen.obstacle(exposure.isEvent());
    Estimate<WaterEffectFit> effect = Estimate.notIdentified(obstacle);
    Estimate<WaterEffectFit> future = Estimate.notIdentified("there is nothing to check");
    Estimate<WaterEffectFit> other = future;
    if (obstacle == null) {
      List<double[]> columns = new ArrayList<>();
      Seen rest =
          lag.rest() == null
              ? null
              : Seen.of(seen.tests, exposure, test -> test.zoneId(), lag.rest(), false);
      if (rest != null && rest.obstacle(exposure.isEvent()) == null) {
        columns.add(rest.values());
      }
      columns.add(seen.values());
      effect = WaterEffectFit.of(seen.tests, columns, shared);
    }
    if (effect instanceof Estimate.Identified<WaterEffectFit>) {
      future = future(seen, exposure, lag, all.lastDay());
      other = otherZone(seen, exposure, lag, water);
    }
    return new WaterAnswer(
        exposure,
        lag,
        seen.tests.size(),
        seen.fouled(),
        exposure.isEvent() ? seen.exposed() : 0,
        exposure.isEvent() ? seen.exposedFouled() : 0,
        seen.events.size(),
        (int) seen.tests.stream().map(WaterTest::zoneId).distinct().count(),
        effect,
        future,
        other,
        leftOut);
  }

  private static Estimate<WaterEffectFit> future(
      Seen seen, WaterExposure exposure, WaterLag lag, int lastDay) {
    List<WaterTest> followed =
        seen.tests.stream().filter(test -> 2 * test.day() - lag.afterDay(test) <= lastDay).toList();
    return control(
        Seen.of(followed, exposure, WaterTest::zoneId, lag, true),
        exposure,
        lag,
        test -> exposure.shared(test.zoneId(), 2 * test.day() - lag.afterDay(test)));
  }

  private static Estimate<WaterEffectFit> otherZone(
      Seen seen, WaterExposure exposure, WaterLag lag, WaterRecord water) {
    List<WaterTest> paired =
        seen.tests.stream().filter(test -> water.otherThan(test.zoneId()) != null).toList();
    Function<WaterTest, String> other = test -> water.otherThan(test.zoneId());
    return control(
        Seen.of(paired, exposure, other, lag, false),
        exposure,
        lag,
        test -> exposure.shared(other.apply(test), test.day()));
  }

  /** The effect of what should have none, given what acted in their own zone and time. */
  private static Estimate<WaterEffectFit> control(
      Seen control, WaterExposure exposure, WaterLag lag, Function<WaterTest, String> shared) {
    String obstacle = control.obstacle(exposure.isEvent());
    if (obstacle != null) {
      return Estimate.notIdentified(obstacle);
    }
    double[] own = Seen.of(control.tests, exposure, WaterTest::zoneId, lag, false).values();
    return WaterEffectFit.of(control.tests, List.of(own, control.values()), shared);
  }

  /** Tests of which is known what acted, with what did. */
  private static final class Seen {
    private final List<WaterTest> tests = new ArrayList<>();
    private final List<Double> values = new ArrayList<>();
    private final Set<Integer> events = new HashSet<>();

    static Seen of(
        List<WaterTest> all,
        WaterExposure exposure,
        Function<WaterTest, String> zone,
        WaterLag lag,
        boolean future) {
      Seen seen = new Seen();
      for (WaterTest test : all) {
        int after = lag.afterDay(test);
        int last = lag.lastDay(test);
        int from = future ? 2 * test.day() - last : after;
        int until = future ? 2 * test.day() - after : last;
        int[] days = exposure.daysBetween(zone.apply(test), from, until);
        if (future) {
          days = java.util.Arrays.stream(days).filter(day -> day > test.day()).toArray();
        }
        Double value = exposure.between(zone.apply(test), from, until);
        if (exposure.isEvent()) {
          value = days.length > 0 ? 1.0 : 0.0;
        }
        if (value != null) {
          seen.tests.add(test);
          seen.values.add(value);
          for (int day : days) {
            seen.events.add(day);
          }
        }
      }
      return seen;
    }

    double[] values() {
      return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    int fouled() {
      return (int) tests.stream().filter(WaterTest::fouled).count();
    }

    int exposed() {
      return (int) values.stream().filter(value -> value > 0).count();
    }

    int exposedFouled() {
      int count = 0;
      for (int i = 0; i < tests.size(); i++) {
        count += values.get(i) > 0 && tests.get(i).fouled() ? 1 : 0;
      }
      return count;
    }

    /** Why nothing can be told, in words; null where something can. */
    String obstacle(boolean isEvent) {
      int few = WaterEffectFit.FEWEST;
      if (tests.isEmpty()) {
        return "there is no test with a known exposure";
      }
      if (fouled() == 0) {
        return "no test was fouled";
      }
      if (fouled() == tests.size()) {
        return "every test was fouled";
      }
      if (events.size() < few) {
        return (isEvent ? "different events that the tests met: " : "days with samples: ")
            + events.size()
            + "; it needs five";
      }
      if (!isEvent) {
        return fouled() < few ? "fouled tests: " + fouled() + "; it needs five" : null;
      }
      int without = fouled() - exposedFouled();
      if (exposedFouled() < few || without < few) {
        return "fouled tests with the event: "
            + exposedFouled()
            + ", and without it: "
            + without
            + "; it needs five of each";
      }
      return null;
    }
  }
}
