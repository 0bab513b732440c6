package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.WaterSampleRow;
import sealspan.table.ZoneRows;

/**
 * What is on record of the water of all zones.
 *
 * @param zones zones by id, in order
 * @param events exposures by kind of event
 * @param qualities exposures by quality
 * @param firstDay first day of an event or a sample, days since 1970-01-01: before it nobody knows
 *     what was not recorded; {@link Integer#MAX_VALUE} for an empty record
 * @param lastDay last such day; {@link Integer#MIN_VALUE} for an empty record
 */
record WaterRecord(
    List<String> zones,
    List<EventExposure> events,
    List<QualityExposure> qualities,
    int firstDay,
    int lastDay) {
  /** The kinds of events that are looked at. */
  static final List<String> KINDS =
      List.of("MAIN_BREAK", "FLUSHING", "TREATMENT_CHANGE", "SHUTDOWN");

  /** The record of zones that are ordered by id. */
  static WaterRecord of(List<ZoneRows> zones) {
    List<LocalDate> days = new ArrayList<>();
    for (ZoneRows zone : zones) {
      zone.disturbances().stream().map(WaterDisturbanceRow::fromDay).forEach(days::add);
      zone.samples().stream().map(WaterSampleRow::day).forEach(days::add);
    }
    days.removeIf(java.util.Objects::isNull);
    List<QualityExposure> qualities = new ArrayList<>();
    for (WaterQuality quality : WaterQuality.values()) {
      qualities.add(QualityExposure.of(quality, zones));
    }
    return new WaterRecord(
        zones.stream().map(ZoneRows::zoneId).toList(),
        KINDS.stream().map(kind -> EventExposure.of(kind, zones)).toList(),
        qualities,
        days.stream().mapToInt(day -> (int) day.toEpochDay()).min().orElse(Integer.MAX_VALUE),
        days.stream().mapToInt(day -> (int) day.toEpochDay()).max().orElse(Integer.MIN_VALUE));
  }

  /** Another zone to stand in as a control: the next by id; null where there is none. */
  String otherThan(String zoneId) {
    int at = java.util.Collections.binarySearch(zones, zoneId);
    int next = at >= 0 ? at + 1 : -at - 1;
    String other = zones.isEmpty() ? null : zones.get(next % zones.size());
    return zoneId.equals(other) ? null : other;
  }
}
