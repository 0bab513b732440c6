package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyRemoved;
import sealspan.event.AssemblyType;
import sealspan.event.InspectionPerformed;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.Quantity;
import sealspan.event.ServiceStateChanged;
import sealspan.event.TestPerformed;
import sealspan.event.Unit;
import sealspan.event.Visit;
import sealspan.study.practice.Draws.Purpose;

/**
 * The life of one position from its first assembly to the end of the record. What happened before
 * the record is lived through as well, so that the record begins with seals of all ages, but it is
 * not written down.
 */
final class PositionLife {
  private static final int MOST_UNITS = 50;
  private static final int FEWEST_DAYS_BETWEEN_TESTS = 60;

  private final PracticeParameters parameters;
  private final int position;
  private final Site site;
  private final Crew crew;
  private final FoulingRate foulingRate;
  private final Draws lasting;
  private final ReportDesk desk;
  private final TruthNotes truth;
  private final int givenUpOn;
  private final boolean dayKnown;
  private PracticeUnit unit;
  private int visits;
  private int lastVisit;
  private boolean announced;

  PositionLife(PracticeParameters parameters, int position, ZoneWater[] waters) {
    this.parameters = parameters;
    this.position = position;
    this.site = Site.of(parameters, position);
    this.crew = new Crew(parameters, Crew.of(parameters, position));
    this.foulingRate = new FoulingRate(parameters, site, waters[site.zone()]);
    this.lasting = Draws.of(parameters.seed(), Purpose.POSITION, position, 1, 0);
    this.desk = new ReportDesk(parameters);
    this.truth = new TruthNotes(parameters.beginDay());
    final int firstDay = firstDay();
    double yearsToGo = lasting.exponential() / parameters.route().removedPerYear();
    double daysToGo = yearsToGo * PracticeParameters.DAYS_A_YEAR;
    this.givenUpOn = (int) (Math.max(firstDay, parameters.beginDay()) + daysToGo);
    this.dayKnown = lasting.happens(parameters.route().installDayKnown());
    live(firstDay);
  }

  List<LoggedEvent> events() {
    return desk.inOrderOfArrival();
  }

  PositionTruth truth() {
    return truth.truth(unit, site);
  }

  private void live(int firstDay) {
    putIn(0, firstDay);
    int firstYear = LocalDate.ofEpochDay(unit.installDay).getYear();
    int lastYear = LocalDate.ofEpochDay(parameters.endDay() - 1L).getYear();
    boolean seasonal = Route.isSeasonal(parameters, unit.type);
    for (int year = firstYear; year <= lastYear; year++) {
      Route route = Route.of(parameters, site, year, seasonal);
      if (seasonal) {
        startSeason(year);
      }
      if (route.day() != Route.MISSED && !isTooSoon(route.day()) && isOnTime(route.day())) {
        announceFrom(route.day());
        yearlyVisit(route);
      }
      if (seasonal) {
        endSeason(year);
      }
    }
    announceFrom(parameters.endDay() - 1);
    changeOwner();
    if (givenUpOn < parameters.endDay() && givenUpOn > lastVisit) {
      desk.file(removal(givenUpOn, AssemblyRemoved.Reason.HAZARD_ELIMINATED), givenUpOn + 3);
    }
  }

  private int firstDay() {
    TestRoute route = parameters.route();
    boolean isNew = lasting.happens(route.newShare());
    double share = lasting.uniform();
    double years = isNew ? parameters.years() * share : -route.oldestYears() * share;
    return (int) Math.round(parameters.beginDay() + years * PracticeParameters.DAYS_A_YEAR);
  }

  private boolean isTooSoon(int day) {
    return day < lastVisit + FEWEST_DAYS_BETWEEN_TESTS;
  }

  private boolean isOnTime(int day) {
    return day < parameters.endDay() && day < givenUpOn;
  }

  private boolean isOnRecord(int day) {
    return day >= parameters.beginDay() && day < parameters.endDay();
  }

