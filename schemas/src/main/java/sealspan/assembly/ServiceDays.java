package sealspan.assembly;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.ServiceStateChanged;

/**
 * The second clock of a history: days in service. Before the first event that tells, an assembly is
 * taken to be in service; a day has the state that the last event of that day leaves.
 */
public final class ServiceDays {
  private final NavigableMap<LocalDate, Boolean> inServiceFrom = new TreeMap<>();

  private ServiceDays() {}

  /**
   * The clock of an assembly.
   *
   * @param ordered its events that hold, in canonical order
   */
  public static ServiceDays of(List<StandingEvent> ordered) {
    ServiceDays days = new ServiceDays();
    for (StandingEvent event : ordered) {
      LocalDate day = event.event().when().day();
      if (event.event() instanceof ServiceStateChanged changed && changed.state() != null) {
        days.inServiceFrom.put(day, changed.state() == ServiceStateChanged.State.IN_SERVICE);
      } else if (event.event() instanceof AssemblyRemoved) {
        days.inServiceFrom.put(day, false);
      } else if (event.event() instanceof AssemblyInstalled) {
        days.inServiceFrom.put(day, true);
      }
    }
    return days;
  }

  /** Days in service from a day on and before another: at most the days between the two. */
  public int between(LocalDate from, LocalDate to) {
    long inService = 0;
    LocalDate since = from;
    Map.Entry<LocalDate, Boolean> before = inServiceFrom.floorEntry(from);
    boolean running = before == null || before.getValue();
    for (Map.Entry<LocalDate, Boolean> change : inServiceFrom.tailMap(from, false).entrySet()) {
      if (!change.getKey().isBefore(to)) {
        break;
      }
      inService += running ? ChronoUnit.DAYS.between(since, change.getKey()) : 0;
      since = change.getKey();
      running = change.getValue();
    }
    inService += running && since.isBefore(to) ? ChronoUnit.DAYS.between(since, to) : 0;
    return (int) inService;
  }
}
