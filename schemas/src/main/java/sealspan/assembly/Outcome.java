package sealspan.assembly;

/** How a test round of an assembly ended. */
public enum Outcome {
  PASSED,
  /** Failed on performance. */
  FAILED,
  /** Performance did not fail, but installation, gauge or certificate did. */
  FAILED_COMPLIANCE,
  NOT_TESTABLE,
  /** Neither the readings nor a verdict on the report decide it. */
  UNDECIDED
}
