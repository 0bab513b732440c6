package sealspan.event;

/**
 * One reading or observation of one component in one test round.
 *
 * @param at the component
 * @param measure what was measured
 * @param observation what was seen; MEASURED where a number was read
 * @param value the number, where one was read
 * @param resolution the smallest step that the gauge was read to, in the unit of the value
 */
public record Reading(
    @Means("the component") ComponentAt at,
    @Means("what was measured") Measure measure,
    @Means("what was seen; MEASURED where a number was read") Observation observation,
    @Means("the number, where one was read") Quantity value,
    @Means("smallest step that the gauge was read to, in the unit of the value")
        String resolution) {

  public Reading {
    if (at == null || measure == null || observation == null) {
      throw new IllegalArgumentException(
          "A reading needs its component, its measure and what was seen.");
    }
    if (observation == Observation.MEASURED && value == null) {
      throw new IllegalArgumentException("A measured reading of " + at.text() + " has no number.");
    }
  }

  /** A number read at a component. */
  public static Reading measured(ComponentAt at, Measure measure, Quantity value) {
    return new Reading(at, measure, Observation.MEASURED, value, null);
  }

  /** An observation without a number. */
  public static Reading seen(ComponentAt at, Measure measure, Observation observation) {
    return new Reading(at, measure, observation, null, null);
  }
}
