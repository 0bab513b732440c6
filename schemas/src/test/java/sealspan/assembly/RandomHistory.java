package sealspan.assembly;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sealspan.event.Action;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.GaugeCalibrated;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Mechanism;
import sealspan.event.Moment;
import sealspan.event.Money;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.ServiceStateChanged;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.IssuedVerdict;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.event.TestPerformed.ShutoffState;
import sealspan.event.TesterCertified;
import sealspan.event.Visit;
import sealspan.event.Visit.SequenceOrigin;
import sealspan.event.VisitAttempted;

/**
 * Invented histories with everything that real logs have: failures, procedures that stop, repairs
 * that do not take, moves, corrections, voids, copies, two contents under one id. The same seed
 * gives the same history.
 */
public final class RandomHistory {
  private static final Instant BEGIN = Instant.parse("2024-01-01T00:00:00Z");

  private final Random random;
  private final String assemblyId;
  private final AssemblyType type;
  private final List<LoggedEvent> events = new ArrayList<>();
  private LocalDate day;
  private int number;

  private RandomHistory(long seed, String assemblyId) {
    this.random = new Random(seed);
    this.assemblyId = assemblyId;
    AssemblyType[] types = AssemblyType.values();
    this.type = chance(.85) ? types[random.nextInt(5)] : types[random.nextInt(types.length)];
    this.day = LocalDate.of(2008, 1, 1).plusDays(random.nextInt(2000));
  }

  /** The events of an assembly and of its site, gauges and testers, in the order of the log. */
  public static List<LoggedEvent> of(long seed, String assemblyId) {
    RandomHistory history = new RandomHistory(seed, assemblyId);
    history.write();
    return history.events;
  }

  private boolean chance(double share) {
    return random.nextDouble() < share;
  }

  private void log(AssemblyEvent event) {
    Instant recorded = BEGIN.plusSeconds(random.nextInt(4) + events.size() * 2L);
    events.add(Story.logged(assemblyId + "-" + number++, event, recorded));
    if (chance(.03)) {
      LoggedEvent copy = events.get(random.nextInt(events.size()));
      events.add(copy.recorded(recorded.plusSeconds(1)));
    }
  }

  private void write() {
    log(site("S-" + random.nextInt(3), day));
    install(chance(.6) ? DayMeaning.INSTALLED : DayMeaning.RECORD_BEGINS);
    for (int g = 0; g < 4; g++) {
      log(
          new GaugeCalibrated(
              "G-1", Moment.on(day.plusDays(g * 400L)), null, null, null, null, null));
    }
    log(new TesterCertified("T-1", Moment.on(day), day.plusYears(6), "7", null, null, null));
    int visits = 2 + random.nextInt(12);
    for (int i = 0; i < visits; i++) {
      day = day.plusDays(chance(.1) ? random.nextInt(3) : 300 + random.nextInt(130));
      between();
      visit("V-" + i);
    }
    amend();
  }

  private void install(DayMeaning meaning) {
    log(
        new AssemblyInstalled(
            assemblyId,
            Moment.on(day),
            meaning,
            "S-" + random.nextInt(3),
            "P",
            null,
            null,
            null,
            chance(.1) ? 2 : null,
            type,
            "maker",
            "model",
            "serial",
            null,
            "1",
            null,
            null,
            null,
            null));
  }

  private SiteDescribed site(String id, LocalDate from) {
    String jurisdiction = chance(.7) ? null : chance(.7) ? "iowa-city" : "Springfield";
    return new SiteDescribed(
        id,
        Moment.on(from),
        null,
        "Mill",
        null,
        null,
        null,
        1.0,
        2.0,
        null,
        "Z-" + random.nextInt(3),
        jurisdiction,
        null,
        null,
        null,
        null,
        null,
        null);
  }

  private void between() {
    if (chance(.06)) {
      log(new AssemblyRemoved(assemblyId, Moment.on(day), AssemblyRemoved.Reason.RELOCATED, null));
      if (chance(.8)) {
        install(DayMeaning.INSTALLED);
      }
    }
    if (chance(.1)) {
      log(
          new ServiceStateChanged(
              assemblyId, Moment.on(day), any(ServiceStateChanged.State.values()), null));
    }
    if (chance(.1)) {
      log(
          new VisitAttempted(
              assemblyId, Moment.on(day), "W", VisitAttempted.Reason.NO_ACCESS, "T-1", null));
    }
    if (chance(.1)) {
      log(site("S-" + random.nextInt(3), day));
    }
  }

  private void visit(String id) {
    int sequence = 1;
    boolean repaired = false;
    if (!chance(.05)) {
      test(id, sequence++, Phase.AS_FOUND);
    }
    for (int round = 0; round < 2 && chance(.4); round++) {
      repair(id, sequence++);
      repaired = true;
      if (chance(.85)) {
        test(id, sequence++, Phase.AS_LEFT);
      }
    }
    if (repaired && chance(.5)) {
      log(
          new JobCosted(
              assemblyId,
              Moment.on(day),
              id,
              null,
              true,
              new Money(random.nextInt(9999), "XTS"),
              null,
              null,
              null));
    }
  }

