package sealspan.event;

/** What the test saw (ISO 14224 mode names in brackets, from memory). */
public enum FailureMode {
  /** Internal leak: a check or seat does not hold (INL). */
  INTERNAL_LEAK,
  /** A reading below its limit (AIR). */
  LOW_READING,
  /** A relief valve or air inlet does not open (FTO). */
  FAILED_TO_OPEN,
  /** A valve does not close (FTC). */
  FAILED_TO_CLOSE,
  /** Opens when it should not: a relief valve discharges (SPO). */
  SPURIOUS_DISCHARGE,
  /** External leak (ELP). */
  EXTERNAL_LEAK,
  /** Cracked or broken (STD). */
  STRUCTURAL,
  OTHER,
  UNKNOWN
}
