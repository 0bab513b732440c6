package sealspan.assembly;

/**
 * Whether a round enters failure rates. Only performance results of routine as-found rounds do;
 * where the purpose was not recorded a round is taken as routine.
 */
public enum Counting {
  COUNTED(null),
  RETEST("a retest in the same visit: it tells whether the repair took"),
  AS_LEFT("an as-left round: it tells how the assembly was left, not how it was found"),
  INSTALLATION("an installation test has no exposure"),
  NOT_ROUTINE("not a routine round: counted apart"),
  NOT_TESTABLE("not testable"),
  UNDECIDED("neither readings nor report decide the round");

  private final String because;

  Counting(String because) {
    this.because = because;
  }

  /** Why a round does not count, in words; null for one that does. */
  public String because() {
    return because;
  }
}
