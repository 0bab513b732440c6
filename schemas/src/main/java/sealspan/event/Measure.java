package sealspan.event;

/** What a reading or observation of a component measures. */
public enum Measure {
  /** Differential across a check in the direction of flow. */
  DIRECTION_OF_FLOW,
  /** Static pressure drop across check 1 of a reduced pressure assembly. */
  STATIC_DROP,
  /** Differential at which a relief valve or air inlet begins to open. */
  OPENING_POINT,
  /** Whether an air inlet opens fully. */
  FULL_OPENING,
  /** Whether a check holds tight against backpressure. */
  BACKPRESSURE_TIGHTNESS,
  /** Whether a shutoff valve, test cock or body closes or holds tight. */
  TIGHTNESS,
  /** The buffer as written on the form: check 1 drop less relief opening; derived, never alone. */
  BUFFER,
  /** Whether a bypass meter registers at low flow. */
  METER_REGISTERS,
  /** Vertical separation of an air gap. */
  SEPARATION
}