  private void putIn(int number, int day) {
    unit = new PracticeUnit(parameters, position, number, day, foulingRate);
    lastVisit = day;
    if (isOnRecord(day)) {
      announceFrom(day);
      if (!unit.parts.isEmpty()) {
        installationTest(day, number);
      }
    }
  }

  private void installationTest(int day, int number) {
    visits++;
    VisitPaper paper = new VisitPaper(unit, crew, site, day, visits);
    new PracticeVisit(unit, crew, day, visits, paper, truth)
        .installation(
            number == 0 ? TestPerformed.Purpose.INSTALLATION : TestPerformed.Purpose.REPLACEMENT);
    desk.visit(unit, day, visits, paper.events());
  }

  /**
   * Writes down what stands at the position, before the first entry about it. Of a unit from before
   * the record, its install day is told apart from the day on which the record begins.
   */
  private void announceFrom(int day) {
    if (announced || !isOnRecord(day)) {
      return;
    }
    announced = true;
    truth.unit(unit);
    int beginDay = parameters.beginDay();
    int reported = Math.max(unit.installDay, beginDay);
    if (site.size() > 1) {
      desk.file(SiteCard.of(parameters, site, unit), reported);
    }
    if (dayKnown || unit.installDay >= beginDay) {
      desk.file(UnitCard.installed(unit, site), reported);
    }
    if (unit.installDay < beginDay) {
      desk.file(UnitCard.recordBegins(unit, site), reported);
    }
  }

  private AssemblyRemoved removal(int day, AssemblyRemoved.Reason reason) {
    return new AssemblyRemoved(unit.id(), Moment.on(LocalDate.ofEpochDay(day)), reason, null);
  }

  private void yearlyVisit(Route route) {
    visitForDischarge(route.day());
    if (isTooSoon(route.day())) {
      return;
    }
    if (route.withoutAccessOn() != Route.MISSED) {
      visits++;
      VisitPaper paper = new VisitPaper(unit, crew, site, route.withoutAccessOn(), visits);
      paper.noAccess();
      desk.visit(unit, route.withoutAccessOn(), visits, paper.events());
    }
    if (unit.parts.isEmpty()) {
      inspect(route.day());
    } else {
      visit(route.day(), TestPerformed.Purpose.ROUTINE);
    }
  }

  /** A relief valve that discharges is sometimes seen, and tested before its month. */
  private void visitForDischarge(int routineDay) {
    double failsAt = Double.POSITIVE_INFINITY;
    for (PartLife part : unit.parts) {
      if (part.plan.kind() == SealKind.RELIEF) {
        failsAt = Math.min(failsAt, part.failsAt());
      }
    }
    Draws draws = unit.draws(Purpose.VISIT, 2, visits);
    if (draws.happens(parameters.route().dischargeSeenShare()) && failsAt < routineDay) {
      int day = Route.onWorkDay((int) failsAt + draws.whole(1, 12));
      if (day > lastVisit && day < routineDay - 3) {
        visit(day, TestPerformed.Purpose.VISIBLE_DISCHARGE);
      }
    }
  }

  private void visit(int day, TestPerformed.Purpose purpose) {
    visits++;
    lastVisit = day;
    VisitPaper paper = new VisitPaper(unit, crew, site, day, visits);
    PracticeVisit.Ending ending =
        new PracticeVisit(unit, crew, day, visits, paper, truth).asFound(purpose);
    file(day, paper);
    if (ending == PracticeVisit.Ending.ASSEMBLY_TO_BE_REPLACED && unit.number < MOST_UNITS) {
      replaceUnit(day);
    } else if (ending == PracticeVisit.Ending.LEFT_FAILED) {
      Draws draws = unit.draws(Purpose.VISIT, 3, visits);
      visitAgain(Route.onWorkDay(day + draws.whole(5, 30)));
    }
  }

