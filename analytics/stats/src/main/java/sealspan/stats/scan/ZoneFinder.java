package sealspan.stats.scan;

/** Which zones a scan looks at, and how it finds the best of them. */
public interface ZoneFinder {
  /** The zones of a grid. */
  OnGrid on(CaseGrid grid);

  /** The zones of one grid. */
  interface OnGrid {
    /** Whether there is no zone at all within the limits. */
    boolean none();

    /** The best zone with its p-value; null where no zone has more cases than expected. */
    Cluster first(NullDraws draws, int replicates);

    /**
     * Which places the zones hold that reach a score.
     *
     * @param least the score, more than 0
     */
    NearBest nearBest(double least);
  }
}
