package sealspan.stats.scan;

/** What cases are held against: how many are expected in each cell, and how they fall by chance. */
public interface ScanNull {
  /** The tests that were made: each has its probability, and stays where and when it was made. */
  ScanNull TESTS =
      new ScanNull() {
        @Override
        public CaseGrid grid(Visits visits) {
          return visits.grid();
        }

        @Override
        public NullDraws draws(Visits visits, long seed) {
          return new VisitDraws(visits, seed);
        }
      };

  /** The times of the cases dealt out anew among their places. */
  ScanNull PERMUTED_TIMES =
      new ScanNull() {
        @Override
        public CaseGrid grid(Visits visits) {
          return PermutedTimes.grid(visits);
        }

        @Override
        public NullDraws draws(Visits visits, long seed) {
          return new PermutedTimes(visits, seed);
        }
      };

  /** Cases and what is expected. */
  CaseGrid grid(Visits visits);

  /** How cases fall where nothing clusters. */
  NullDraws draws(Visits visits, long seed);
}
