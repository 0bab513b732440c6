package sealspan.stats.effect;

/** The two actions that are compared. */
public enum Arm {
  FIRST,
  SECOND
}
