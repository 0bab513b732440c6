package sealspan.event;

/** What was seen at a component, beside or instead of a number. */
public enum Observation {
  /** A number was read. */
  MEASURED,
  CLOSED_TIGHT,
  LEAKED,
  OPENED,
  DID_NOT_OPEN,
  /** The component was not reached or not tested: unknown, never passed. */
  NOT_TESTED
}
