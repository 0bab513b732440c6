package sealspan.event;

/** One result of one water sample. */
public record WaterSampled(
    @Means("water zone") String zoneId,
    @Means("day and time of sampling") Moment when,
    @Means("monitoring location id") String stationId,
    @Means("activity (sample) id") String activityId,
    @Means("result id") String resultId,
    @Means("what was measured, in the source's words") String characteristic,
    @Means("total, dissolved, ...") String fraction,
    @Means("decimal text as entered; none where not detected") String value,
    @Means("unit in the source's words") String unit,
    @Means("whether a number was found") Detection detection,
    @Means("limit that a non-detect lies below, decimal text") String detectionLimit,
    @Means("unit of the limit") String detectionLimitUnit,
    @Means("analytical method id") String methodId,
    @Means("status of the result") String status,
    @Means("provider id") String providerId)
    implements AssemblyEvent {

  /** Whether a number was found; anything but MEASURED is censored, not zero. */
  public enum Detection {
    MEASURED,
    NOT_DETECTED,
    BELOW_QUANTIFICATION,
    ABOVE_QUANTIFICATION
  }

  @Override
  public Subject subject() {
    return Subject.zone(zoneId);
  }
}
