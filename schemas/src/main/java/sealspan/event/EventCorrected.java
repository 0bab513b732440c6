package sealspan.event;

/**
 * Puts another content in the place of an earlier event's, under the earlier event's id. The
 * replacement has the same subject; a report filed under the wrong assembly is voided and entered
 * anew.
 */
public record EventCorrected(
    @Means("id of the event that is corrected") String targetEventId,
    @Means("when the correction was decided") Moment when,
    @Means("id of who decided it") String by,
    @Means("why") String why,
    @Means("the content that holds instead") AssemblyEvent replacement)
    implements AssemblyEvent {

  public EventCorrected {
    if (replacement instanceof EventCorrected || replacement instanceof EventVoided) {
      throw new IllegalArgumentException("A correction puts a plain event in place of another.");
    }
  }

  @Override
  public Subject subject() {
    return replacement.subject();
  }
}
