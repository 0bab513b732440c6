package sealspan.event;

/** A visit on which no test could be made. */
public record VisitAttempted(
    @Means("id of the assembly") String assemblyId,
    @Means("day and time") Moment when,
    @Means("visit id") String visitId,
    @Means("why no test was made") Reason reason,
    @Means("tester id") String testerId,
    @Means("remarks; no personal data") String remarks)
    implements AssemblyEvent {

  /** Why no test was made. */
  public enum Reason {
    NO_ACCESS,
    REFUSED,
    PARTS_AWAITED,
    NOT_FOUND,
    OTHER
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
