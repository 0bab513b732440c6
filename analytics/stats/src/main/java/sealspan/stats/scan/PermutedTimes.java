package sealspan.stats.scan;

import java.util.Arrays;

/**
 * The space-time permutation: every place keeps its number of cases and every period keeps its own,
 * and which case fell when is dealt out anew (Kulldorff and others 2005, PLoS Medicine 2:e59). It
 * knows nothing of the visits at which no case was found, so where visits follow a route it takes
 * the route for clusters.
 */
public final class PermutedTimes implements NullDraws {
  private final int places;
  private final int[] place;
  private final int[] period;
  private final long seed;

  /** Draws for the cases among visits under a seed; the order of the visits does not matter. */
  public PermutedTimes(Visits visits, long seed) {
    this.places = visits.places();
    this.seed = seed;
    this.place = new int[visits.cases()];
    this.period = new int[place.length];
    int n = 0;
    for (int i = 0; i < visits.size(); i++) {
      if (visits.found()[i]) {
        place[n] = visits.place()[i];
        period[n++] = visits.period()[i];
      }
    }
    Arrays.sort(place);
    Arrays.sort(period);
  }

  /** Expected in a cell: cases of its place times cases of its period, over all cases. */
  public static CaseGrid grid(Visits visits) {
    int[] cases = new int[visits.places() * visits.periods()];
    long[] ofPlace = new long[visits.places()];
    long[] ofPeriod = new long[visits.periods()];
    int total = 0;
    for (int i = 0; i < visits.size(); i++) {
      if (visits.found()[i]) {
        cases[visits.cell(i)]++;
        ofPlace[visits.place()[i]]++;
        ofPeriod[visits.period()[i]]++;
        total++;
      }
    }
    double[] expected = new double[cases.length];
    for (int cell = 0; cell < cases.length && total > 0; cell++) {
      long both = ofPlace[cell % visits.places()] * ofPeriod[cell / visits.places()];
      expected[cell] = (double) both / total;
    }
    return new CaseGrid(visits.places(), visits.periods(), cases, expected);
  }

  @Override
  public void draw(long replicate, int[] cells) {
    CounterRandom random = CounterRandom.of(seed, replicate);
    int[] dealt = period.clone();
    for (int i = dealt.length - 1; i > 0; i--) {
      int other = (int) (random.uniform(i) * (i + 1));
      int kept = dealt[i];
      dealt[i] = dealt[other];
      dealt[other] = kept;
    }
    for (int i = 0; i < dealt.length; i++) {
      cells[i] = dealt[i] * places + place[i];
    }
  }
}
