package sealspan.stats.scan;

/**
 * Cases and expected cases by place and period. Cell {@code period * places + place}.
 *
 * @param places number of places
 * @param periods number of periods
 * @param cases cases of each cell
 * @param expected expected cases of each cell, not negative; more than 0 where there are cases;
 *     they sum to the total of the cases up to rounding
 */
public record CaseGrid(int places, int periods, int[] cases, double[] expected) {
  public CaseGrid {
    int cells = places * periods;
    if (cases.length != cells || expected.length != cells) {
      throw new IllegalArgumentException("a grid of " + cells + " cells needs as many numbers");
    }
    for (int i = 0; i < cells; i++) {
      if (cases[i] < 0 || !(expected[i] >= 0) || cases[i] > 0 && expected[i] == 0) {
        throw new IllegalArgumentException(
            "cell " + i + " has " + cases[i] + " cases where " + expected[i] + " are expected");
      }
    }
  }

  /** One period, with expected cases in proportion to a population. */
  public static CaseGrid ofPopulation(int[] cases, double[] population) {
    double people = 0;
    int total = 0;
    for (int i = 0; i < cases.length; i++) {
      people += population[i];
      total += cases[i];
    }
    double[] expected = new double[cases.length];
    for (int i = 0; i < cases.length; i++) {
      expected[i] = total == 0 ? 0 : population[i] * total / people;
    }
    return new CaseGrid(cases.length, 1, cases, expected);
  }

  /** All cases. */
  public int total() {
    int total = 0;
    for (int c : cases) {
      total += c;
    }
    return total;
  }

  /** Expected cases of each place, over all periods. */
  public double[] expectedByPlace() {
    double[] sums = new double[places];
    for (int period = 0; period < periods; period++) {
      addExpected(period, sums);
    }
    return sums;
  }

  /** Adds the expected cases of a period, place by place. */
  void addExpected(int period, double[] sums) {
    for (int place = 0; place < places; place++) {
      sums[place] += expected[period * places + place];
    }
  }

  /** Adds the cases of a period, place by place. */
  void addCases(int period, int[] sums) {
    for (int place = 0; place < places; place++) {
      sums[place] += cases[period * places + place];
    }
  }
}
