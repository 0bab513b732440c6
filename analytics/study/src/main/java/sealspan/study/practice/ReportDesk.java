package sealspan.study.practice;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.NaturalKey;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.Subject;
import sealspan.event.TestPerformed;
import sealspan.event.Visit;
import sealspan.study.practice.Draws.Purpose;

/**
 * What becomes of reports on their way in: they come late or twice, with slips that are corrected,
 * for the wrong assembly, or again with another content.
 */
final class ReportDesk {
  private static final String CLERK = "clerk-1";
  private static final long DAY_SECONDS = 86_400;

  private final PracticeParameters parameters;
  private final List<LoggedEvent> out = new ArrayList<>();

  ReportDesk(PracticeParameters parameters) {
    this.parameters = parameters;
  }

  /** Takes in an event that nothing happens to on the way. */
  void file(AssemblyEvent event, int reportedDay) {
    out.add(logged(event, reportedDay));
  }

  /** Takes in the report of a visit. */
  void visit(PracticeUnit unit, int day, int visitNumber, List<AssemblyEvent> events) {
    if (events.isEmpty()) {
      return;
    }
    ReportHabits habits = parameters.reports();
    Draws draws = unit.draws(Purpose.REPORT, 0, visitNumber);
    final boolean late = draws.happens(habits.late());
    final boolean corrected = draws.happens(habits.corrected());
    final boolean duplicated = draws.happens(habits.duplicated());
    final boolean voided = draws.happens(habits.voided());
    final boolean conflicting = draws.happens(habits.conflicting());
    int reported = day + (late ? draws.whole(45, 240) : draws.whole(0, 10));
    int later = reported + draws.whole(1, 60);
    List<LoggedEvent> sent = new ArrayList<>();
    for (AssemblyEvent event : events) {
      boolean slips = corrected && sent.isEmpty();
      sent.add(logged(slips ? slipped(event) : event, reported));
    }
    out.addAll(sent);
    if (corrected && !sent.get(0).event().equals(events.get(0))) {
      out.add(logged(correction(sent.get(0), events.get(0), later), later));
    }
    if (duplicated) {
      for (LoggedEvent event : sent) {
        out.add(logged(event.event(), later));
      }
    }
    if (conflicting) {
      out.add(logged(slipped(sent.get(0).event()), later));
    }
    if (voided && events.get(0) instanceof TestPerformed test) {
      LoggedEvent wrong = logged(forWrongAssembly(test), reported);
      out.add(wrong);
      out.add(logged(voiding(wrong, later), later));
    }
  }

  private LoggedEvent logged(AssemblyEvent event, int reportedDay) {
    String source = parameters.town().source();
    return new LoggedEvent(
        NaturalKey.idOf(source, event),
        source,
        event,
        Instant.ofEpochSecond((reportedDay + 1) * DAY_SECONDS),
        LoggedEvent.ReportedOrigin.GIVEN,
        null,
        LoggedEvent.Arrival.IMPORTED);
  }

  private Moment on(int day) {
    return new Moment(LocalDate.ofEpochDay(day), 600, parameters.town().timeZone());
  }

  private EventCorrected correction(LoggedEvent wrong, AssemblyEvent right, int day) {
    return new EventCorrected(wrong.id(), on(day), CLERK, "slip in a reading", right);
  }

  private EventVoided voiding(LoggedEvent wrong, int day) {
    Subject about = wrong.event().subject();
    return new EventVoided(wrong.id(), about, on(day), CLERK, "report of another assembly");
  }

  /** The same event with a slip in its first number; unchanged where it has none. */
  private static AssemblyEvent slipped(AssemblyEvent event) {
    if (!(event instanceof TestPerformed test)) {
      return event;
    }
    List<Reading> readings = new ArrayList<>(test.readings());
    for (int i = 0; i < readings.size(); i++) {
      if (readings.get(i).observation() == Observation.MEASURED) {
        readings.set(i, TestRound.slipped(readings.get(i)));
        return with(test, test.visit(), test.reportNumber(), readings);
      }
    }
    return event;
  }

  private static TestPerformed forWrongAssembly(TestPerformed test) {
    Visit visit = test.visit();
    Visit other = new Visit(visit.id() + "W", visit.startMinuteOfDay(), 1, visit.sequenceOrigin());
    return with(test, other, test.reportNumber() + "W", test.readings());
  }

  private static TestPerformed with(
      TestPerformed test, Visit visit, String reportNumber, List<Reading> readings) {
    return new TestPerformed(
        test.assemblyId(),
        test.when(),
        test.endMinuteOfDay(),
        visit,
        reportNumber,
        test.phase(),
        test.purpose(),
        test.conduct(),
        test.testerId(),
        test.certificateNumber(),
        test.certificateValidUntil(),
        test.gaugeId(),
        test.gaugeCalibratedOn(),
        test.linePressure(),
        test.flowState(),
        test.downstreamShutoff(),
        test.compensatingStep(),
        test.method(),
        test.procedureEdition(),
        readings,
        test.confirmation(),
        test.reliefDischarge(),
        test.bypassMeterReading(),
        test.installationChecks(),
        test.waterTemperature(),
        test.flushedToPass(),
        test.serialSeen(),
        test.signedByTester(),
        test.verdictIssued(),
        test.remarks(),
        test.attachmentHashes());
  }

  /** Everything that was taken in, in the order of arrival. */
  List<LoggedEvent> inOrderOfArrival() {
    out.sort(Comparator.comparing(LoggedEvent::reportedAt));
    return out;
  }
}