  private Moment when() {
    return chance(.5) ? Moment.on(day) : new Moment(day, 480 + random.nextInt(400), null);
  }

  private Visit visitOf(String id, int sequence) {
    return chance(.05)
        ? null
        : new Visit(id, chance(.5) ? 500 : null, sequence, SequenceOrigin.GIVEN);
  }

  private void test(String id, int sequence, Phase phase) {
    Report report = new Report();
    report.assemblyId = assemblyId;
    report.when = when();
    report.visit = visitOf(id, sequence);
    report.number = chance(.5) ? "R-" + number : null;
    report.phase = chance(.05) ? null : phase;
    report.purpose = chance(.75) ? Purpose.ROUTINE : chance(.2) ? null : any(Purpose.values());
    report.conduct = chance(.03) ? Conduct.NOT_TESTABLE : Conduct.COMPLETED;
    report.testerId = "T-1";
    report.gaugeId = chance(.8) ? "G-1" : null;
    report.downstreamShutoff = chance(.03) ? ShutoffState.LEAKED : null;
    report.flushedToPass = chance(.04) ? true : null;
    report.issued = chance(.4) ? any(IssuedVerdict.values()) : null;
    List<Reading> readings = new ArrayList<>();
    for (ComponentAt at : AssemblyParts.tested(type, 1)) {
      Reading reading = reading(at);
      if (reading.observation() == Observation.NOT_TESTED) {
        report.conduct = Conduct.STOPPED_AT_DEFICIENCY;
        break;
      }
      readings.add(reading);
    }
    report.readings = readings;
    log(report.event());
  }

  private Reading reading(ComponentAt at) {
    boolean good = chance(.85);
    if (chance(.04)) {
      return Reading.seen(at, Measure.DIRECTION_OF_FLOW, Observation.NOT_TESTED);
    }
    boolean reduced = AssemblyParts.has(type, 1, Story.RELIEF);
    return switch (at.component()) {
      case RELIEF_VALVE -> Story.psi(at, Measure.OPENING_POINT, good ? "2.4" : "1.7");
      case AIR_INLET -> Story.psi(at, Measure.OPENING_POINT, good ? "1.4" : "0.7");
      case CHECK1 ->
          reduced
              ? Story.psi(at, Measure.STATIC_DROP, good ? tenths(60) : tenths(40))
              : Story.psi(at, Measure.DIRECTION_OF_FLOW, good ? tenths(11) : tenths(2));
      default ->
          reduced
              ? Reading.seen(
                  at,
                  Measure.BACKPRESSURE_TIGHTNESS,
                  good ? Observation.CLOSED_TIGHT : Observation.LEAKED)
              : Story.psi(at, Measure.DIRECTION_OF_FLOW, good ? tenths(12) : tenths(3));
    };
  }

  private String tenths(int from) {
    int value = from + random.nextInt(8);
    return value / 10 + "." + value % 10;
  }

  private void repair(String id, int sequence) {
    List<ComponentAt> parts = AssemblyParts.tested(type, 1);
    List<RepairItem> items = new ArrayList<>();
    for (int i = random.nextInt(2); i >= 0 && !parts.isEmpty(); i--) {
      ComponentAt at =
          chance(.08) ? AssemblyHistory.WHOLE : parts.get(random.nextInt(parts.size()));
      items.add(
          Story.item(
              at,
              any(Action.values()),
              chance(.5) ? any(Mechanism.values()) : null,
              chance(.6) ? any(ReplacementReason.values()) : null));
    }
    log(
        new RepairPerformed(
            assemblyId, when(), visitOf(id, sequence), null, items, List.of(), null, null, null));
  }

  private void amend() {
    for (int i = random.nextInt(4); i > 0; i--) {
      LoggedEvent target = events.get(random.nextInt(events.size()));
      LoggedEvent other = events.get(random.nextInt(events.size()));
      boolean plain =
          !(other.event() instanceof EventCorrected) && !(other.event() instanceof EventVoided);
      if (chance(.5)) {
        log(
            new EventVoided(
                target.id(), target.event().subject(), Moment.on(day), "clerk", "number " + i));
      } else if (plain && other.event().subject().equals(target.event().subject())) {
        log(new EventCorrected(target.id(), Moment.on(day), "clerk", "n" + i, other.event()));
        if (chance(.1)) {
          events.add(Story.logged(target.id(), other.event(), BEGIN.plusSeconds(9_999)));
        }
      }
    }
  }

  private <T> T any(T[] values) {
    return values[random.nextInt(values.length)];
  }
}
