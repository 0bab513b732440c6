package sealspan.event;

/** What was done to a component. */
public enum Action {
  NONE(SealEffect.KEPT),
  FLUSHED(SealEffect.KEPT),
  CLEANED(SealEffect.KEPT),
  DISC_TURNED(SealEffect.KEPT),
  ADJUSTED(SealEffect.KEPT),
  DISC_REPLACED(SealEffect.RENEWED),
  DIAPHRAGM_REPLACED(SealEffect.RENEWED),
  ORING_REPLACED(SealEffect.KEPT),
  SPRING_REPLACED(SealEffect.KEPT),
  GUIDE_REPLACED(SealEffect.KEPT),
  SEAT_REPLACED(SealEffect.KEPT),
  OTHER_PART_REPLACED(SealEffect.KEPT),
  MODULE_REPLACED(SealEffect.RENEWED),
  FULL_RUBBER_KIT(SealEffect.RENEWED),
  REBUILT(SealEffect.RENEWED),
  BODY_REPAIRED(SealEffect.KEPT),
  ASSEMBLY_REPLACED(SealEffect.RENEWED);

  /** What an action does to the seal at its position. */
  public enum SealEffect {
    KEPT,
    RENEWED
  }

  private final SealEffect sealEffect;

  Action(SealEffect sealEffect) {
    this.sealEffect = sealEffect;
  }

  /** Whether the action is a seal replacement in the sense of the definitions. */
  public SealEffect sealEffect() {
    return sealEffect;
  }
}
