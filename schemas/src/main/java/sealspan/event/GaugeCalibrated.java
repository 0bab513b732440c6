package sealspan.event;

import java.time.LocalDate;

/** A calibration of a test gauge. */
public record GaugeCalibrated(
    @Means("gauge id or serial") String gaugeId,
    @Means("day of calibration") Moment when,
    @Means("last day on which it counts; none: the programme's interval applies")
        LocalDate validUntil,
    @Means("greatest error found before adjustment") Quantity errorAsFound,
    @Means("greatest error left after adjustment") Quantity errorAsLeft,
    @Means("laboratory id") String laboratoryId,
    @Means("kept for potable water only") Boolean potableOnly)
    implements AssemblyEvent {

  @Override
  public Subject subject() {
    return Subject.gauge(gaugeId);
  }
}
