package sealspan.event;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;

/**
 * When something happened, to the precision that was recorded.
 *
 * @param day day in the site's calendar, never null
 * @param minuteOfDay minutes since local midnight, 0 to 1439; null where only the date was recorded
 * @param timeZone IANA zone id of the site; null where not recorded
 */
public record Moment(
    @Means("day in the site's calendar") LocalDate day,
    @Means("minutes since local midnight, 0 to 1439; none: date only") Integer minuteOfDay,
    @Means("IANA time zone of the site") String timeZone) {

  public Moment {
    if (day == null) {
      throw new IllegalArgumentException("A moment needs a day.");
    }
    if (minuteOfDay != null && (minuteOfDay < 0 || minuteOfDay > 1439)) {
      throw new IllegalArgumentException("minuteOfDay is 0 to 1439, this is " + minuteOfDay);
    }
  }

  /** A moment of which only the date was recorded. */
  public static Moment on(LocalDate day) {
    return new Moment(day, null, null);
  }

  /** The instant, taking midnight where no time, and UTC where no zone, was recorded. */
  public Instant instant() {
    LocalTime time = LocalTime.ofSecondOfDay(60L * (minuteOfDay == null ? 0 : minuteOfDay));
    ZoneId zone = timeZone == null ? ZoneOffset.UTC : ZoneId.of(timeZone);
    return day.atTime(time).atZone(zone).toInstant();
  }
}
