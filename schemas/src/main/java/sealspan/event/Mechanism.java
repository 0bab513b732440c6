package sealspan.event;

/** What was found on opening. The first three make a fouling failure (definitions). */
public enum Mechanism {
  /** Loose foreign matter: sand, grit, rust flakes, filings, paper. */
  DEBRIS,
  /** Iron, manganese or biological deposit. */
  DEPOSIT,
  /** Hard mineral scale. */
  SCALE,
  SEAL_WORN,
  SEAL_CUT,
  COMPRESSION_SET,
  ELASTOMER_SWOLLEN,
  SEAT_DAMAGED,
  SPRING_WEAK,
  SPRING_BROKEN,
  GUIDE_WORN,
  DIAPHRAGM_TORN,
  ORING_DAMAGED,
  CORROSION,
  FREEZE_DAMAGE,
  WRONG_PART,
  NOTHING_FOUND,
  OTHER,
  UNKNOWN
}
