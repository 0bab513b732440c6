package sealspan.study.watch;

import java.util.List;
import sealspan.stats.Interval;
import sealspan.stats.forecast.CalibrationMonitor;
import sealspan.stats.rates.CountedRate;

/**
 * Whether the probabilities held that the watch went by: fouling failures found against those
 * expected. The interval is that of a Poisson count (Garwood), wider than needed for single tests.
 *
 * @param tests tests since the model was frozen
 * @param cases fouling failures among them
 * @param expected sum of the probabilities
 * @param ratio cases per expected case; null where too few are expected to tell
 * @param lower lower limit, 95 %; null with it
 * @param upper upper limit; null with it
 * @param chance bound on the chance of this if the probabilities are right, however often one
 *     looked; 1 where nothing speaks against them
 * @param promise {@code HOLDS}, {@code TOO_LOW}, {@code TOO_HIGH} or {@code TOO_EARLY}
 * @param words the same in words
 */
record Calibration(
    int tests,
    int cases,
    double expected,
    Double ratio,
    Double lower,
    Double upper,
    double chance,
    String promise,
    String words) {

  private static final double LEVEL = .95;
  private static final double FEWEST_EXPECTED = 1;

  static Calibration of(List<Bet> bets) {
    double[] probabilities = new double[bets.size()];
    boolean[] outcomes = new boolean[bets.size()];
    int cases = 0;
    double expected = 0;
    for (int i = 0; i < probabilities.length; i++) {
      probabilities[i] = bets.get(i).probability();
      outcomes[i] = bets.get(i).test().fouled();
      cases += outcomes[i] ? 1 : 0;
      expected += probabilities[i];
    }
    double chance = CalibrationMonitor.follow(probabilities, outcomes).chanceAtMost();
    if (expected < FEWEST_EXPECTED) {
      return new Calibration(
          probabilities.length,
          cases,
          expected,
          null,
          null,
          null,
          chance,
          "TOO_EARLY",
          "too early to tell whether the probabilities hold: fewer than one fouling failure was"
              + " expected since the model was frozen");
    }
    Interval limits = CountedRate.garwood(cases, expected, LEVEL);
    boolean off = chance <= 1 - LEVEL;
    String promise =
        limits.lower() > 1 || off && cases > expected
            ? "TOO_LOW"
            : limits.upper() < 1 || off ? "TOO_HIGH" : "HOLDS";
    return new Calibration(
        probabilities.length,
        cases,
        expected,
        cases / expected,
        limits.lower(),
        limits.upper(),
        chance,
        promise,
        wordsOf(promise));
  }

  private static String wordsOf(String promise) {
    return switch (promise) {
      case "TOO_LOW" ->
          "more fouling than expected: the probabilities are too low, so the stated time to a"
              + " false alarm does not hold";
      case "TOO_HIGH" ->
          "less fouling than expected: the probabilities are on the safe side, so alarms come later"
              + " than they could";
      default -> "the probabilities hold so far, so the stated time to a false alarm does";
    };
  }
}
