package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.Moment;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Visit;

/**
 * The canonical order of one assembly's events: valid day, visit start, visit id, sequence in the
 * visit, event id. Of events outside visits whose time was not recorded, a removal closes the day
 * (unless the unit was installed anew that day) and all others open it.
 */
final class EventOrder {
  private static final int BEFORE_ALL = -2;
  private static final int OPENS_DAY = -1;
  private static final int CLOSES_DAY = 24 * 60;

  private EventOrder() {}

  private record Keyed(
      StandingEvent event, LocalDate day, int start, String visitId, int sequence) {}

  /** A visit that goes on for days has a start on each. */
  private record VisitDay(String visitId, LocalDate day) {}

  private static final Comparator<Keyed> CANONICAL =
      (a, b) -> {
        int by = a.day.compareTo(b.day);
        by = by != 0 ? by : Integer.compare(a.start, b.start);
        by = by != 0 ? by : a.visitId.compareTo(b.visitId);
        by = by != 0 ? by : Integer.compare(a.sequence, b.sequence);
        return by != 0 ? by : a.event.id().compareTo(b.event.id());
      };

  /** The events in canonical order. */
  static List<StandingEvent> of(List<StandingEvent> events) {
    Map<VisitDay, Integer> starts = new HashMap<>();
    LocalDate firstInstalled = null;
    for (StandingEvent each : events) {
      AssemblyEvent event = each.event();
      String visit = visitId(event);
      if (visit != null) {
        Integer start = start(event);
        if (start != null) {
          starts.merge(new VisitDay(visit, event.when().day()), start, Math::min);
        }
      }
      if (event instanceof AssemblyInstalled
          && (firstInstalled == null || event.when().day().isBefore(firstInstalled))) {
        firstInstalled = event.when().day();
      }
    }
    List<Keyed> keyed = new ArrayList<>(events.size());
    for (StandingEvent each : events) {
      keyed.add(key(each, starts, events, firstInstalled));
    }
    keyed.sort(CANONICAL);
    List<StandingEvent> ordered = new ArrayList<>(events.size());
    keyed.forEach(k -> ordered.add(k.event));
    return ordered;
  }

  private static Keyed key(
      StandingEvent each,
      Map<VisitDay, Integer> starts,
      List<StandingEvent> events,
      LocalDate firstInstalled) {
    AssemblyEvent event = each.event();
    LocalDate day = event.when().day();
    String visit = visitId(event);
    if (visit != null) {
      int start = starts.getOrDefault(new VisitDay(visit, day), OPENS_DAY);
      return new Keyed(each, day, start, visit, sequence(event));
    }
    Integer minute = event.when().minuteOfDay();
    int start = minute != null ? minute : OPENS_DAY;
    if (minute == null && event instanceof AssemblyRemoved) {
      start = installedAnew(day, firstInstalled, events) ? BEFORE_ALL : CLOSES_DAY;
    }
    return new Keyed(each, day, start, "", 0);
  }

  private static boolean installedAnew(
      LocalDate day, LocalDate firstInstalled, List<StandingEvent> events) {
    if (firstInstalled == null || !day.isAfter(firstInstalled)) {
      return false;
    }
    for (StandingEvent other : events) {
      if (other.event() instanceof AssemblyInstalled && other.event().when().day().equals(day)) {
        return true;
      }
    }
    return false;
  }

  /** The visit that a round or repair belongs to: where none is recorded, its day is one visit. */
  static String visitId(AssemblyEvent event) {
    Visit visit = visit(event);
    if (visit != null) {
      return visit.id();
    }
    return event instanceof TestPerformed || event instanceof RepairPerformed
        ? "day " + event.when().day()
        : null;
  }

  private static Visit visit(AssemblyEvent event) {
    if (event instanceof TestPerformed test) {
      return test.visit();
    }
    return event instanceof RepairPerformed repair ? repair.visit() : null;
  }

  private static Integer start(AssemblyEvent event) {
    Visit visit = visit(event);
    Moment when = event.when();
    return visit != null && visit.startMinuteOfDay() != null
        ? visit.startMinuteOfDay()
        : when.minuteOfDay();
  }

  /** Place in the visit: as found, repair, as left, where no sequence is recorded. */
  static int sequence(AssemblyEvent event) {
    Visit visit = visit(event);
    if (visit != null) {
      return visit.sequence();
    }
    if (event instanceof RepairPerformed) {
      return 2;
    }
    return ((TestPerformed) event).phase() == Phase.AS_LEFT ? 3 : 1;
  }
}
