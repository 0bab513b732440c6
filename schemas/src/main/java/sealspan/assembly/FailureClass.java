package sealspan.assembly;

/** What a failure was: see {@link FailureClassification}. */
public enum FailureClass {
  /** Debris, deposit or scale. */
  FOULING,
  /** Worn, cut, broken, corroded: damage without debris. */
  DAMAGE,
  /** What was recorded does not tell. */
  UNCLASSIFIED
}
