package sealspan.event;

/**
 * The visit in which a test round or repair was done.
 *
 * @param id id of the visit, never null
 * @param startMinuteOfDay when the visit began, minutes since local midnight
 * @param sequence place of the round or repair in the visit, from 1
 * @param sequenceOrigin whether the source gave the sequence or it was derived from the form
 */
public record Visit(
    @Means("id of the visit") String id,
    @Means("start of the visit, minutes since local midnight") Integer startMinuteOfDay,
    @Means("place of the round or repair in the visit, from 1") int sequence,
    @Means("given by the source, or derived from the blocks of the form")
        SequenceOrigin sequenceOrigin) {

  public Visit {
    if (id == null || id.isBlank()) {
      throw new IllegalArgumentException("A visit needs an id that is not blank.");
    }
  }

  /** Where a sequence comes from. */
  public enum SequenceOrigin {
    GIVEN,
    DERIVED
  }
}
