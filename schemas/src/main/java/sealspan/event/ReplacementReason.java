package sealspan.event;

/** Why a seal was replaced. */
public enum ReplacementReason {
  FAILED,
  WHILE_OPEN,
  SCHEDULED,
  DAMAGED_IN_WORK
}
