package sealspan.study.practice;

/** What truly is the matter with a component; nobody in the fleet sees it but through a test. */
public enum SealState {
  HEALTHY,
  WORN,
  FOULED,
  /** The last repair did not take. */
  NOT_HELD,
  /** The true value drifted below the limit. */
  DRIFTED
}
