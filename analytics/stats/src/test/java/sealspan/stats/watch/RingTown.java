package sealspan.stats.watch;

import java.util.Arrays;
import java.util.Optional;
import sealspan.stats.scan.CounterRandom;

/**
 * Thirty places on a ring, tested in random order; the zones are the 3 and the 6 neighbours from
 * each place on. All draws are by counter, fixed beforehand.
 */
final class RingTown {
  static final int PLACES = 30;
  static final int[] SIZES = {3, 6};

  private RingTown() {}

  static double[] weights() {
    double[] weight = new double[PLACES * SIZES.length];
    Arrays.fill(weight, 1.0 / weight.length);
    return weight;
  }

  /** The zones that hold a place: that of the size i from a start is start * 2 + i. */
  static int[] zonesOf(int place) {
    int[] zones = new int[SIZES[0] + SIZES[1]];
    int n = 0;
    for (int i = 0; i < SIZES.length; i++) {
      for (int back = 0; back < SIZES[i]; back++) {
        zones[n++] = Math.floorMod(place - back, PLACES) * SIZES.length + i;
      }
    }
    return zones;
  }

  static boolean touchesTheFirstSix(int zone) {
    int start = zone / SIZES.length;
    return start < 6 || start + SIZES[zone % SIZES.length] > PLACES;
  }

  /**
   * Tests until the first alarm.
   *
   * @param stated the probability that is stated
   * @param truth the true one
   * @param risk times the true one in places 0 to 5, from a test on
   * @param from that test, from 0
   */
  static Raised run(
      long seed, int run, double threshold, double stated, double truth, double risk, long from) {
    CounterRandom random = CounterRandom.of(seed, run);
    MixtureWatch watch = new MixtureWatch(weights(), threshold);
    for (long test = 0; ; test++) {
      int place = (int) (PLACES * random.uniform(2 * test));
      boolean found = random.uniform(2 * test + 1) < truth * (place < 6 && test >= from ? risk : 1);
      Optional<Raised> raised = watch.observe(zonesOf(place), stated, found);
      if (raised.isPresent()) {
        return raised.get();
      }
    }
  }
}
