package sealspan.stats.scan;

/**
 * In each stratum as many visits with a case as there were, drawn by their probabilities: visits
 * stay where and when they were made, so a route of tests is no cluster.
 */
public final class VisitDraws implements NullDraws {
  private final long seed;
  private final ConditionalBernoulli[] strata;
  private final int[][] cells;
  private final int[] cases;

  /** Draws for visits under a seed. */
  public VisitDraws(Visits visits, long seed) {
    this.seed = seed;
    int n = visits.strata();
    int[] sizes = new int[n];
    for (int s : visits.stratum()) {
      sizes[s]++;
    }
    strata = new ConditionalBernoulli[n];
    cells = new int[n][];
    cases = new int[n];
    double[][] probabilities = new double[n][];
    for (int s = 0; s < n; s++) {
      cells[s] = new int[sizes[s]];
      probabilities[s] = new double[sizes[s]];
      sizes[s] = 0;
    }
    for (int i = 0; i < visits.size(); i++) {
      int s = visits.stratum()[i];
      cells[s][sizes[s]] = visits.cell(i);
      probabilities[s][sizes[s]++] = visits.probability()[i];
      cases[s] += visits.found()[i] ? 1 : 0;
    }
    for (int s = 0; s < n; s++) {
      strata[s] = new ConditionalBernoulli(probabilities[s], cases[s]);
    }
  }

  @Override
  public void draw(long replicate, int[] into) {
    CounterRandom random = CounterRandom.of(seed, replicate);
    int at = 0;
    long counter = 0;
    for (int s = 0; s < strata.length; s++) {
      strata[s].draw(random, counter, into, at);
      for (int i = at; i < at + cases[s]; i++) {
        into[i] = cells[s][into[i]];
      }
      at += cases[s];
      counter += 4L * cells[s].length + 4;
    }
  }
}
