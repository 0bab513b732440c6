package sealspan.study.practice;

/** The kinds of seals of the invented fleet; each kind has a true life of its own. */
public enum SealKind {
  CHECK,
  RELIEF,
  AIR_INLET
}
