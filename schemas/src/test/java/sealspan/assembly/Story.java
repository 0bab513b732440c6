package sealspan.assembly;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import sealspan.event.Action;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Mechanism;
import sealspan.event.Moment;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.SiteDescribed;
import sealspan.event.Subject;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Unit;
import sealspan.event.Visit;
import sealspan.event.Visit.SequenceOrigin;

/** Writes the events of one assembly for tests; each is recorded a second after the one before. */
public final class Story {
  /** The assembly of the story. */
  public static final String ASSEMBLY = "A-1";

  public static final ComponentAt CHECK1 = ComponentAt.main(Component.CHECK1);
  public static final ComponentAt CHECK2 = ComponentAt.main(Component.CHECK2);
  public static final ComponentAt RELIEF = ComponentAt.main(Component.RELIEF_VALVE);

  private static final Instant BEGIN = Instant.parse("2024-01-01T00:00:00Z");

  private final List<LoggedEvent> events = new ArrayList<>();

  /** The events so far. */
  public List<LoggedEvent> events() {
    return List.copyOf(events);
  }

  /** The folded history by the shipped criteria. */
  AssemblyHistory history() {
    return AssemblyHistory.of(ASSEMBLY, events, AcceptanceCriteria.shipped());
  }

  /** Takes any event in, under an id. */
  public Story log(String id, AssemblyEvent event) {
    events.add(logged(id, event, BEGIN.plusSeconds(events.size())));
    return this;
  }

  /** An event as the log keeps it. */
  public static LoggedEvent logged(String id, AssemblyEvent event, Instant recordedAt) {
    return new LoggedEvent(
        id,
        "test",
        event,
        null,
        LoggedEvent.ReportedOrigin.NOT_RECORDED,
        recordedAt,
        LoggedEvent.Arrival.LIVE);
  }

  public Story installed(String day, AssemblyType type) {
    return log("install-" + day, installation(day, type, DayMeaning.INSTALLED));
  }

  public Story recordBegins(String day, AssemblyType type) {
    return log("begin-" + day, installation(day, type, DayMeaning.RECORD_BEGINS));
  }

  public static AssemblyInstalled installation(
      String day, AssemblyType type, DayMeaning dayMeaning) {
    return new AssemblyInstalled(
        ASSEMBLY,
        on(day),
        dayMeaning,
        "S-1",
        "P-1",
        null,
        null,
        null,
        null,
        type,
        "maker",
        "model",
        "serial-1",
        null,
        "3/4",
        null,
        null,
        null,
        null);
  }

  /** Describes the site: jurisdiction and zone. */
  public Story site(String day, String jurisdiction, String zone) {
    return log("site-" + day, site(day, null, jurisdiction, zone));
  }

  public static SiteDescribed site(String day, String position, String jurisdiction, String zone) {
    return new SiteDescribed(
        "S-1",
        on(day),
        position,
        "Mill",
        null,
        null,
        null,
        1.0,
        2.0,
        null,
        zone,
        jurisdiction,
        null,
        null,
        null,
        null,
        null,
        null);
  }

  /** A round of a visit that is named by its day. */
  public Story test(String id, String day, int sequence, Phase phase, Reading... readings) {
    return log(id, report(day, sequence, phase, readings).event());
  }

  public Story test(String id, Report report) {
    return log(id, report.event());
  }

  public static Report report(String day, int sequence, Phase phase, Reading... readings) {
    Report report = new Report();
    report.when = on(day);
    report.visit = visit(day, sequence);
    report.phase = phase;
    report.readings = Arrays.asList(readings);
    return report;
  }

  public Story repair(String id, String day, int sequence, RepairItem... items) {
    return log(id, repair(day, visit(day, sequence), items));
  }

  public static RepairPerformed repair(String day, Visit visit, RepairItem... items) {
    return new RepairPerformed(
        ASSEMBLY, on(day), visit, null, Arrays.asList(items), List.of(), null, null, null);
  }

  public Story removed(String day, AssemblyRemoved.Reason reason) {
    return log("removed-" + day, new AssemblyRemoved(ASSEMBLY, on(day), reason, null));
  }

  public Story correct(String id, String target, AssemblyEvent replacement) {
    return log(id, new EventCorrected(target, on("2024-01-01"), "clerk", "typing", replacement));
  }

  public Story voided(String id, String target) {
    return log(
        id,
        new EventVoided(
            target, Subject.assembly(ASSEMBLY), on("2024-01-01"), "clerk", "wrong unit"));
  }

  /** Changes the last event. */
  public Story last(UnaryOperator<LoggedEvent> change) {
    events.set(events.size() - 1, change.apply(events.get(events.size() - 1)));
    return this;
  }

  public static RepairItem item(ComponentAt at, Action action) {
    return item(at, action, null, null);
  }

  public static RepairItem item(
      ComponentAt at, Action action, Mechanism mechanism, ReplacementReason reason) {
    return new RepairItem(at, null, mechanism, null, action, reason, List.of());
  }

  public static Reading psi(ComponentAt at, Measure measure, String value) {
    return Reading.measured(at, measure, new Quantity(value, Unit.PSI));
  }

  /** The two checks of a double check assembly in the direction of flow. */
  public static Reading[] dc(String check1, String check2) {
    return new Reading[] {
      psi(CHECK1, Measure.DIRECTION_OF_FLOW, check1), psi(CHECK2, Measure.DIRECTION_OF_FLOW, check2)
    };
  }

  /** Relief opening, check 1 drop and check 2 of a reduced pressure assembly. */
  public static Reading[] rp(String relief, String check1, Observation check2) {
    return new Reading[] {
      psi(RELIEF, Measure.OPENING_POINT, relief),
      psi(CHECK1, Measure.STATIC_DROP, check1),
      Reading.seen(CHECK2, Measure.BACKPRESSURE_TIGHTNESS, check2)
    };
  }

  public static Visit visit(String id, int sequence) {
    return new Visit(id, null, sequence, SequenceOrigin.GIVEN);
  }

  public static Moment on(String day) {
    return Moment.on(LocalDate.parse(day));
  }

  public static LocalDate day(String day) {
    return LocalDate.parse(day);
  }
}