  private void visitAgain(int day) {
    if (!isOnTime(day)) {
      return;
    }
    visits++;
    lastVisit = day;
    VisitPaper paper = new VisitPaper(unit, crew, site, day, visits);
    new PracticeVisit(unit, crew, day, visits, paper, truth).repairLeftFailed();
    file(day, paper);
  }

  private void file(int day, VisitPaper paper) {
    Draws draws = unit.draws(Purpose.COST, 0, visits);
    if (draws.happens(parameters.reports().costed())) {
      paper.costs();
    }
    desk.visit(unit, day, visits, paper.events());
  }

  private void changeOwner() {
    Draws draws = Draws.of(parameters.seed(), Purpose.POSITION, position, 3, 0);
    double years = draws.exponential() / parameters.route().ownerChangesPerYear();
    double day = parameters.beginDay() + years * PracticeParameters.DAYS_A_YEAR;
    if (day < Math.min(parameters.endDay(), givenUpOn) && day > unit.installDay) {
      LocalDate date = LocalDate.ofEpochDay((long) day);
      String owner = "O" + site.id().substring(1) + "-2";
      desk.file(
          new AssemblyChanged(
              unit.id(), Moment.on(date), null, null, null, null, owner, null, null, null),
          (int) day + 20);
    }
  }

  private void replaceUnit(int day) {
    if (isOnRecord(day)) {
      desk.file(removal(day, AssemblyRemoved.Reason.REPLACED_BECAUSE_FAILED), day + 2);
    }
    announced = false;
    putIn(unit.number + 1, day);
  }

  private void inspect(int day) {
    visits++;
    lastVisit = day;
    if (!isOnRecord(day)) {
      return;
    }
    boolean gap = unit.type == AssemblyType.AG;
    Draws draws = unit.draws(Purpose.ROUND, 1, visits);
    boolean deficient = draws.happens(0.05);
    double separation = deficient ? 1.5 : 4 + draws.whole(0, 8) / 4.0;
    String visitId = Names.digits(position) + "-" + unit.number + "-" + visits;
    List<AssemblyEvent> events = new ArrayList<>();
    events.add(
        new InspectionPerformed(
            unit.id(),
            new Moment(LocalDate.ofEpochDay(day), 540, parameters.town().timeZone()),
            new Visit(visitId, 540, 1, Visit.SequenceOrigin.GIVEN),
            "R" + visitId,
            gap ? InspectionPerformed.Kind.AIR_GAP : InspectionPerformed.Kind.VISUAL,
            deficient
                ? InspectionPerformed.Outcome.DEFICIENT
                : InspectionPerformed.Outcome.SATISFACTORY,
            deficient ? List.of(gap ? "separation too small" : "poppet sticks") : List.of(),
            gap ? new Quantity(String.format(Locale.ROOT, "%.2f", separation), Unit.INCH) : null,
            gap ? new Quantity("1.0", Unit.INCH) : null,
            crew.testerId()));
    desk.visit(unit, day, visits, events);
  }

  private void startSeason(int year) {
    Draws draws = Draws.of(parameters.seed(), Purpose.LAY_UP, position, year, 0);
    state(
        LocalDate.of(year, 3, 20).plusDays(draws.whole(0, 20)),
        ServiceStateChanged.State.IN_SERVICE);
  }

  private void endSeason(int year) {
    Draws draws = Draws.of(parameters.seed(), Purpose.LAY_UP, position, year, 1);
    state(
        LocalDate.of(year, 10, 20).plusDays(draws.whole(0, 20)),
        ServiceStateChanged.State.WINTERISED);
  }

  private void state(LocalDate date, ServiceStateChanged.State state) {
    int day = (int) date.toEpochDay();
    if (isOnRecord(day) && day > unit.installDay && day < givenUpOn) {
      announceFrom(day);
      desk.file(new ServiceStateChanged(unit.id(), Moment.on(date), state, null), day + 5);
    }
  }
}
