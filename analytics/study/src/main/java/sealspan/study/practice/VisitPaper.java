package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.JobCosted;
import sealspan.event.Moment;
import sealspan.event.Money;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Conduct;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.TestPerformed.Purpose;
import sealspan.event.Unit;
import sealspan.event.Visit;
import sealspan.event.VisitAttempted;

/** Writes the report of one visit, round by round. Before the record begins nothing is written. */
final class VisitPaper {
  /** The ISO 4217 code that is reserved for testing: no price here is real. */
  static final String CURRENCY = "XTS";

  private static final int ROUND_MINUTES = 15;

  private final PracticeUnit unit;
  private final Crew crew;
  private final Site site;
  private final int day;
  private final String visitId;
  private final int startMinute;
  private final TestPerformed.ShutoffState shutoff;
  private final List<AssemblyEvent> events = new ArrayList<>(4);
  private int sequence;

  VisitPaper(PracticeUnit unit, Crew crew, Site site, int day, int visitNumber) {
    this.unit = unit;
    this.crew = crew;
    this.site = site;
    this.day = day;
    this.visitId = Names.digits(unit.position) + "-" + unit.number + "-" + visitNumber;
    Draws draws = unit.draws(Draws.Purpose.VISIT, 1, visitNumber);
    this.startMinute = 480 + draws.whole(0, 20) * 15 + (unit.position - site.first()) * 15;
    this.shutoff =
        draws.happens(unit.parameters.reports().shutoffLeaked())
            ? TestPerformed.ShutoffState.LEAKED
            : TestPerformed.ShutoffState.TIGHT;
  }

  List<AssemblyEvent> events() {
    return events;
  }

  private boolean offRecord() {
    return day < unit.parameters.beginDay();
  }

  private Moment now() {
    int minute = startMinute + ROUND_MINUTES * (sequence - 1);
    return new Moment(LocalDate.ofEpochDay(day), minute, unit.parameters.town().timeZone());
  }

  private Visit nextPlace() {
    sequence++;
    return new Visit(visitId, startMinute, sequence, Visit.SequenceOrigin.GIVEN);
  }

  private String reportNumber() {
    return "R" + visitId;
  }

  /** A round whose verdict is as the readings say. */
  void test(Phase phase, Purpose purpose, TestRound round) {
    test(phase, purpose, round, verdict(round), null);
  }

  private static TestPerformed.IssuedVerdict verdict(TestRound round) {
    return round.passed() ? TestPerformed.IssuedVerdict.PASSED : TestPerformed.IssuedVerdict.FAILED;
  }

  /** A round with a verdict of the tester's own, or one that passed after flushing. */
  void test(
      Phase phase,
      Purpose purpose,
      TestRound round,
      TestPerformed.IssuedVerdict issued,
      Boolean flushedToPass) {
    Conduct conduct = round.stopped() ? Conduct.STOPPED_AT_DEFICIENCY : Conduct.COMPLETED;
    write(phase, purpose, conduct, round.readings(), issued, flushedToPass);
  }

  /** A visit on which the assembly could not be tested. */
  void notTestable(Purpose purpose) {
    write(Phase.AS_FOUND, purpose, Conduct.NOT_TESTABLE, List.of(), null, null);
  }

  private void write(
      Phase phase,
      Purpose purpose,
      Conduct conduct,
      List<Reading> readings,
      TestPerformed.IssuedVerdict issued,
      Boolean flushedToPass) {
    if (offRecord()) {
      return;
    }
    Visit place = nextPlace();
    int certificate = crew.certificate(day);
    boolean leaked = shutoff == TestPerformed.ShutoffState.LEAKED;
    events.add(
        new TestPerformed(
            unit.id(),
            now(),
            now().minuteOfDay() + 10,
            place,
            reportNumber(),
            phase,
            purpose,
            conduct,
            crew.testerId(),
            crew.certificateNumber(certificate),
            crew.certificateValidUntil(certificate),
            crew.gaugeId(),
            LocalDate.ofEpochDay(crew.calibrationDay(crew.calibration(day))),
            new Quantity(Integer.toString(site.pressurePsi() + day % 7 - 3), Unit.PSI),
            TestPerformed.FlowState.NO_FLOW,
            shutoff,
            leaked ? TestPerformed.CompensatingStep.TEMPORARY_BYPASS_HOSE : null,
            null,
            null,
            readings,
            null,
            null,
            PracticeUnit.isDetector(unit.type) ? Integer.toString(1000 + day % 977) : null,
            List.of(),
            null,
            flushedToPass,
            unit.serial(),
            true,
            issued,
            null,
            List.of()));
  }

  void repair(List<RepairItem> items) {
    if (offRecord()) {
      return;
    }
    Visit place = nextPlace();
    events.add(
        new RepairPerformed(
            unit.id(),
            now(),
            place,
            reportNumber(),
            items,
            List.of(crew.testerId()),
            20 + 15 * items.size(),
            false,
            null));
  }

  void noAccess() {
    if (!offRecord()) {
      events.add(
          new VisitAttempted(
              unit.id(),
              new Moment(LocalDate.ofEpochDay(day), startMinute, unit.parameters.town().timeZone()),
              visitId,
              VisitAttempted.Reason.NO_ACCESS,
              crew.testerId(),
              null));
    }
  }

  /** Adds what the visit cost; the amounts are placeholders. */
  void costs() {
    if (offRecord() || events.isEmpty()) {
      return;
    }
    long labour = 4500;
    long parts = 0;
    for (AssemblyEvent event : events) {
      if (event instanceof RepairPerformed repair) {
        labour += 100L * repair.workMinutes();
        for (RepairItem item : repair.items()) {
          parts += item.parts().stream().mapToLong(p -> p.unitPrice().minorUnits()).sum();
        }
      }
    }
    long travel = 1200;
    events.add(
        new JobCosted(
            unit.id(),
            new Moment(LocalDate.ofEpochDay(day), null, unit.parameters.town().timeZone()),
            visitId,
            null,
            null,
            new Money(labour, CURRENCY),
            new Money(travel, CURRENCY),
            new Money(parts, CURRENCY),
            new Money((labour + travel + parts) * 13 / 10, CURRENCY)));
  }
}
