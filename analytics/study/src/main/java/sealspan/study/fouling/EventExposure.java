package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.WaterDisturbanceRow;
import sealspan.table.ZoneRows;

/** Events of one kind: each acts from its first day to its last. */
final class EventExposure implements WaterExposure {
  private final String kind;
  private final Map<String, int[][]> spans = new TreeMap<>();

  private EventExposure(String kind) {
    this.kind = kind;
  }

  /** The events of a kind in all zones; those without a day, or that end before it, are not in. */
  static EventExposure of(String kind, List<ZoneRows> zones) {
    EventExposure exposure = new EventExposure(kind);
    for (ZoneRows zone : zones) {
      List<int[]> own = new ArrayList<>();
      for (WaterDisturbanceRow event : zone.disturbances()) {
        if (kind.equals(event.kind()) && event.fromDay() != null) {
          LocalDate until = event.untilDay() == null ? event.fromDay() : event.untilDay();
          if (!until.isBefore(event.fromDay())) {
            own.add(new int[] {(int) event.fromDay().toEpochDay(), (int) until.toEpochDay()});
          }
        }
      }
      own.sort(Comparator.<int[]>comparingInt(span -> span[0]).thenComparingInt(span -> span[1]));
      exposure.spans.put(zone.zoneId(), own.toArray(int[][]::new));
    }
    return exposure;
  }

  @Override
  public String text() {
    return kind;
  }

  @Override
  public boolean isEvent() {
    return true;
  }

  @Override
  public Double between(String zoneId, int afterDay, int lastDay) {
    return daysBetween(zoneId, afterDay, lastDay).length > 0 ? 1.0 : 0.0;
  }

  @Override
  public int[] daysBetween(String zoneId, int afterDay, int lastDay) {
    int[] days = new int[0];
    for (int[] span : spans.getOrDefault(zoneId, new int[0][])) {
      if (span[0] > lastDay) {
        break;
      }
      if (span[1] > afterDay && afterDay < lastDay) {
        days = java.util.Arrays.copyOf(days, days.length + 1);
        days[days.length - 1] = span[0];
      }
    }
    return days;
  }

  @Override
  public String shared(String zoneId, int day) {
    String shared = "before, " + zoneId;
    for (int[] span : spans.getOrDefault(zoneId, new int[0][])) {
      if (span[0] > day) {
        break;
      }
      shared = LocalDate.ofEpochDay(span[0]).toString();
    }
    return shared;
  }

  /** First days of the events of a zone, in order. */
  int[] firstDays(String zoneId) {
    return java.util.Arrays.stream(spans.getOrDefault(zoneId, new int[0][]))
        .mapToInt(span -> span[0])
        .toArray();
  }
}
