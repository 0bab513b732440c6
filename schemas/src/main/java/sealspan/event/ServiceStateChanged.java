package sealspan.event;

/** A change between in service and laid up. */
public record ServiceStateChanged(
    @Means("id of the assembly") String assemblyId,
    @Means("from when the state holds") Moment when,
    @Means("the state") State state,
    @Means("remarks; no personal data") String remarks)
    implements AssemblyEvent {

  /** Service states. */
  public enum State {
    IN_SERVICE,
    WINTERISED,
    OFF
  }

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
