package sealspan.assembly;

/** What a round says of one component or reading. UNKNOWN is never PASSED. */
public enum Result {
  PASSED,
  FAILED,
  /** A limit applies, but the reading was not taken, not reached, or is of no use. */
  UNKNOWN,
  /** No limit of the criteria table applies. */
  NOT_JUDGED
}
