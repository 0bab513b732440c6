package sealspan.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import sealspan.assembly.StandingEvent;
import sealspan.assembly.StandingEvents;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/** From the events of one water zone to its rows; a pure function. */
public final class ZoneTables {
  private ZoneTables() {}

  /** The rows of one zone from its events, in any order and with any repetition. */
  public static ZoneRows of(String zoneId, Collection<LoggedEvent> events, long revision) {
    List<WaterSampleRow> samples = new ArrayList<>();
    List<WaterDisturbanceRow> disturbances = new ArrayList<>();
    for (StandingEvent event : StandingEvents.of(Subject.zone(zoneId), events)) {
      if (event.event() instanceof WaterSampled sample) {
        samples.add(sample(event.id(), sample));
      } else if (event.event() instanceof WaterDisturbed disturbed) {
        disturbances.add(disturbance(event.id(), disturbed));
      }
    }
    return new ZoneRows(zoneId, revision, samples, disturbances);
  }

  private static WaterSampleRow sample(String eventId, WaterSampled sample) {
    return new WaterSampleRow(
        sample.zoneId(),
        eventId,
        sample.when().day(),
        sample.stationId(),
        sample.characteristic(),
        sample.fraction(),
        sample.value(),
        sample.unit(),
        Text.of(sample.detection()),
        sample.detectionLimit(),
        sample.detectionLimitUnit());
  }

  private static WaterDisturbanceRow disturbance(String eventId, WaterDisturbed disturbed) {
    return new WaterDisturbanceRow(
        disturbed.zoneId(),
        eventId,
        Text.of(disturbed.kind()),
        disturbed.when().day(),
        disturbed.until(),
        disturbed.latitude(),
        disturbed.longitude(),
        disturbed.remarks());
  }
}
