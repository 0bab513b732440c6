package sealspan.event;

/** Takes an earlier event back: it counts as if it had never been recorded. */
public record EventVoided(
    @Means("id of the event that is taken back") String targetEventId,
    @Means("what that event is about") Subject about,
    @Means("when it was decided") Moment when,
    @Means("id of who decided it") String by,
    @Means("why") String why)
    implements AssemblyEvent {

  @Override
  public Subject subject() {
    return about;
  }
}
