package sealspan.event;

import java.time.LocalDate;

/** Something that stirred or changed the water of a zone. */
public record WaterDisturbed(
    @Means("water zone") String zoneId,
    @Means("start") Moment when,
    @Means("last day; none: one day or still going on") LocalDate until,
    @Means("id of the disturbance in its source") String disturbanceId,
    @Means("what happened") Kind kind,
    @Means("WGS84 latitude, degrees") Double latitude,
    @Means("WGS84 longitude, degrees") Double longitude,
    @Means("what else is known, in words") String remarks)
    implements AssemblyEvent {

  /** Kinds of disturbances. */
  public enum Kind {
    MAIN_BREAK,
    FLUSHING,
    TREATMENT_CHANGE,
    SHUTDOWN,
    CONSTRUCTION,
    OTHER
  }

  @Override
  public Subject subject() {
    return Subject.zone(zoneId);
  }
}
