package sealspan.study.practice;

import java.time.LocalDate;
import sealspan.event.ComponentAt;
import sealspan.event.Means;

/** What an action on a component truly did. */
public record TrueAction(
    @Means("assembly id") String assemblyId,
    @Means("component") ComponentAt component,
    @Means("day") LocalDate day,
    @Means("what was done to the seal") Deed deed,
    @Means("what truly was the matter") SealState state,
    @Means("virtual age before, days") double virtualAgeBeforeDays,
    @Means("virtual age after, days") double virtualAgeAfterDays,
    @Means("whether it held at the retest of the same visit") boolean held,
    @Means(
            "probability that the seal came to be replaced, as far as it was a choice; none: it was not")
        Double replaceProbability) {

  /** What was done to a seal. */
  public enum Deed {
    CLEANED,
    REPLACED,
    FLUSHED
  }
}
