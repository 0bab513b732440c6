package sealspan.bench.truth;

import java.util.Locale;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * How often 95 % intervals held the truth.
 *
 * @param what what was estimated, from what
 * @param runs runs in which there was an interval
 * @param notIdentified runs in which there was none
 * @param covered runs in which it held the truth
 * @param side which ends of the range are asked for
 */
public record Coverage(String what, int runs, int notIdentified, int covered, Side side) {
  /** Coverage that is asked for. */
  public static final double LOWEST = 0.93;

  /** Coverage that is asked for of intervals that are not wide by design. */
  public static final double HIGHEST = 0.97;

  /** Which ends of the range are asked for. */
  public enum Side {
    BOTH,
    /** Intervals that are wide by design. */
    LOWER
  }

  /** The chance of a result so far outside of the range if the true coverage is at its end. */
  public double chance() {
    double tooFew = new BinomialDistribution(runs, LOWEST).cumulativeProbability(covered);
    double tooMany = 1 - new BinomialDistribution(runs, HIGHEST).cumulativeProbability(covered - 1);
    return side == Side.LOWER ? tooFew : Math.min(tooFew, tooMany);
  }

  /** The row of a table in Markdown. */
  public String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %.3f | %s |",
        what,
        runs,
        notIdentified,
        (double) covered / runs,
        chance() < 1e-3 ? "outside" : side == Side.LOWER ? "at least .93" : "within .93 to .97");
  }
}
