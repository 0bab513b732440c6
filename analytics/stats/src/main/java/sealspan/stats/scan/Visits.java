package sealspan.stats.scan;

import java.util.Arrays;

/**
 * Visits at which a case was found or not, with the probability that one would be if nothing
 * clustered. A visit is the unit: what is tested at one visit is one block. Within a stratum only
 * the number of cases is taken as given, so that a season or a kind with many cases is no cluster.
 *
 * @param places number of places
 * @param periods number of periods
 * @param place place of each visit
 * @param period period of each visit
 * @param stratum stratum of each visit, from 0
 * @param found whether a case was found
 * @param probability probability of a case, between 0 and 1, ends excluded
 */
public record Visits(
    int places,
    int periods,
    int[] place,
    int[] period,
    int[] stratum,
    boolean[] found,
    double[] probability) {

  /** Number of visits. */
  public int size() {
    return place.length;
  }

  /** Number of visits at which a case was found. */
  public int cases() {
    int cases = 0;
    for (boolean f : found) {
      cases += f ? 1 : 0;
    }
    return cases;
  }

  /** The cell of a visit in the grid. */
  int cell(int visit) {
    return period[visit] * places + place[visit];
  }

  int strata() {
    int strata = 0;
    for (int s : stratum) {
      strata = Math.max(strata, s + 1);
    }
    return strata;
  }

  /**
   * The expected cases of each visit: in each stratum the probabilities are scaled so that they sum
   * to its cases, and rounded to 2^-32, so that their sums do not depend on the order.
   */
  public double[] expected() {
    int strata = strata();
    double[] sum = new double[strata];
    int[] cases = new int[strata];
    for (int i = 0; i < size(); i++) {
      sum[stratum[i]] += StrictMath.rint(probability[i] * 0x1p32);
      cases[stratum[i]] += found[i] ? 1 : 0;
    }
    double[] expected = new double[size()];
    for (int i = 0; i < size(); i++) {
      int s = stratum[i];
      double scaled = probability[i] * 0x1p32 * cases[s] / sum[s];
      expected[i] = StrictMath.rint(scaled * 0x1p32) * 0x1p-32;
    }
    return expected;
  }

  /** The cases and expected cases by cell. */
  public CaseGrid grid() {
    int[] caseCells = new int[places * periods];
    double[] expectedCells = new double[places * periods];
    double[] expected = expected();
    for (int i = 0; i < size(); i++) {
      expectedCells[cell(i)] += expected[i];
      caseCells[cell(i)] += found[i] ? 1 : 0;
    }
    return new CaseGrid(places, periods, caseCells, expectedCells);
  }

  /** The visits without those of some places in a window. */
  public Visits without(int[] zone, Window window) {
    boolean[] out = new boolean[places];
    for (int p : zone) {
      out[p] = true;
    }
    int[] kept = new int[size()];
    int n = 0;
    for (int i = 0; i < size(); i++) {
      if (!out[place[i]] || !window.contains(period[i])) {
        kept[n++] = i;
      }
    }
    return at(Arrays.copyOf(kept, n));
  }

  private Visits at(int[] kept) {
    int n = kept.length;
    int[] keptPlace = new int[n];
    int[] keptPeriod = new int[n];
    int[] keptStratum = new int[n];
    boolean[] keptFound = new boolean[n];
    double[] keptProbability = new double[n];
    for (int i = 0; i < n; i++) {
      keptPlace[i] = place[kept[i]];
      keptPeriod[i] = period[kept[i]];
      keptStratum[i] = stratum[kept[i]];
      keptFound[i] = found[kept[i]];
      keptProbability[i] = probability[kept[i]];
    }
    return new Visits(
        places, periods, keptPlace, keptPeriod, keptStratum, keptFound, keptProbability);
  }
}
