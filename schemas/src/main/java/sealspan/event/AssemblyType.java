package sealspan.event;

/** The types of backflow preventers (trade names; product standards named from memory). */
public enum AssemblyType {
  /** Double check (ASSE 1015). */
  DC,
  /** Reduced pressure principle (ASSE 1013). */
  RP,
  /** Double check detector, with a whole double check as bypass (ASSE 1048). */
  DCDA,
  /** Double check detector type II, with a single check as bypass (ASSE 1048). */
  DCDA_II,
  /** Reduced pressure detector, with a whole reduced pressure assembly as bypass (ASSE 1047). */
  RPDA,
  /** Reduced pressure detector type II, with a single check as bypass (ASSE 1047). */
  RPDA_II,
  /** Pressure vacuum breaker (ASSE 1020). */
  PVB,
  /** Spill-resistant pressure vacuum breaker (ASSE 1056). */
  SVB,
  /** Atmospheric vacuum breaker (ASSE 1001): inspected, never tested. */
  AVB,
  /** Air gap (ASME A112.1.2): inspected and measured, never tested. */
  AG
}
