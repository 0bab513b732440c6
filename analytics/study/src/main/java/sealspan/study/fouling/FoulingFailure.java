package sealspan.study.fouling;

import sealspan.assembly.FailureClass;
import sealspan.table.TestRow;

/**
 * Whether a counted as-found round, or all those of a site visit together, found a fouling failure.
 * The rule is {@link #RULE}; which of the three a failed round is was decided once, by the fold of
 * its history, and is read here.
 */
public enum FoulingFailure {
  /** A failure by debris, deposit or scale. */
  FOULED,
  /** A pass, or a failure by damage. */
  NOT_FOULED,
  /** A failure of which what was recorded does not tell. */
  UNCLASSIFIED;

  /** The rule in words, as answers show it. */
  public static final String RULE =
      "A fouling failure is a failed round whose recorded mechanism is debris, deposit or scale;"
          + " only where no mechanism was recorded, one that passed after cleaning or flushing"
          + " alone. Damage without debris is not.";

  /** What a round was; to be asked of rounds that count in failure rates only. */
  public static FoulingFailure of(TestRow round) {
    if (!failed(round)) {
      return NOT_FOULED;
    }
    if (FailureClass.FOULING.name().equals(round.failureClass())) {
      return FOULED;
    }
    return FailureClass.DAMAGE.name().equals(round.failureClass()) ? NOT_FOULED : UNCLASSIFIED;
  }

  /** Whether a round failed on performance. */
  public static boolean failed(TestRow round) {
    return round.outcome().equals("FAILED");
  }

  /** What a visit was, from two of its rounds: fouled if either was, else unclassified if so. */
  public FoulingFailure and(FoulingFailure other) {
    if (this == FOULED || other == FOULED) {
      return FOULED;
    }
    return this == UNCLASSIFIED || other == UNCLASSIFIED ? UNCLASSIFIED : NOT_FOULED;
  }
}
