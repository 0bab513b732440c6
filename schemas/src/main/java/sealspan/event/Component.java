package sealspan.event;

/** The components that tests and repairs speak of. */
public enum Component {
  CHECK1,
  CHECK2,
  RELIEF_VALVE,
  AIR_INLET,
  SHUTOFF1,
  SHUTOFF2,
  TEST_COCKS,
  BODY,
  BYPASS_METER,
  AIR_GAP,
  /** The whole assembly, for actions such as its replacement. */
  WHOLE
}
