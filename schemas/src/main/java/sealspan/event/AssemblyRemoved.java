package sealspan.event;

/** An assembly taken out of its position. */
public record AssemblyRemoved(
    @Means("id of the assembly") String assemblyId,
    @Means("day and time") Moment when,
    @Means("why it was removed") Reason reason,
    @Means("remarks; no personal data") String remarks)
    implements AssemblyEvent {

  /** Why an assembly was removed. */
  public enum Reason {
    REPLACED_BECAUSE_FAILED,
    REPLACED_AS_SCHEDULED,
    HAZARD_ELIMINATED,
    DEMOLISHED,
    RELOCATED,
    STOLEN,
    OTHER
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
