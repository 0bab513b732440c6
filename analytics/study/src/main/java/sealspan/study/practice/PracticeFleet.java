package sealspan.study.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sealspan.event.AssemblyEvent;
import sealspan.event.LoggedEvent;

/**
 * An invented fleet: all its events, and the truth behind them. Everything follows from the
 * parameters; the same position gives the same events whatever the size of the fleet.
 *
 * <p>Ids are those that an import of the same reports gives ({@link sealspan.event.NaturalKey}), so
 * a repeated report has the id of the first, and one with other content under the same number too.
 */
public final class PracticeFleet {
  private final PracticeParameters parameters;
  private final ZoneWater[] waters;

  public PracticeFleet(PracticeParameters parameters) {
    this.parameters = parameters;
    this.waters = new ZoneWater[parameters.town().zones()];
    for (int zone = 0; zone < waters.length; zone++) {
      waters[zone] = new ZoneWater(parameters, zone);
    }
  }

  public PracticeParameters parameters() {
    return parameters;
  }

  /**
   * All events: first those of the water zones, then position by position, each in the order of
   * arrival, with the crew and the site before the first position that needs them. The stream is
   * ordered; {@code parallel()} makes it faster and changes nothing else.
   */
  public Stream<LoggedEvent> events() {
    return Stream.concat(
        zoneEvents().stream(),
        IntStream.range(0, parameters.positions()).boxed().flatMap(i -> eventsFrom(i).stream()));
  }

  /** Disturbances and water samples of all zones. */
  public List<LoggedEvent> zoneEvents() {
    List<AssemblyEvent> events = new ArrayList<>();
    for (ZoneWater water : waters) {
      events.addAll(water.events());
    }
    return filed(events);
  }

  /** The events of one position alone, in the order of arrival. */
  public List<LoggedEvent> eventsAt(int position) {
    return new PositionLife(parameters, position, waters).events();
  }

  /** The truth behind one position. */
  public PositionTruth truthAt(int position) {
    return new PositionLife(parameters, position, waters).truth();
  }

  /** The truth behind every position, in order. */
  public Stream<PositionTruth> truths() {
    return IntStream.range(0, parameters.positions()).mapToObj(this::truthAt);
  }

  private List<LoggedEvent> eventsFrom(int position) {
    Site site = Site.of(parameters, position);
    List<AssemblyEvent> before = new ArrayList<>();
    if (position % parameters.town().positionsPerTester() == 0) {
      before.addAll(new Crew(parameters, Crew.of(parameters, position)).events());
    }
    if (position == site.first()) {
      before.add(SiteCard.of(parameters, site));
    }
    List<LoggedEvent> all = filed(before);
    all.addAll(eventsAt(position));
    return all;
  }

  private List<LoggedEvent> filed(List<AssemblyEvent> events) {
    ReportDesk desk = new ReportDesk(parameters);
    for (AssemblyEvent event : events) {
      int day = (int) event.when().day().toEpochDay();
      desk.file(event, Math.max(day, parameters.beginDay()));
    }
    return desk.inOrderOfArrival();
  }
}
